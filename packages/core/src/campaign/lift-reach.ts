import type { CubicMetres, Instant, Seconds } from '../quantity/index.js'
import type { LiftTrial } from './campaign.js'
import type { Ground } from './ground.js'
import { type HourTable, hourOf, TICK, usableUntil } from './hour-table.js'
import type { SectionClock } from './section-clock.js'
import { askStanding, estimateStanding, keepSample } from './standing-book.js'

/** How far one lift gets from a start, whatever the crew's shift: layer ends up to the first limit. */
export interface Reach {
  readonly start: Instant
  readonly ends: readonly Instant[]
  /** `warmth[n − 1]`: mean mix temperature of the first n layers. */
  readonly warmth: Float64Array
  /** The first so many ends: lifts of one reach share them. */
  readonly first: (layers: number) => readonly Instant[]
}

/** A lift that keeps every limit. */
export interface FittedLift {
  readonly start: Instant
  readonly ends: readonly Instant[]
  readonly layers: number
  readonly safety: number
}

/**
 * Layers on top of layer `below` that rule, lift ends, resting time and open hours allow from `start` on.
 * Standing is asked by `fitLift`, once the shift has cut the lift.
 */
export function reachOf(ground: Ground, s: number, below: number, start: Instant): Reach {
  const key = `${s}|${below}|${start}`
  const known = ground.reaches.get(key)
  if (known) return known
  const ends = layerEnds(ground, ground.sections[s]!, below, start)
  const made = { start, ends, warmth: meanTemperatures(ground.table, ends), first: firstOf(ends) }
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

function meanTemperatures(table: HourTable, ends: readonly Instant[]): Float64Array {
  const means = new Float64Array(ends.length)
  for (let i = 0, sum = 0; i < ends.length; i++) {
    sum += table.temperature[hourOf(table, ends[i]! - TICK)]!
    means[i] = sum / (i + 1)
  }
  return means
}

function restAfter(table: HourTable, laid: Instant): Seconds {
  return table.rest(hourOf(table, laid - TICK)).seconds
}

/** Whether the layer is laid within one open stretch. */
const isUsable = (table: HourTable, from: Instant, to: Instant): boolean =>
  usableUntil(table, from) >= to - TICK

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
  const { ends, warmth, first } = reachOf(ground, s, below, start)
  const most = Math.min(wish, layersBy(ends, closing), layersSupplied(ground, section, below, ends, printed))
  if (most < 1) return undefined
  if (ground.standing === 'sampled') {
    const layers = sampledLayers(ground, section, below, start, most, warmth[most - 1]!)
    return layers < 1 ? undefined : { start, ends: first(layers), layers, safety: Number.POSITIVE_INFINITY }
  }
  const { layers, safety } = standingOf(ground, section, below, start, first(most))
  return layers < 1 ? undefined : { start, ends: first(layers), layers, safety }
}

function firstOf(ends: readonly Instant[]): (layers: number) => readonly Instant[] {
  const cut: (readonly Instant[] | undefined)[] = []
  cut[ends.length] = ends
  return layers => (cut[layers] ??= ends.slice(0, layers))
}

function layersBy(ends: readonly Instant[], closing: Instant): number {
  let [layers, more] = [0, ends.length]
  while (layers < more) {
    const middle = (layers + more + 1) >> 1
    if (ends[middle - 1]! > closing + TICK) more = middle - 1
    else layers = middle
  }
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

/** How many of these layers stand. A shorter lift has other temperatures, so it is asked anew until the answer holds. */
export function standingOf(
  ground: Ground,
  section: SectionClock,
  below: number,
  start: Instant,
  ends: readonly Instant[],
): { readonly layers: number; readonly safety: number } {
  let layers = ends.length
  while (layers > 0) {
    const trial = liftTrial(ground.table, section, below, start, ends.slice(0, layers))
    const answer = askStanding(ground.book, trial)
    if (answer.layers >= layers) return { layers, safety: answer.safety }
    layers = Math.max(0, Math.floor(answer.layers))
  }
  return { layers: 0, safety: 0 }
}

/** The book's estimate of how many of `most` layers stand; where it has none near enough, a full lift is asked once. */
export function sampledLayers(
  ground: Ground,
  section: SectionClock,
  below: number,
  start: Instant,
  most: number,
  temperature: number,
): number {
  const pace = section.pace
  const known = estimateStanding(ground.book, pace, below, temperature, most)
  if (known !== undefined) return known
  const layerEnds = unhinderedEnds(section, below, start)
  const full = { section: section.work.section, firstLayer: below + 1, start, layerEnds, temperature }
  const answer = askStanding(ground.book, full)
  keepSample(ground.book, pace, full, answer)
  return Math.min(most, Math.floor(answer.layers))
}

/** Clock times of a lift up to the height rule, printed without a break but for the holds. */
export function unhinderedEnds(section: SectionClock, below: number, start: Instant): readonly Instant[] {
  const top = Math.min(section.layers, below + section.ruleLayers)
  const ends: Instant[] = []
  for (let layer = below + 1, end = start; layer <= top; layer++) {
    end += (layer > below + 1 ? section.holdAfter[layer - 1]! : 0) + section.printTime[layer]!
    ends.push(end)
  }
  return ends
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
