import { momentAt } from '@dawnlift/core/clock'
import type { Instant } from '@dawnlift/core/quantity'
import type { LogLine } from './log-line.js'
import { readLine, struckLines } from './read-log.js'

/** One event of a log with its place in the file, for whoever shows the log or strikes a line of it. */
export interface LogRow {
  /** The number of its line, from 1. */
  readonly line: number
  readonly at: Instant
  readonly event: Exclude<LogLine, { what: 'strike' }>
  readonly isStruck: boolean
}

/** The events of a log as they stand in the file, struck ones too; lines that cannot be read are left out. */
export function logRows(text: string, zone: string): readonly LogRow[] {
  const lines = text.replace(/^\uFEFF/, '').split(/\r?\n/)
  const struck = struckLines(lines)
  return lines.flatMap((each, index) => {
    const read = readLine(each, index + 1)
    if (!read.ok || read.value.what === 'strike') return []
    const at = momentAt(read.value.at, zone)
    return at.ok
      ? [{ line: index + 1, at: at.value, event: read.value, isStruck: struck.has(index + 1) }]
      : []
  })
}

/** The stop that still lasts, if one does: nothing was laid since it began. */
export function openStop(rows: readonly LogRow[]): LogRow | undefined {
  const standing = rows.filter(row => !row.isStruck)
  const stop = standing.filter(({ event }) => event.what === 'stop' && event.until === undefined).at(-1)
  const after = standing.some(({ at, event }) => stop && event.what === 'layer' && at > stop.at)
  return after ? undefined : stop
}
