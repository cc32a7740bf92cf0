import type { Lift } from '../campaign/index.js'
import { addDays, instantAt, localTime, weekday } from '../clock/index.js'
import type { Job, Opening } from '../job/index.js'
import { formatQuantity, type Instant, type Metres } from '../quantity/index.js'
import type { Call } from './call.js'
import { type CallParts, cutting, layerSpan, placeOf, wallOf } from './embed-calls.js'
import { liftsOf, sectionAt } from './lift-time.js'
import { lintelWords } from './trade-words.js'

type LintelOpening = Opening & { readonly lintel: NonNullable<Opening['lintel']> }
export const hasLintel = (opening: Opening): opening is LintelOpening => opening.lintel !== undefined

/** Middle of each bearing [station]. */
export const bearings = (
  opening: LintelOpening,
): readonly { readonly side: 'start' | 'end'; readonly at: Metres }[] => [
  { side: 'start', at: opening.at - opening.width / 2 - opening.lintel.bearing / 2 },
  { side: 'end', at: opening.at + opening.width / 2 + opening.lintel.bearing / 2 },
]

/** A bearing and the lift that ends at the lintel's top. */
interface Seat {
  readonly side: 'start' | 'end'
  readonly at: Metres
  readonly section: string
  readonly lift: Lift
}

/**
 * A lintel is two calls: the pockets for its bearings are cut the evening it is printed beside, while the wall can be
 * sliced; it is set the next morning before the section's next lift starts, its top flush with the last layer.
 * Where a section joint runs through the opening each side has its own cut, and setting waits for both.
 */
export function lintelCalls(parts: CallParts, opening: LintelOpening): readonly Call[] {
  const seats = seatsOf(parts, opening)
  if (seats.length < 2) return []
  const oneLift = seats[0]!.lift.id === seats[1]!.lift.id
  const cuts = oneLift
    ? [cutCall(parts, opening, seats[0]!, `${opening.id}/cut`)]
    : seats.map(seat => cutCall(parts, opening, seat, `${opening.id}/cut-${seat.side}`))
  return [...cuts, setCall(parts, opening, seats)]
}

/** The size of what is cut out beyond each jamb. */
const pocketWords = (job: Job, { lintel }: LintelOpening): string =>
  `pockets ${formatQuantity(lintel.bearing, 'length', job.units)} long beyond each jamb, ${formatQuantity(lintel.height, 'length', job.units)} high`

/** Layers the lintel stands beside. */
export const lintelSpan = (job: Job, opening: LintelOpening) =>
  layerSpan(opening.head, opening.head + opening.lintel.height, job.print.layerHeight)

function seatsOf(parts: CallParts, opening: LintelOpening): readonly Seat[] {
  const span = lintelSpan(parts.job, opening)
  return bearings(opening).flatMap(({ side, at }) => {
    const section = sectionAt(parts.sections, opening.wall, at)
    const lift = section && liftsOf(parts.campaign, section.id).find(l => l.lastLayer >= span.last)
    return section && lift ? [{ side, at, section: section.id, lift }] : []
  })
}

function cutCall(parts: CallParts, opening: LintelOpening, seat: Seat, id: string): Call {
  const span = lintelSpan(parts.job, opening)
  const own = { first: Math.max(span.first, seat.lift.firstLayer), last: span.last }
  const window = cutting(parts, seat.lift, own)
  return {
    ...common(parts, opening, seat),
    id,
    date: localTime(window.from, parts.job.site.timeZone).date,
    layerIn: own.first,
    layerOut: own.last,
    ...window,
    tool: `${pocketWords(parts.job, opening)}; ${lintelWords.cut.tool}`,
    proof: lintelWords.cut.proof,
  }
}

function setCall(parts: CallParts, opening: LintelOpening, seats: readonly Seat[]): Call {
  const span = lintelSpan(parts.job, opening)
  const last = seats.reduce((a, b) => (b.lift.end > a.lift.end ? b : a))
  const window = settingWindow(parts, seats)
  return {
    ...common(parts, opening, last),
    id: `${opening.id}/set`,
    date: localTime(window.from, parts.job.site.timeZone).date,
    layerIn: span.first,
    layerOut: span.last,
    ...window,
    ...lintelWords.set,
  }
}

/** From the morning after the later seat was printed until the first next lift over either seat starts. */
function settingWindow(
  parts: CallParts,
  seats: readonly Seat[],
): { readonly from: Instant; readonly until: Instant } {
  const ready = Math.max(...seats.map(seat => seat.lift.end))
  const next = seats
    .map(seat => liftsOf(parts.campaign, seat.section).find(lift => lift.firstLayer > seat.lift.lastLayer))
    .filter(lift => lift !== undefined)
    .sort((a, b) => a.start - b.start)[0]
  const morning = nextMorning(parts.job, ready)
  const until =
    next?.start ??
    instantAt(
      localTime(morning, parts.job.site.timeZone).date,
      parts.job.crew.dayEnd,
      parts.job.site.timeZone,
    )
  return { from: Math.min(morning, until), until }
}

function nextMorning(job: Job, ready: Instant): Instant {
  const zone = job.site.timeZone
  let date = addDays(localTime(ready, zone).date, 1)
  for (let tries = 0; tries < 60 && !isWorked(job, date); tries++) date = addDays(date, 1)
  return instantAt(date, job.crew.dayStart, zone)
}

const isWorked = (job: Job, date: string): boolean =>
  job.crew.workDays.includes(weekday(date)) && !job.crew.daysOff.includes(date)

function common(parts: CallParts, opening: LintelOpening, seat: Seat) {
  const wall = wallOf(parts.job, opening.wall)
  return {
    trade: 'crew' as const,
    what: 'lintel' as const,
    wall: opening.wall,
    section: seat.section,
    lift: seat.lift.id,
    place: placeOf(parts.job, wall, { at: opening.at, bottom: opening.head, face: 'through' }),
  }
}
