import type { Seconds } from '../quantity/index.js'
import type { SectionWork } from './campaign.js'
import { layersByRule } from './campaign-input.js'

/** More lifts than any campaign has: the section never gets up. */
export const NEVER = 1_000_000

/** A section's work, indexed by layer for the scheduler. Layer numbers start at 1; index 0 is the slab. */
export interface SectionClock {
  readonly work: SectionWork
  readonly layers: number
  /** Most layers of one lift by the height rule. */
  readonly ruleLayers: number
  /** `printTime[k]`: laying layer k. `printedBy[k]`: laying layers 1…k, without holds. */
  readonly printTime: Float64Array
  readonly printedBy: Float64Array
  readonly volumeBy: Float64Array
  /** `holdAfter[k]`: planned stops between layer k and k + 1, together. */
  readonly holdAfter: Float64Array
  /** `heldBy[k]`: planned stops before layer k + 1 goes on, all from the slab up. */
  readonly heldBy: Float64Array
  /** `liftTop[k]`: the layer at which a lift that starts on top of layer k has to end at the latest. */
  readonly liftTop: Int32Array
  /** `liftsLeft[k]`: fewest lifts from layer k to the top, by rule and lift ends alone. */
  readonly liftsLeft: Int32Array
  /** `stretch[k]`: layers between the lift ends that layer k + 1 lies between. */
  readonly stretch: Int32Array
  /** Lifts of one section at one nozzle speed stand alike. */
  readonly pace: string
}

/** `ends`: layers at which a lift has to end besides the work's own. */
export function sectionClock(
  work: SectionWork,
  liftHeight: number,
  ends: readonly number[] = [],
): SectionClock {
  const layers = work.printTimes.length
  const printTime = Float64Array.from([0, ...work.printTimes])
  const volumes = Float64Array.from([0, ...work.volumes])
  const ruleLayers = layersByRule(liftHeight, work.layerHeight)
  const liftTop = liftTops(work, layers, ends)
  const printedBy = runningSum(printTime)
  const holdAfter = holdsAfter(work, layers)
  return {
    work,
    layers,
    ruleLayers,
    printTime,
    printedBy,
    volumeBy: runningSum(volumes),
    holdAfter,
    heldBy: runningSum([0, ...holdAfter]).slice(1),
    liftTop,
    liftsLeft: fewestLifts(layers, ruleLayers, liftTop),
    stretch: stretches(liftTop),
    pace: `${work.section}|${printedBy[layers]}`,
  }
}

/** Planned stops on top of layer k, together [s]. */
function holdsAfter(work: SectionWork, layers: number): Float64Array {
  const holds = new Float64Array(layers + 1)
  for (const hold of work.holds) {
    if (hold.afterLayer >= 0 && hold.afterLayer <= layers) holds[hold.afterLayer]! += hold.duration
  }
  return holds
}

function liftTops(work: SectionWork, layers: number, more: readonly number[]): Int32Array {
  const ends = new Set([...work.liftEnds.map(end => end.afterLayer), ...more])
  const tops = new Int32Array(layers + 1)
  for (let k = layers, top = layers; k >= 0; k--) {
    tops[k] = top
    if (ends.has(k)) top = k
  }
  return tops
}

function stretches(liftTop: Int32Array): Int32Array {
  const stretch = new Int32Array(liftTop.length)
  for (let k = 0, foot = 0; k < liftTop.length; k++) {
    if (k > 0 && liftTop[k] !== liftTop[k - 1]) foot = k
    stretch[k] = liftTop[k]! - foot
  }
  return stretch
}

/** Taking the tallest lift each time is best: from a higher start one never needs more lifts. */
function fewestLifts(layers: number, ruleLayers: number, liftTop: Int32Array): Int32Array {
  const left = new Int32Array(layers + 1)
  if (ruleLayers < 1) return left.fill(NEVER, 0, layers)
  for (let k = layers - 1; k >= 0; k--) left[k] = 1 + left[Math.min(liftTop[k]!, k + ruleLayers)]!
  return left
}

function runningSum(values: ArrayLike<number>): Float64Array {
  const sums = new Float64Array(values.length)
  for (let i = 1; i < values.length; i++) sums[i] = sums[i - 1]! + values[i]!
  return sums
}

/** Nozzle time for layers from + 1 … to, without holds [s]. */
export const printTimeBetween = (clock: SectionClock, from: number, to: number): Seconds =>
  clock.printedBy[to]! - clock.printedBy[from]!

/** Planned stops before and between layers from + 1 … to, together [s]. */
export const holdsBetween = (clock: SectionClock, from: number, to: number): Seconds =>
  to <= from ? 0 : clock.heldBy[to - 1]! - (from > 0 ? clock.heldBy[from - 1]! : 0)

/** Print time and planned stops for layers from + 1 … to, the stops before the first of them included. */
export const workBetween = (clock: SectionClock, from: number, to: number): Seconds =>
  printTimeBetween(clock, from, to) + holdsBetween(clock, from, to)
