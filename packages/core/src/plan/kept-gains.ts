import type { KnownGains, LayerGain, SectionWork } from '../campaign/index.js'
import type { SectionRoutes } from '../route/index.js'
import type { StandGeometry } from '../stand/index.js'
import type { PrintHour } from '../weather/index.js'
import { kept } from './plan-cache.js'

/** Next gains of the lifts of earlier plans, and the sections they were found for. */
export interface GainCache {
  readonly gains: WeakMap<readonly PrintHour[], Map<string, readonly LayerGain[]>>
  readonly finishes: WeakMap<readonly PrintHour[], Map<string, string | undefined>>
  readonly sections: Map<string, number>
  /** Routes and geometry stay the same objects while the section does. */
  readonly parts: WeakMap<object, number>
  last: number
}

export const newGainCache = (): GainCache => ({
  gains: new WeakMap(),
  finishes: new WeakMap(),
  sections: new Map(),
  parts: new WeakMap(),
  last: 0,
})

/** One section as its lifts are printed and stand. */
export interface PrintedSection {
  readonly work: SectionWork
  readonly routes: SectionRoutes
  readonly geometry: StandGeometry
}

/** So many sections, and answers on one weather, are remembered: a house in a few dozen states. */
const [mostSections, mostAnswers] = [400, 2000]

/** What earlier plans found of lifts, for a plan with these sections. */
export function knownGains(cache: GainCache, sections: readonly PrintedSection[]): KnownGains {
  const numbers = new Map(sections.map(section => [section.work.section, numberOf(cache, section)]))
  return {
    sectionNumber: section => numbers.get(section)!,
    gains: (hours, key, make) => underKey(cache.gains, hours, key, make),
    finish: (hours, key, make) => underKey(cache.finishes, hours, key, make),
  }
}

function underKey<T>(
  known: WeakMap<readonly PrintHour[], Map<string, T>>,
  hours: readonly PrintHour[],
  key: string,
  make: () => T,
): T {
  const own = known.get(hours) ?? new Map<string, T>()
  known.set(hours, own)
  const value = kept(own, key, make)
  if (own.size > mostAnswers) own.delete(own.keys().next().value!)
  return value
}

/** The same number for a section that is run, stopped and held alike; what rests on hours and rules is told apart by the hours. */
function numberOf(cache: GainCache, { work, routes, geometry }: PrintedSection): number {
  const { section, layerHeight, holds, liftEnds } = work
  const parts = [routes, geometry].map(part => partNumber(cache, part))
  const key = JSON.stringify([section, layerHeight, holds, liftEnds, ...parts])
  const number = kept(cache.sections, key, () => ++cache.last)
  if (cache.sections.size > mostSections) cache.sections.delete(cache.sections.keys().next().value!)
  return number
}

function partNumber(cache: GainCache, part: object): number {
  const number = cache.parts.get(part) ?? ++cache.last
  cache.parts.set(part, number)
  return number
}
