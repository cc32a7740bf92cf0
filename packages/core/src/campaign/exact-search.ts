import { closeDay, type DayPlan, dayBegins, type PlacedLift, type Placing, placeAt } from './day-plan.js'
import { type Ground, isOpen, isUp, type Stand, volumePrinted } from './ground.js'
import { nextUsable, usableUntil } from './hour-table.js'
import { type Bounds, finishBound } from './lower-bound.js'
import { comparePleasant, extendTrail, passDay, startTrail, type Trail } from './trail.js'
import type { Found } from './wide-search.js'

/** How many lifts may be tried before the search gives up without a proof. */
export interface Patience {
  left: number
}

/** `found`: a finish sooner than `beat`. `proven`: without `found`, that there is none. */
export interface ExactAnswer {
  readonly found?: Found
  readonly proven: boolean
}

/**
 * Every way to fill every day, less those that cannot matter: a trail that nowhere stands higher and is nowhere
 * readier than another is dropped, and so is one whose bound does not beat the best known finish.
 *
 * Exact among campaigns in which every lift starts as soon as the nozzle is free, the section cured and the hour open
 * (or at the opening of a later stretch of the day, the shift begun as late as that needs), with standing as the ground
 * gives it, which a shorter remainder of a lift does not worsen.
 */
export function searchExact(
  ground: Ground,
  bounds: Bounds,
  start: Stand,
  beat: number,
  patience: Patience,
): ExactAnswer {
  let trails: readonly Trail[] = [startTrail(start)]
  for (let day = 0; day < Math.min(beat, ground.days.length); day++) {
    const next = trails
      .flatMap(trail => dayTrails(ground, trail, start, day, patience))
      .filter(trail => trail.missed === 0)
    if (patience.left <= 0) return { proven: false }
    const up = next.filter(trail => isUp(ground, trail.stand)).sort(comparePleasant)
    if (up[0]) return { found: { trail: up[0], finish: day }, proven: true }
    const hopeful = next.filter(trail => finishBound(ground, bounds, trail.stand, day + 1) < beat)
    trails = undominated(ground, hopeful, ground.days[day + 1]?.opens ?? 0, patience)
    if (trails.length === 0) return { proven: true }
  }
  return { proven: true }
}

/** A trail continued in every way over one day, the empty day included. */
function dayTrails(
  ground: Ground,
  trail: Trail,
  start: Stand,
  day: number,
  patience: Patience,
): readonly Trail[] {
  const workDay = ground.days[day]!
  const idle = passDay(ground, trail, workDay.date)
  if (workDay.off) return [idle]
  const printed = volumePrinted(ground, trail.stand, start)
  const plans: DayPlan[] = []
  const search: DaySearch = { ground, stand: trail.stand, plan: { day: workDay }, plans, patience }
  for (const begin of dayBegins(ground, workDay, trail.stand)) addLifts(search, [], begin, printed)
  return [idle, ...plans.map(plan => extendTrail(ground, trail, plan))]
}

interface DaySearch {
  readonly ground: Ground
  readonly stand: Stand
  readonly plan: Pick<DayPlan, 'day'>
  readonly plans: DayPlan[]
  readonly patience: Patience
}

function addLifts(search: DaySearch, lifts: readonly PlacedLift[], free: number, printed: number): void {
  const { ground, stand, patience, plan } = search
  for (const [s, section] of ground.sections.entries()) {
    if (!isOpen(ground, stand, s, plan.day.date) || lifts.some(lift => lift.s === s)) continue
    const holdBefore = section.holdAfter[stand.heights[s]!]!
    const place = { ground, stand, day: plan.day, s, from: free, lifts, printed }
    for (const start of startsOf(place, holdBefore)) {
      let wish = Number.POSITIVE_INFINITY
      while (wish >= 1) {
        if (patience.left-- <= 0) return
        const all = placeAt(place, start, holdBefore, wish)
        const lift = all?.at(-1)
        if (!all || !lift) break
        search.plans.push(closeDay(ground, plan.day, all))
        const volume = section.volumeBy[lift.below + lift.layers]! - section.volumeBy[lift.below]!
        addLifts(search, all, lift.ends.at(-1)!, printed + volume)
        wish = lift.layers - 1
      }
    }
  }
}

/** Moments a lift may start: at once, or when a later stretch of the day opens. */
function startsOf({ ground, stand, day, s, from, lifts }: Placing, holdBefore: number): readonly number[] {
  const { setUp, washOut, changeOver } = ground.input.crew
  const free =
    lifts.length > 0 ? from + changeOver + holdBefore : Math.max(from, day.opens + setUp + holdBefore)
  const latest = day.closes - washOut
  const starts: number[] = []
  for (
    let start = nextUsable(ground.table, Math.max(free, stand.ready[s]!), latest);
    start !== undefined;
    start = nextUsable(ground.table, usableUntil(ground.table, start), latest)
  ) {
    starts.push(start)
    // The first lift's later starts come from the day's other beginnings.
    if (lifts.length === 0) break
  }
  return starts
}

/**
 * Trails none of which is matched or bettered by another in every section's height and readiness. Pins make a section that
 * stands higher, or in more lifts, another case, not a better one.
 */
function undominated(
  ground: Ground,
  trails: readonly Trail[],
  tomorrow: number,
  patience: Patience,
): readonly Trail[] {
  const total = (trail: Trail) => trail.stand.heights.reduce((sum, height) => sum + height, 0)
  const sorted = [...trails].sort((a, b) => total(b) - total(a) || comparePleasant(a, b))
  const kept: Trail[] = []
  for (const trail of sorted) {
    patience.left -= kept.length / 64
    if (!kept.some(other => dominates(ground, other.stand, trail.stand, tomorrow))) kept.push(trail)
  }
  return kept
}

const dominates = ({ pins }: Ground, a: Stand, b: Stand, tomorrow: number): boolean =>
  a.heights.every((height, s) =>
    pins[s]!.lifts.length > 0
      ? height === b.heights[s]! && a.lifts[s] === b.lifts[s]
      : height >= b.heights[s]!,
  ) && a.ready.every((at, s) => Math.max(at, tomorrow) <= Math.max(b.ready[s]!, tomorrow))
