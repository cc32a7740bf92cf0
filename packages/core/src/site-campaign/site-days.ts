import type { PrintDay } from '../campaign/index.js'
import { assert } from '../result/index.js'
import { type SiteInput, type SiteStanding, timeLeft, type Visit, withLifts } from './site-campaign.js'
import { crewDay, isWorked, visitDay } from './visit-day.js'

/** One day of the site: the visits of it, and what stands after them. */
export interface SiteDay {
  readonly visits: readonly Visit[]
  readonly standing: SiteStanding
  /** Where the machine stands at the end. */
  readonly at: number
}

/** Shares of the shift that are spent at the first building when another follows the same day. */
const STAYS = [1, 0.65, 0.5, 0.35]

/** Different days from where the site stands: a day at one building, or at one and then at another. Days planned before are remembered. */
export function siteDays(
  site: SiteInput,
): (standing: SiteStanding, at: number, date: string) => readonly SiteDay[] {
  const known = new Map<string, PrintDay | undefined>()
  const visit = (b: number, standing: SiteStanding, window: Parameters<typeof visitDay>[2]) => {
    const key = JSON.stringify([b, standing[b], window])
    if (!known.has(key)) known.set(key, visitDay(site.buildings[b]!, standing[b]!, window))
    return known.get(key)
  }
  return (standing, at, date) => {
    const open = site.buildings.flatMap((building, b) => (timeLeft(building, standing[b]!) > 0 ? [b] : []))
    return open.flatMap(b => {
      const alone = firstVisit(site, visit, standing, at, b, date, 1)
      const others = open.filter(other => other !== b)
      const then = STAYS.flatMap(stay => {
        const day = firstVisit(site, visit, standing, at, b, date, stay)
        return day ? others.flatMap(other => secondVisit(site, visit, day, other, date) ?? []) : []
      })
      return alone ? [alone, ...then] : then
    })
  }
}

type VisitOf = (
  b: number,
  standing: SiteStanding,
  window: Parameters<typeof visitDay>[2],
) => PrintDay | undefined

/** The crew's first visit of the day; a machine that stands elsewhere is moved first. */
function firstVisit(
  { buildings, move }: SiteInput,
  visit: VisitOf,
  standing: SiteStanding,
  at: number,
  b: number,
  date: string,
  share: number,
): SiteDay | undefined {
  const building = buildings[b]!
  if (!isWorked(building, date) || date < building.input.calendar.firstDay) return undefined
  const { begins } = crewDay(building, date)
  const { longestShift } = building.input.crew
  const isMoved = at >= 0 && at !== b
  const stay = share * longestShift - (isMoved ? move : 0)
  const day = visit(b, standing, { date, stay, ...(isMoved ? { from: begins + move } : {}) })
  if (!day) return undefined
  const told: Visit = {
    building: building.name,
    date,
    start: day.start,
    end: day.end,
    lifts: day.lifts,
    // As late as it may be: nobody waits at the other end.
    ...(isMoved ? { moveStart: day.start - move } : {}),
  }
  return {
    visits: [told],
    at: b,
    standing: standing.map((one, i) => (i === b ? withLifts(one, day.lifts) : one)),
  }
}

/** The rest of the shift at another building, once the machine is there. */
function secondVisit(
  { buildings, move }: SiteInput,
  visit: VisitOf,
  before: SiteDay,
  b: number,
  date: string,
): SiteDay | undefined {
  const [first] = before.visits
  assert(first, 'a second visit follows a first')
  const building = buildings[b]!
  if (date < building.input.calendar.firstDay) return undefined
  const shiftBegan = first.moveStart ?? first.start
  const from = first.end + move
  const stay = shiftBegan + building.input.crew.longestShift - from
  const day = visit(b, before.standing, { date, from, stay })
  if (!day) return undefined
  const told: Visit = {
    building: building.name,
    date,
    start: day.start,
    end: day.end,
    moveStart: day.start - move,
    lifts: day.lifts,
  }
  // A shift that waits between its visits must still end in time.
  if (day.end - shiftBegan > building.input.crew.longestShift + 1e-6) return undefined
  return {
    visits: [...before.visits, told],
    at: b,
    standing: before.standing.map((one, i) => (i === b ? withLifts(one, day.lifts) : one)),
  }
}
