import { clockText, localTime } from '@dawnlift/core/clock'
import type { Job } from '@dawnlift/core/job'
import type { Call, CalledTrade } from '@dawnlift/core/trade'
import { lengthText } from '@dawnlift/drawing/paper'
import ical, { ICalEventStatus } from 'ical-generator'
import { callUid } from './uid.js'
import { vtimezone } from './vtimezone.js'
import { ZonedMoment } from './zoned-moment.js'

export interface CalendarOptions {
  /** Counts up with every plan that is sent out: calendar programs take the higher one. */
  readonly sequence: number
  /** When this plan was made [s since 1970 UTC]. */
  readonly stamp: number
  /** What makes the job unique; without it its name and site. Keep it, or every entry comes a second time. */
  readonly jobKey?: string
  /** Without it: the calls of all trades. */
  readonly trade?: CalledTrade
}

/** The calls of a job as an iCalendar file, in the site's own time. */
export function writeCalendar(job: Job, calls: readonly Call[], options: CalendarOptions): string {
  const zone = job.site.timeZone
  const own = calls.filter(call => options.trade === undefined || call.trade === options.trade)
  const calendar = ical({
    name: `${job.name}${options.trade ? `, ${options.trade}` : ''}`,
    prodId: { company: 'Dawnlift', product: 'calls', language: 'EN' },
  })
  calendar.x([{ key: 'X-WR-TIMEZONE', value: zone }])
  for (const call of own)
    calendar.createEvent({
      id: callUid(options.jobKey ?? `${job.name}\n${job.site.name}`, call.id),
      sequence: options.sequence,
      stamp: new ZonedMoment(options.stamp),
      start: new ZonedMoment(call.from),
      end: new ZonedMoment(Math.max(call.until, call.from + 60)),
      timezone: zone,
      summary: summaryOf(job, call),
      description: descriptionOf(job, call),
      location: `${job.site.name}, ${wallName(job, call.wall)}`,
      status: ICalEventStatus.CONFIRMED,
    })
  if (own.length === 0) return calendar.toString()
  const rules = vtimezone(
    zone,
    Math.min(...own.map(call => call.from)),
    Math.max(...own.map(call => call.until)),
  )
  // The writer only puts zone rules in for a calendar-wide zone, and then writes DTSTAMP wrongly in that zone too.
  return calendar.toString().replace('BEGIN:VEVENT', () => `${rules}\r\nBEGIN:VEVENT`)
}

/** Every trade that is called, once, in the order of the alphabet. */
export const calledTrades = (calls: readonly Call[]): readonly CalledTrade[] =>
  [...new Set(calls.map(call => call.trade))].sort()

const wallName = (job: Job, id: string): string => job.walls.find(wall => wall.id === id)?.name ?? id

const summaryOf = (job: Job, call: Call): string =>
  `${call.what} ${call.id}, ${wallName(job, call.wall)}, layer ${call.layerIn === call.layerOut ? call.layerIn : `${call.layerIn}–${call.layerOut}`}`

/** For somebody who is not on site: by when to be told. */
function noticeLines({ site }: Job, { tellBy }: Call): readonly string[] {
  if (tellBy === undefined) return []
  const { date } = localTime(tellBy, site.timeZone)
  return [
    `Give notice by ${date} ${clockText(tellBy, site.timeZone)}, and again when the lift starts: a day ahead is common practice, your authority may ask for more.`,
  ]
}

function descriptionOf(job: Job, call: Call): string {
  const zone = job.site.timeZone
  const cut = call.cut
    ? [`Cut between ${clockText(call.cut.from, zone)} and ${clockText(call.cut.until, zone)}, pump stopped.`]
    : []
  return [
    `Lift ${call.lift}, section ${call.section}.`,
    `${lengthText(call.place.along, job.units)} from ${call.place.from} to its middle, ${lengthText(call.place.up, job.units)} over the slab to its underside, ${call.place.face}.`,
    ...noticeLines(job, call),
    ...cut,
    ...(call.cutDoubt === 'none' ? ['The mix gives no moment for a clean cut: ask the print lead.'] : []),
    ...(call.cutDoubt === 'unsure'
      ? ['The times hold for the best estimate of the mix: try the wall with a knife first.']
      : []),
    ...(call.cutInSteps
      ? ['No one moment suits the whole cut: cut upwards in steps behind the nozzle.']
      : []),
    `Bring: ${call.tool}.`,
    `Done when: ${call.proof}.`,
    'Green walls can fall and wet mix burns: ask the print lead before you step up to the wall. Times follow the plan and move with it.',
  ].join('\n')
}
