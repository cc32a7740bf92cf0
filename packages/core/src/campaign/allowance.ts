import type { Limit, LimitKind } from '../limit/index.js'
import type { Instant } from '../quantity/index.js'
import type { LiftEnd } from './campaign.js'
import { layersByRule } from './campaign-input.js'
import type { DayPlan, PlacedLift } from './day-plan.js'
import { liftVolume, mostLayers, standAfter } from './day-plan.js'
import type { Ground, Stand } from './ground.js'
import { type HourTable, hourOf, limitsBeyond, openSpanAt, TICK } from './hour-table.js'
import { liftTrial, suppliedBy, unhinderedEnds } from './lift-reach.js'
import type { SectionClock } from './section-clock.js'
import { askStanding } from './standing-book.js'

/** One limit and the layers it alone would have allowed. */
export interface Allowance {
  readonly limit: Limit
  readonly layers: number
}

/** A placed lift with what is around it, as the reports need it. */
export interface LiftScene {
  readonly ground: Ground
  readonly plan: DayPlan
  readonly lift: PlacedLift
  /** Printed since the campaign's start, before this lift [m³]. */
  readonly printed: number
  /** What stood that morning, and at the campaign's start. */
  readonly stand: Stand
  readonly start: Stand
}

/** Layers there would be, had nothing stopped the lift: the rule height, or what is left. */
export function wishedLayers({ ground, lift }: LiftScene): number {
  const section = ground.sections[lift.s]!
  return Math.min(section.ruleLayers, section.layers - lift.below)
}

/** Every limit that would stop the lift by itself, in the order in which equal ones are named. */
export function liftAllowances(scene: LiftScene): readonly Allowance[] {
  const { ground, lift } = scene
  const ends = unhinderedEnds(ground.sections[lift.s]!, lift.below, lift.start)
  const byHour = hourAllowances(scene, ends)
  return [
    ...plannedAllowances(scene),
    ...standingAllowance(scene, ends),
    ...restAllowance(scene, ends),
    ...byHour,
    ...shiftAllowance(scene, ends),
    ...deliveryAllowance(scene, ends),
  ]
}

/** Top of wall, lift ends and the height rule: known before anybody prints. */
function plannedAllowances({ ground, lift, stand }: LiftScene): readonly Allowance[] {
  const section = ground.sections[lift.s]!
  const { layerHeight, liftEnds } = section.work
  const left = section.layers - lift.below
  const rule = ground.input.rules.liftHeight
  const metres = (layers: number) => layers * layerHeight
  const planned: Allowance[] = []
  if (left <= section.ruleLayers) planned.push({ layers: left, limit: topOfWall(metres(left)) })
  const end = liftEnds.find(one => one.afterLayer === section.liftTop[lift.below])
  if (end && end.reason !== 'top' && end.afterLayer < section.layers) {
    planned.push({ layers: end.afterLayer - lift.below, limit: endLimit(end, layerHeight) })
  }
  const settled = ground.pins[lift.s]!.lifts.length > 0 ? mostLayers(ground, stand, lift.s) : left
  if (settled < Math.min(left, section.ruleLayers) && settled < (planned[0]?.layers ?? left)) {
    const [demand, capacity] = [metres(settled + 1), metres(settled)]
    planned.push({
      layers: settled,
      limit: { kind: 'lift-height', demand, capacity, unit: 'm', source: 'a pin of the lead' },
    })
  }
  if (section.ruleLayers < left) {
    const limit: Limit = {
      kind: 'lift-height',
      demand: metres(layersByRule(rule.value, layerHeight) + 1),
      capacity: rule.value,
      unit: 'm',
      source: rule.source,
    }
    planned.push({ layers: section.ruleLayers, limit })
  }
  return planned
}

const topOfWall = (height: number): Limit => ({
  kind: 'top-of-wall',
  demand: height,
  capacity: height,
  unit: 'm',
  source: 'the job',
})

const endLimit = (end: LiftEnd, layerHeight: number): Limit => ({
  kind: end.reason === 'pour' ? 'pour-level' : 'lintel-head',
  demand: (end.afterLayer + 1) * layerHeight,
  capacity: end.afterLayer * layerHeight,
  unit: 'm',
  source: 'the job',
})

/** What stands is asked of the physics, whatever the search took for granted: the same lift has the same limits in any plan. */
function standingAllowance({ ground, lift }: LiftScene, ends: readonly Instant[]): readonly Allowance[] {
  const section = ground.sections[lift.s]!
  let limit: Limit | undefined
  let layers = ends.length
  while (layers > 0) {
    const trial = liftTrial(ground.table, section, lift.below, lift.start, ends.slice(0, layers))
    const stands = askStanding(ground.book, trial)
    if (stands.layers >= layers) break
    limit = stands.limit
    layers = Math.max(0, Math.floor(stands.layers))
  }
  return limit ? [{ layers, limit: { ...limit, at: limit.at ?? ends[layers]! } }] : []
}

function restAllowance({ ground }: LiftScene, ends: readonly Instant[]): readonly Allowance[] {
  for (let i = 1; i < ends.length; i++) {
    const laid = ends[i - 1]!
    const rest = ground.table.rest(hourOf(ground.table, laid - TICK))
    const bare = ends[i]! - laid
    if (bare <= rest.seconds + TICK) continue
    const { source } = rest.limit
    const limit: Limit = {
      kind: 'resting-time',
      at: laid,
      demand: bare,
      capacity: rest.seconds,
      unit: 's',
      source,
    }
    return [{ layers: i, limit }]
  }
  return []
}

/** For each limit of the hours, the layers laid before it is passed: at its minute where it ends the open stretch. */
function hourAllowances({ ground, lift }: LiftScene, ends: readonly Instant[]): readonly Allowance[] {
  const { table } = ground
  const found = new Map<LimitKind, Allowance>()
  const note = (limit: Limit, at: Instant) => {
    if (found.has(limit.kind)) return
    found.set(limit.kind, { layers: ends.filter(end => end <= at + TICK).length, limit })
  }
  const span = openSpanAt(table, lift.start)
  const latest = ends.at(-1) ?? lift.start
  if (span?.endedBy && span.until < latest - TICK) note(span.endedBy, span.until)
  const last = hourOf(table, latest - TICK)
  for (let hour = hourOf(table, lift.start); hour <= last; hour++) {
    const opens = table.first + hour * 3600
    // A closed hour that the open stretch leads out of is no reason for its end.
    if (span && opens + 1800 < span.until) continue
    for (const limit of closingLimits(table, hour)) note(limit, Math.max(opens, span?.until ?? opens))
  }
  return [...found.values()].sort((a, b) => a.layers - b.layers)
}

function closingLimits(table: HourTable, hour: number): readonly Limit[] {
  const known = table.hours[hour]
  const at = table.first + hour * 3600
  if (!known) {
    return [{ kind: 'permitted-hours', at, demand: 1, capacity: 0, unit: 'hour', source: 'no weather known' }]
  }
  return table.use[hour] === 0 ? limitsBeyond(known) : []
}

function shiftAllowance({ ground, plan }: LiftScene, ends: readonly Instant[]): readonly Allowance[] {
  const { washOut, longestShift } = ground.input.crew
  const closes = Math.min(plan.day.closes, plan.shiftStart + longestShift)
  const layers = ends.filter(end => end <= closes - washOut + TICK).length
  if (layers >= ends.length) return []
  const limit: Limit = {
    kind: 'shift',
    at: closes - washOut,
    demand: ends[layers]! + washOut - plan.shiftStart,
    capacity: closes - plan.shiftStart,
    unit: 's',
    source: 'the job',
  }
  return [{ layers, limit }]
}

function deliveryAllowance(scene: LiftScene, ends: readonly Instant[]): readonly Allowance[] {
  const { ground, lift, printed } = scene
  const { deliveries } = ground.input
  if (!deliveries) return []
  const section = ground.sections[lift.s]!
  const needed = (i: number) => printed + volumeOf(section, lift.below, i + 1)
  const short = ends.findIndex((end, i) => needed(i) > suppliedBy(deliveries, end) + 1e-9)
  if (short < 0) return []
  const at = ends[short]!
  const limit: Limit = {
    kind: 'delivery',
    at,
    demand: needed(short) - printed,
    capacity: suppliedBy(deliveries, at) - printed,
    unit: 'm³',
    source: 'the job',
  }
  return [{ layers: short, limit }]
}

const volumeOf = (section: SectionClock, below: number, layers: number): number =>
  section.volumeBy[below + layers]! - section.volumeBy[below]!

/** Every lift of a campaign with what is around it. */
export function scenesOf(ground: Ground, plans: readonly DayPlan[], start: Stand): readonly LiftScene[] {
  let printed = 0
  let stand = start
  return plans.flatMap(plan => {
    const morning = stand
    stand = standAfter(ground, stand, plan)
    return plan.lifts.map(lift => {
      const scene = { ground, plan, lift, printed, stand: morning, start }
      printed += liftVolume(ground, lift)
      return scene
    })
  })
}
