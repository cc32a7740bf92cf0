import { type Campaign, scheduleLevered } from '../campaign/index.js'
import { addDays } from '../clock/index.js'
import { campaignOfVisits } from './campaign-of-visits.js'
import type { Building, SiteCampaign, SiteInput, Visit } from './site-campaign.js'
import { crewDay, isWorked } from './visit-day.js'

/**
 * One building after the other, each searched as thoroughly as a plan of its own; the order that is up soonest. Every building
 * after the first begins on the next day, its first morning going into the move.
 */
export function oneAfterOther(site: SiteInput): SiteCampaign {
  const ways = orders(site.buildings).map(order => campaignOfVisits(site, inTurn(site, order)))
  return ways.reduce((best, way) =>
    Number(way.finished) > Number(best.finished) ||
    (way.finished === best.finished && way.finish < best.finish)
      ? way
      : best,
  )
}

function inTurn({ move }: SiteInput, order: readonly Building[]): readonly Visit[] {
  const visits: Visit[] = []
  for (const building of order) {
    const last = visits.at(-1)
    const campaign = scheduleLevered(last ? movedTo(building, last, move) : building.input)
    visits.push(...visitsOf(building, campaign, last, move))
    if (!campaign.finished) break
  }
  return visits
}

/** The next day on which the crew works at a building after a visit elsewhere. */
function moveDay(building: Building, last: Visit): string {
  const { workDays } = building.input.crew
  let date = [addDays(last.date, 1), building.input.calendar.firstDay].sort()[1]!
  for (let tried = 0; tried < 366 && workDays.length > 0 && !isWorked(building, date); tried++)
    date = addDays(date, 1)
  return date
}

/** The building from its move day on: there the crew sets up a move later, within the same shift. */
function movedTo(building: Building, last: Visit, move: number): Building['input'] {
  const { input } = building
  const firstDay = moveDay(building, last)
  const { begins } = crewDay(building, firstDay)
  // A shift under way counts its set-up as done; this one has it still before it.
  return {
    ...input,
    calendar: { firstDay, now: begins + move + input.crew.setUp },
    shiftBegan: begins,
  }
}

/** The move is made as late as it may be on its day; where nothing can be printed that day, at its beginning. */
function visitsOf(
  building: Building,
  { days }: Campaign,
  after: Visit | undefined,
  move: number,
): readonly Visit[] {
  const moved = after && moveDay(building, after)
  return days.map(({ date, start, end, lifts }, i) => ({
    building: building.name,
    date,
    start,
    end,
    lifts,
    ...(i === 0 && moved !== undefined
      ? { moveStart: date === moved ? start - move : crewDay(building, moved).begins }
      : {}),
  }))
}

function orders<T>(items: readonly T[]): readonly (readonly T[])[] {
  if (items.length <= 1) return [items]
  return items.flatMap((item, i) =>
    orders([...items.slice(0, i), ...items.slice(i + 1)]).map(rest => [item, ...rest]),
  )
}
