import { addDays, instantAt, localTime, weekday } from '../clock/index.js'
import type { Limit } from '../limit/index.js'
import type { Instant } from '../quantity/index.js'
import type { CampaignInput } from './campaign-input.js'

/** One calendar day: from when to when the crew may be on site, or why nobody is. */
export interface WorkDay {
  readonly date: string
  readonly opens: Instant
  /** The crew's own start of day; `opens` is later when the day has already begun. */
  readonly begins: Instant
  readonly closes: Instant
  /** Set when nobody works that day. */
  readonly off?: Limit
}

/** Every calendar day from the first day (or now) to the last hour of weather. */
export function workDays(input: CampaignInput): readonly WorkDay[] {
  const { crew, timeZone, hours } = input
  const lastHour = hours.at(-1)
  if (!lastHour) return []
  const last = localTime(lastHour.start, timeZone).date
  const now = input.calendar.now ?? Number.NEGATIVE_INFINITY
  let date = firstDate(input)
  const days: WorkDay[] = []
  const dayEnd = crew.dayEnd > crew.dayStart ? crew.dayEnd : crew.dayEnd + 86400
  for (; date <= last; date = addDays(date, 1)) {
    const begins = instantAt(date, crew.dayStart, timeZone)
    const ends =
      dayEnd >= 86400
        ? instantAt(addDays(date, 1), dayEnd - 86400, timeZone)
        : instantAt(date, dayEnd, timeZone)
    const closes = Math.min(ends, shiftEnd(input, begins, ends))
    const opens = Math.max(shiftGoesOn(input, begins, ends) ?? now, begins)
    const off = dayOff(input, date)
    const day = { date, begins, opens, closes }
    if (ends > opens) days.push(off ? { ...day, off } : day)
  }
  return days
}

/**
 * In a shift already begun, the moment from which setting up would have to begin for the nozzle to be ready when it is:
 * set-up is not done twice, but from one section to the next the nozzle changes over.
 */
function shiftGoesOn(input: CampaignInput, begins: Instant, ends: Instant): Instant | undefined {
  const { shiftBegan, crew, calendar, standing } = input
  const { now } = calendar
  if (
    shiftBegan === undefined ||
    now === undefined ||
    shiftBegan < begins ||
    shiftBegan >= ends ||
    now < shiftBegan
  )
    return undefined
  const hasPrinted = standing?.some(({ lastEnd }) => lastEnd !== undefined && lastEnd > shiftBegan) ?? false
  const ready = Math.max(shiftBegan + crew.setUp, now + (hasPrinted ? crew.changeOver : 0))
  return ready - crew.setUp
}

/** End of a shift already begun in this day; never for other days. */
function shiftEnd({ shiftBegan, crew }: CampaignInput, begins: Instant, ends: Instant): Instant {
  const isToday = shiftBegan !== undefined && shiftBegan >= begins && shiftBegan < ends
  return isToday ? shiftBegan + crew.longestShift : Number.POSITIVE_INFINITY
}

/** The first day, or today when it has begun; the day before too, whose night shift may still be going on. */
function firstDate({ calendar, timeZone }: CampaignInput): string {
  if (calendar.now === undefined) return calendar.firstDay
  const yesterday = addDays(localTime(calendar.now, timeZone).date, -1)
  return [yesterday, calendar.firstDay].sort()[1]!
}

function dayOff(input: CampaignInput, date: string): Limit | undefined {
  const { workDays: worked, daysOff } = input.crew
  if (worked.includes(weekday(date)) && !daysOff.includes(date)) return undefined
  return { kind: 'shift', demand: 1, capacity: 0, unit: 'crew', source: 'the job' }
}

/** Calendar days from one local date to another. */
export const calendarDays = (from: string, to: string): number =>
  Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000)
