import type { LiftPhysics } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import { type PrintHour, printHours, type WeatherHour } from '../weather/index.js'
import { siteRest } from './site-physics.js'

/** What the hours of a job mean for printing and for a layer at rest; the same objects while weather and rules stay. */
export interface KeptHours {
  readonly verdicts: readonly PrintHour[]
  readonly longestRest: LiftPhysics['longestRest']
}

/** Weather met before, by its content: lists that say the same are one list. */
export interface KnownWeather {
  readonly lists: WeakMap<readonly WeatherHour[], readonly WeatherHour[]>
  readonly texts: Map<string, readonly WeatherHour[]>
  readonly meant: WeakMap<readonly WeatherHour[], Map<string, KeptHours>>
}

export const newKnownWeather = (): KnownWeather => ({
  lists: new WeakMap(),
  texts: new Map(),
  meant: new WeakMap(),
})

/** Every list of hours is read once; a list read anew from the same file is found by what it says. */
export function sameWeather(hours: readonly WeatherHour[], known: KnownWeather): readonly WeatherHour[] {
  const met = known.lists.get(hours)
  if (met) return met
  const text = JSON.stringify(hours)
  const first = known.texts.get(text) ?? hours
  known.texts.set(text, first)
  for (const old of [...known.texts.keys()].slice(0, -mostLists)) known.texts.delete(old)
  known.lists.set(hours, first)
  return first
}

/** A season of hours is half a megabyte of text. */
const mostLists = 3

/** Hours of a job as they were found before, if neither weather nor what they are judged by has changed. */
export function keptHours(job: Job, hours: readonly WeatherHour[], known: KnownWeather): KeptHours {
  const list = sameWeather(hours, known)
  const meant = known.meant.get(list) ?? new Map<string, KeptHours>()
  known.meant.set(list, meant)
  const { site, crew, batching, rules, mix, print } = job
  const key = JSON.stringify([site, crew, batching, rules, mix, print])
  const before = meant.get(key)
  const found = before ?? meaningOf(job, list)
  meant.delete(key)
  meant.set(key, found)
  for (const old of [...meant.keys()].slice(0, -mostLists)) meant.delete(old)
  return found
}

function meaningOf(job: Job, hours: readonly WeatherHour[]): KeptHours {
  const verdicts = printHours(job, hours)
  return { verdicts, longestRest: siteRest(job, verdicts) }
}
