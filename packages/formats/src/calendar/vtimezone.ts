import { zoneOffset } from '@dawnlift/core/clock'

const day = 86_400

/**
 * The rules of a time zone over a stretch of time, as RFC 5545 wants them: one part for each change of the clocks,
 * from the one in force at the start. Source of the offsets: the runtime's IANA data.
 */
export function vtimezone(zone: string, from: number, until: number): string {
  const changes = changesOf(zone, from - 366 * day, until + 366 * day)
  return ['BEGIN:VTIMEZONE', `TZID:${zone}`, ...changes.flatMap(partOf), 'END:VTIMEZONE'].join('\r\n')
}

interface Change {
  /** First moment at which the new offset holds. */
  readonly at: number
  readonly before: number
  readonly after: number
}

function changesOf(zone: string, from: number, until: number): readonly Change[] {
  const first = zoneOffset(from, zone)
  const changes: Change[] = [{ at: from, before: first, after: first }]
  for (let at = from; at < until; at += day) {
    const before = zoneOffset(at, zone)
    const after = zoneOffset(at + day, zone)
    if (before !== after) changes.push({ at: momentOf(zone, at, at + day, before), before, after })
  }
  return changes
}

/** Halves the day until the change of the clocks is found to the second. */
function momentOf(zone: string, from: number, to: number, before: number): number {
  let [low, high] = [from, to]
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2)
    if (zoneOffset(middle, zone) === before) low = middle
    else high = middle
  }
  return high
}

/** A clock ahead of the zone's winter time is daylight time; which is which only matters for its name. */
function partOf({ at, before, after }: Change): readonly string[] {
  const kind = after > before ? 'DAYLIGHT' : 'STANDARD'
  return [
    `BEGIN:${kind}`,
    // The onset is told in the time that the clocks showed until then.
    `DTSTART:${stamp(at + before)}`,
    `TZOFFSETFROM:${offsetText(before)}`,
    `TZOFFSETTO:${offsetText(after)}`,
    `END:${kind}`,
  ]
}

const stamp = (local: number): string =>
  new Date(Math.round(local) * 1000).toISOString().slice(0, 19).replaceAll('-', '').replaceAll(':', '')

function offsetText(seconds: number): string {
  const minutes = Math.round(Math.abs(seconds) / 60)
  const two = (value: number) => String(value).padStart(2, '0')
  return `${seconds < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}${two(minutes % 60)}`
}
