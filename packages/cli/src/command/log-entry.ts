import { momentAt } from '@dawnlift/core/clock'
import type { SiteEvent } from '@dawnlift/core/log'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import { writeEvent, writeStrike } from '@dawnlift/formats/site-log'

/** What the crew says to `dawnlift log`. */
export interface LogWords {
  readonly shift?: boolean
  readonly layer?: string
  readonly takenDown?: string
  readonly stop?: string
  readonly note?: string
  readonly strike?: string
  readonly at?: string
  readonly until?: string
}

const entries = ['shift', 'layer', 'takenDown', 'stop', 'note', 'strike'] as const
const flags = ['--shift', '--layer', '--taken-down', '--stop', '--note', '--strike']

const problem = (at: string, say: string): Problem => ({ code: 'cli/log', at, say })

/** The line to add to the log; undefined when nothing is to be added. */
export function logEntry(words: LogWords, zone: string): Result<string | undefined> {
  const said = entries.filter(entry => words[entry] !== undefined)
  const [entry] = said
  if (said.length > 1)
    return failure([
      problem('dawnlift log', `One event a call; ${said.length} were given (${flags.join(', ')}).`),
    ])
  if (entry === undefined) {
    const idle = (['at', 'until'] as const).filter(word => words[word] !== undefined)
    return idle.length === 0
      ? success(undefined)
      : failure(
          idle.map(word =>
            problem(`--${word}`, `It says when, but not what happened: add one of ${flags.join(', ')}.`),
          ),
        )
  }
  if (entry === 'strike') return strike(words)
  const at = moment('--at', words.at, zone)
  const until = words.until === undefined ? undefined : moment('--until', words.until, zone)
  const event =
    at.ok && (until?.ok ?? true)
      ? eventOf(entry, words, at.value, until?.ok ? until.value : undefined)
      : undefined
  const problems = [at, until, event].flatMap(each => (each && !each.ok ? each.problems : []))
  if (problems.length > 0 || !event?.ok) return failure(problems)
  return success(writeEvent(event.value, zone))
}

function strike({ strike, at, until }: LogWords): Result<string> {
  if (at !== undefined || until !== undefined)
    return failure([problem('--strike', 'A line is struck whenever it is read; leave out --at and --until.')])
  const line = Number(strike)
  return Number.isInteger(line) && line >= 1
    ? success(writeStrike(line))
    : failure([problem('--strike', `“${strike}” is no line of the log; give its number, from 1.`)])
}

function moment(flag: string, text: string | undefined, zone: string): Result<number> {
  if (text === undefined)
    return failure([
      problem(
        flag,
        'When was it? Give date and time as the site’s clocks show them: --at "2026-07-06 07:13"',
      ),
    ])
  const read = momentAt(text, zone)
  return read.ok ? read : failure(read.problems.map(({ say }) => problem(flag, say)))
}

function eventOf(
  entry: Exclude<(typeof entries)[number], 'strike'>,
  words: LogWords,
  at: number,
  until: number | undefined,
): Result<SiteEvent> {
  if (until !== undefined && entry !== 'stop')
    return failure([problem('--until', 'Only a stop has an end: use it with --stop.')])
  switch (entry) {
    case 'shift':
      return success({ kind: 'shift', at })
    case 'layer':
      return layerOf('--layer', words.layer ?? '', 1, (section, layer) => ({
        kind: 'layer',
        at,
        section,
        layer,
      }))
    case 'takenDown':
      return layerOf('--taken-down', words.takenDown ?? '', 0, (section, layer) => ({
        kind: 'taken-down',
        at,
        section,
        layer,
      }))
    case 'stop':
      return worded('--stop', words.stop ?? '', cause => ({
        kind: 'stop',
        at,
        cause,
        ...(until === undefined ? {} : { until }),
      }))
    case 'note':
      return worded('--note', words.note ?? '', text => ({ kind: 'note', at, text }))
  }
}

function layerOf(
  flag: string,
  text: string,
  least: number,
  event: (section: string, layer: number) => SiteEvent,
): Result<SiteEvent> {
  const [, section, layer] = /^\s*(.+?)\s*:\s*(\d+)\s*$/.exec(text) ?? []
  if (!section || Number(layer) < least)
    return failure([
      problem(
        flag,
        `“${text}” names no section and layer; write both with a colon, the layer from ${least} up: A:15`,
      ),
    ])
  return success(event(section, Number(layer)))
}

const worded = (flag: string, text: string, event: (text: string) => SiteEvent): Result<SiteEvent> =>
  text.trim() === ''
    ? failure([problem(flag, 'Say in a few words what it was.')])
    : success(event(text.trim().slice(0, 500)))
