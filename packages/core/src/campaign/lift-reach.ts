import type { CubicMetres, Instant, Seconds } from '../quantity/index.js'
import type { LiftTrial } from './campaign.js'
import type { Ground } from './ground.js'
import { type HourTable, hourOf } from './hour-table.js'
import type { SectionClock } from './section-clock.js'

/** How far one lift gets from a start, whatever the crew's shift: layer ends up to the first limit. */
export interface Reach {
  readonly start: Instant
  readonly ends: readonly Instant[]
}

/** A lift that keeps every limit. */
export interface FittedLift extends Reach {
  readonly layers: number
  readonly safety: number
}

/** Tolerance on clock comparisons [s]: far below a tap on the screen, far above rounding. */
const TICK = 1e-6

/**
 * Layers on top of layer `below` that rule, lift ends, resting time and open hours allow from `start` on.
 * Standing is asked by `fitLift`, once the shift has cut the lift.
 */
export function reachOf(ground: Ground, s: number, below: number, start: Instant): Reach {
  const key = `${s}|${below}|${start}`
  const known = ground.reaches.get(key)
  if (known) return known
  const made = { start, ends: layerEnds(ground, ground.sections[s]!, below, start) }
  ground.reaches.set(key, made)
  return made
}

function layerEnds(ground: Ground, section: SectionClock, below: number, start: Instant): Instant[] {
  const { table } = ground
  const top = Math.min(section.liftTop[below]!, below + section.ruleLayers)
  const ends: Instant[] = []
  for (let layer = below + 1, end = start; layer <= top; layer++) {
    const pause = layer === below + 1 ? 0 : section.holdAfter[layer - 1]!
    const next = end + pause + section.printTime[layer]!
    if (layer > below + 1 && next - end > restAfter(table, end) + TICK) break
    if (!isUsable(table, end + pause, next)) break
    ends.push(next)
    end = next
  }
  return ends
}

function restAfter(table: HourTable, laid: Instant): Seconds {
  return table.rest(hourOf(table, laid - TICK)).seconds
}

/** Whether every hour the layer is laid in is open. */
function isUsable(table: HourTable, from: Instant, to: Instant): boolean {
  const last = hourOf(table, to - TICK)
  for (let hour = hourOf(table, from); hour <= last; hour++) {
    if (hour < 0 || hour >= table.count || table.use[hour] === 0) return false
  }
  return true
}

/**
 * The tallest lift of at most `wish` layers that also ends by `closing`, has its mix in the silo and stands.
 * A shorter lift has other temperatures, so standing is asked anew until the answer carries the lift it was asked for.
 */
export function fitLift(
  ground: Ground,
  s: number,
  below: number,
  start: Instant,
  closing: Instant,
  printed: CubicMetres,
  wish: number,
): FittedLift | undefined {
  const section = ground.sections[s]!
  const { ends } = reachOf(ground, s, below, start)
  let layers = Math.min(wish, layersBy(ends, closing), layersSupplied(ground, section, below, ends, printed))
  let safety = Number.POSITIVE_INFINITY
  while (layers > 0) {
    const stands = standingOf(ground, s, below, start, ends, layers)
    safety = stands.safety
    if (stands.layers >= layers) break
    layers = Math.max(0, Math.floor(stands.layers))
  }
  return layers > 0 ? { start, ends: ends.slice(0, layers), layers, safety } : undefined
}

function layersBy(ends: readonly Instant[], closing: Instant): number {
  let layers = ends.length
  while (layers > 0 && ends[layers - 1]! > closing + TICK) layers--
  return layers
}

function layersSupplied(
  ground: Ground,
  section: SectionClock,
  below: number,
  ends: readonly Instant[],
  printed: CubicMetres,
): number {
  const { deliveries } = ground.input
  if (!deliveries) return ends.length
  const isShort = (end: Instant, i: number) =>
    printed + section.volumeBy[below + i + 1]! - section.volumeBy[below]! > suppliedBy(deliveries, end) + 1e-9
  const short = ends.findIndex(isShort)
  return short < 0 ? ends.length : short
}

/** Mix delivered by a moment, stock included. A layer needs all of its mix by its end. */
export const suppliedBy = (
  deliveries: NonNullable<Ground['input']['deliveries']>,
  at: Instant,
): CubicMetres =>
  deliveries.arrivals.reduce((sum, load) => (load.at <= at ? sum + load.volume : sum), deliveries.stock)

function standingOf(
  ground: Ground,
  s: number,
  below: number,
  start: Instant,
  ends: readonly Instant[],
  layers: number,
): { readonly layers: number; readonly safety: number } {
  const key = `${s}|${below}|${start}|${layers}`
  const known = ground.standings.get(key)
  if (known) return known
  const { layers: stands, safety } = ground.input.physics.standing(
    liftTrial(ground.table, ground.sections[s]!, below, start, ends.slice(0, layers)),
  )
  const answer = { layers: stands, safety }
  ground.standings.set(key, answer)
  return answer
}

/** The question put to the physics: a lift at its clock times, with the mean mix temperature of its layers. */
export function liftTrial(
  table: HourTable,
  section: SectionClock,
  below: number,
  start: Instant,
  ends: readonly Instant[],
): LiftTrial {
  let sum = 0
  let known = 0
  for (const end of ends) {
    const temperature = table.temperature[hourOf(table, end - TICK)]
    if (temperature === undefined || Number.isNaN(temperature)) continue
    sum += temperature
    known++
  }
  const temperature = known > 0 ? sum / known : table.temperature.find(one => !Number.isNaN(one))!
  return { section: section.work.section, firstLayer: below + 1, start, layerEnds: ends, temperature }
}
