import { type CampaignInput, calendarDays, leastCampaign, type SectionStanding } from '../campaign/index.js'
import { addDays } from '../clock/index.js'
import { isBeyond } from '../limit/index.js'
import { assert } from '../result/index.js'
import { campaignOfVisits } from './campaign-of-visits.js'
import { oneAfterOther } from './one-after-other.js'
import {
  nothingStands,
  type SharedSite,
  type SiteCampaign,
  type SiteInput,
  type SiteStanding,
  timeLeft,
} from './site-campaign.js'
import { type SiteDay, siteDays } from './site-days.js'

export interface ShareOptions {
  /** Called for each day planned; answering `false` stops. */
  readonly progress?: (share: number) => Promise<boolean> | boolean
}

/** Ways kept from day to day. */
const WAYS = 6

/** A way to have got this far. */
interface Way {
  readonly standing: SiteStanding
  /** Where the machine stands; -1: nowhere yet. */
  readonly at: number
  readonly days: readonly SiteDay[]
  readonly left: number
  readonly busy: number
}

/**
 * One machine and one crew shared among buildings, day by day: a day at one building, or at one and then at another. Of all ways to
 * have come to a day the few with the least left to print go on; the first day that sees all walls up ends the search. Never later
 * than one building after the other, which is planned for comparison. Undefined only when `progress` stopped it.
 */
export async function shareSite(
  site: SiteInput,
  options: ShareOptions = {},
): Promise<SharedSite | undefined> {
  assert(site.buildings.length >= 2, 'a shared site has two buildings or more')
  const plain = oneAfterOther(site)
  const until = plain.finished ? plain.finishDate : lastDate(site)
  const first = firstDate(site)
  const span = Math.max(1, calendarDays(first, until))
  const standing = nothingStands(site)
  let ways: readonly Way[] = [{ standing, at: -1, days: [], left: leftOf(site, standing), busy: 0 }]
  let found: Way | undefined
  const days = siteDays(site)
  for (let date = first; date <= until && !found; date = addDays(date, 1)) {
    if ((await options.progress?.(calendarDays(first, date) / span)) === false) return undefined
    const next = ways.flatMap(way => [
      way,
      ...days(way.standing, way.at, date).map(day => onward(site, way, day)),
    ])
    ways = fewest(next)
    found = ways.filter(way => way.left <= 0).sort((a, b) => a.busy - b.busy)[0]
  }
  const shared =
    found &&
    campaignOfVisits(
      site,
      found.days.flatMap(day => day.visits),
    )
  return compared(site, shared, plain)
}

function compared(site: SiteInput, shared: SiteCampaign | undefined, plain: SiteCampaign): SharedSite {
  // An hour on the same day is not worth the moves.
  const isSooner = shared?.finished && (!plain.finished || shared.finishDate < plain.finishDate)
  const best = isSooner ? shared : plain
  const date = siteBound(site)
  return {
    shared: best,
    oneAfterOther: plain,
    ...(best.finished && plain.finished
      ? { daysGained: calendarDays(best.finishDate, plain.finishDate) }
      : {}),
    ...(date === undefined ? {} : { bound: date }),
  }
}

function onward(site: SiteInput, way: Way, day: SiteDay): Way {
  const standing = day.standing
  return {
    standing,
    at: day.at,
    days: [...way.days, day],
    left: leftOf(site, standing),
    busy: way.busy + day.visits.reduce((sum, visit) => sum + visit.end - (visit.moveStart ?? visit.start), 0),
  }
}

const leftOf = ({ buildings }: SiteInput, standing: SiteStanding): number =>
  buildings.reduce((sum, building, b) => sum + timeLeft(building, standing[b]!), 0)

/**
 * The ways worth going on with: those with the least left, and as many of those whose least finished building has the least left; no two
 * alike in what stands and where the machine is.
 */
function fewest(ways: readonly Way[]): readonly Way[] {
  const distinct = new Map<string, Way>()
  for (const way of ways) {
    const key = JSON.stringify([way.at, way.standing.map(heights)])
    const known = distinct.get(key)
    if (!known || way.busy < known.busy) distinct.set(key, way)
  }
  const all = [...distinct.values()]
  const byTotal = [...all].sort((a, b) => a.left - b.left || a.busy - b.busy).slice(0, WAYS)
  const byLifts = [...all].sort((a, b) => liftsOf(b) - liftsOf(a) || a.left - b.left).slice(0, WAYS)
  return [...new Set([...byTotal, ...byLifts])]
}

const heights = (standing: readonly SectionStanding[]): readonly (readonly [string, number])[] =>
  standing.map(({ section, layers }) => [section, layers] as const)

const liftsOf = (way: Way): number =>
  way.days.reduce((sum, day) => sum + day.visits.reduce((lifts, visit) => lifts + visit.lifts.length, 0), 0)

/** A slab may be ready later than another. */
const firstDate = ({ buildings }: SiteInput): string =>
  buildings.map(({ input }) => input.calendar.firstDay).sort()[0]!

const lastDate = ({ buildings }: SiteInput): string => {
  const last = Math.max(...buildings.map(({ input }) => input.hours.at(-1)?.start ?? 0))
  return new Date(last * 1000).toISOString().slice(0, 10)
}

/**
 * No way of sharing is up before this date: all sections as if of one building, without moves, in every hour that is open at any of
 * the buildings.
 */
export function siteBound({ buildings }: SiteInput): string | undefined {
  const [first] = buildings
  assert(first, 'a site has buildings')
  const tallest = Math.max(...buildings.map(({ input }) => input.rules.liftHeight.value))
  const shortestCure = Math.min(...buildings.map(({ input }) => input.rules.overnightCure.value))
  const merged: CampaignInput = {
    ...first.input,
    calendar: { firstDay: firstDate({ buildings, move: 0 }) },
    work: buildings.flatMap(({ name, input }) =>
      input.work.map(work => ({ ...work, section: `${name}/${work.section}` })),
    ),
    hours: openAnywhere(buildings.map(({ input }) => input.hours)),
    rules: {
      ...first.input.rules,
      liftHeight: { value: tallest, source: 'the tallest of the site' },
      overnightCure: { value: shortestCure, source: 'the shortest of the site' },
    },
    standing: buildings.flatMap(({ name, input }) =>
      (input.standing ?? []).map(one => ({ ...one, section: `${name}/${one.section}` })),
    ),
  }
  return leastCampaign(merged).date
}

function openAnywhere(sets: readonly CampaignInput['hours'][]): CampaignInput['hours'] {
  const best = new Map<number, CampaignInput['hours'][number]>()
  for (const hour of sets.flat()) {
    const known = best.get(hour.start)
    if (!known || (!canPrint(known) && canPrint(hour))) best.set(hour.start, hour)
  }
  return [...best.values()].sort((a, b) => a.start - b.start)
}

/** Open as it is, or once the mix is chilled. */
const canPrint = (hour: CampaignInput['hours'][number]): boolean =>
  hour.open ||
  (hour.mixTemperatureChilled !== undefined &&
    hour.limits.every(limit => limit.kind === 'mix-hot' || !isBeyond(limit)))
