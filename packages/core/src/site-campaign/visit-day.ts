import { type PrintDay, type SectionStanding, scheduleCampaign } from '../campaign/index.js'
import { addDays, instantAt, localTime, weekday } from '../clock/index.js'
import type { Instant, Seconds } from '../quantity/index.js'
import type { Building } from './site-campaign.js'

/** When machine and crew may begin at a building on one day, and how long they may stay. */
export interface VisitWindow {
  readonly date: string
  /** The building is reached; absent: the crew's own start of day. */
  readonly from?: Instant
  /** Longest stay, set-up and wash-out included. */
  readonly stay: Seconds
}

/** Whether the crew works on a date. */
export const isWorked = ({ input: { crew } }: Building, date: string): boolean =>
  crew.workDays.includes(weekday(date)) && !crew.daysOff.includes(date)

/** When the crew's day begins and ends. */
export function crewDay(
  { input: { crew, timeZone } }: Building,
  date: string,
): { readonly begins: Instant; readonly ends: Instant } {
  const isOverMidnight = crew.dayEnd <= crew.dayStart
  return {
    begins: instantAt(date, crew.dayStart, timeZone),
    ends: instantAt(isOverMidnight ? addDays(date, 1) : date, crew.dayEnd, timeZone),
  }
}

/**
 * One day at one building by the plain rule, most urgent section first and each as high as it goes, put to its physics lift by
 * lift. Nothing where not a layer can be laid.
 */
export function visitDay(
  building: Building,
  standing: readonly SectionStanding[],
  { date, from, stay }: VisitWindow,
): PrintDay | undefined {
  const { input } = building
  const { begins, ends } = crewDay(building, date)
  const reached = from === undefined ? undefined : localTime(Math.ceil(from), input.timeZone)
  // A building reached after midnight would belong to another day of the calendar.
  if (reached && reached.date !== date) return undefined
  const hours = input.hours.filter(hour => hour.start + 3600 > begins && hour.start < ends)
  if (hours.length === 0 || stay <= 0 || (from !== undefined && from >= ends)) return undefined
  const crew = {
    ...input.crew,
    longestShift: Math.min(stay, input.crew.longestShift),
    ...(reached ? { dayStart: reached.clock } : {}),
  }
  const campaign = scheduleCampaign(
    { ...input, hours, standing, crew, calendar: { firstDay: date } },
    'quick',
  )
  return campaign.days.find(day => day.date === date)
}
