import type { Instant, Seconds } from '../quantity/index.js'

const formatters = new Map<string, Intl.DateTimeFormat>()

/** One formatter a zone: making one costs a hundred times more than using it. */
function formatterOf(zone: string): Intl.DateTimeFormat {
  const known = formatters.get(zone)
  if (known) return known
  const made = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
    second: '2-digit',
  })
  formatters.set(zone, made)
  return made
}

/** Whether the runtime knows this IANA time zone. */
export function isTimeZone(zone: string): boolean {
  try {
    formatterOf(zone)
    return true
  } catch {
    return false
  }
}

/**
 * Offsets already asked for, by zone and minute. Since 1973 every zone has changed its clocks on a full minute, though not on
 * a full quarter of an hour. Source: the runtime's IANA data, every zone gone through.
 */
const offsets = new Map<string, Map<number, Seconds>>()
const MINUTES_SINCE: Instant = Date.UTC(1973, 0, 1) / 1000
const MINUTE = 60
/** Four years of hours. */
const mostOffsets = 35_064

/** Seconds that local clocks in the zone are ahead of UTC at this moment. Source: the runtime's IANA data. */
export function zoneOffset(at: Instant, zone: string): Seconds {
  if (at < MINUTES_SINCE) return askedOffset(at, zone)
  const minute = Math.floor(at / MINUTE)
  const known = offsets.get(zone) ?? new Map<number, Seconds>()
  offsets.set(zone, known)
  const before = known.get(minute)
  if (before !== undefined) return before
  if (known.size >= mostOffsets) known.clear()
  const offset = askedOffset(minute * MINUTE, zone)
  known.set(minute, offset)
  return offset
}

/** Asking the runtime takes some microseconds: too long for every hour of sixty seasons. */
function askedOffset(at: Instant, zone: string): Seconds {
  const whole = Math.floor(at)
  const parts = formatterOf(zone).formatToParts(new Date(whole * 1000))
  const read = (type: string) => Number(parts.find(part => part.type === type)?.value)
  const local = Date.UTC(
    read('year'),
    read('month') - 1,
    read('day'),
    read('hour'),
    read('minute'),
    read('second'),
  )
  return local / 1000 - whole
}

/** Local calendar date and seconds after local midnight, as a clock on the wall shows them. */
export interface LocalTime {
  readonly date: string
  readonly clock: Seconds
}

export function localTime(at: Instant, zone: string): LocalTime {
  const shifted = at + zoneOffset(at, zone)
  const day = Math.floor(shifted / 86400)
  return { date: new Date(day * 86_400_000).toISOString().slice(0, 10), clock: shifted - day * 86400 }
}

/**
 * The moment at which clocks in the zone show this date and time.
 * In the spring gap, where no clock shows it, the moment just as far after the gap; in autumn the first of the two.
 */
export function instantAt(date: string, clock: Seconds, zone: string): Instant {
  const wall = Date.parse(`${date}T00:00:00Z`) / 1000 + clock
  const before = zoneOffset(wall - 86400, zone)
  const first = wall - before
  if (zoneOffset(first, zone) === before) return first
  const after = wall - zoneOffset(wall + 86400, zone)
  return zoneOffset(after, zone) === wall - after ? after : first
}

/** The calendar day `count` days later. */
export const addDays = (date: string, count: number): string =>
  new Date(Date.parse(`${date}T00:00:00Z`) + count * 86_400_000).toISOString().slice(0, 10)

/** ISO weekday, 1 = Monday … 7 = Sunday. */
export const weekday = (date: string): number => ((new Date(`${date}T00:00:00Z`).getUTCDay() + 6) % 7) + 1

/** `05:40` */
export function clockText(at: Instant, zone: string): string {
  const minutes = Math.round(localTime(at, zone).clock / 60) % 1440
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`
}
