import type { Limit } from '../limit/index.js'
import type { Celsius } from '../quantity/index.js'
import type { LiftPhysics, LiftTrial } from './campaign.js'

/** What the physics said of one lift. */
export interface StandingAnswer {
  readonly layers: number
  readonly limit: Limit
  readonly safety: number
}

/** One answer kept as a sample: how many layers of a full lift on top of layer `below` stand at this temperature. */
interface StandingSample {
  readonly below: number
  readonly temperature: Celsius
  readonly asked: number
  readonly layers: number
}

/**
 * Standing is dear to compute, and a search asks thousands of times for lifts that differ by little. The book keeps
 * every answer, and lends the nearest one as an estimate; a lift is never planned for good on an estimate alone.
 */
export interface StandingBook {
  readonly physics: LiftPhysics
  readonly answers: Map<string, StandingAnswer>
  readonly samples: Map<string, StandingSample[]>
}

export const openBook = (physics: LiftPhysics): StandingBook => ({
  physics,
  answers: new Map(),
  samples: new Map(),
})

/** Samples further apart than this are not lent to each other [K]. */
const NEAR_ENOUGH: Celsius = 2.5

/** The physics' own answer for exactly this lift. */
export function askStanding(book: StandingBook, trial: LiftTrial): StandingAnswer {
  const { section, firstLayer, start, layerEnds, temperature } = trial
  // A sample is asked for at the temperature of fewer layers than it has.
  const key = `${section}|${firstLayer}|${start}|${layerEnds.length}|${layerEnds.at(-1)}|${temperature}`
  const known = book.answers.get(key)
  if (known) return known
  const answer = book.physics.standing(trial)
  book.answers.set(key, answer)
  return answer
}

/** Keeps an answer as a sample for lifts of the same section at the same pace. */
export function keepSample(book: StandingBook, pace: string, trial: LiftTrial, answer: StandingAnswer): void {
  const below = trial.firstLayer - 1
  const samples = book.samples.get(pace) ?? []
  const sample = {
    below,
    temperature: trial.temperature,
    asked: trial.layerEnds.length,
    layers: Math.floor(answer.layers),
  }
  book.samples.set(pace, [...samples, sample])
}

/**
 * Layers that probably stand, of `wish` on top of layer `below`: the answer of the nearest sample, first by temperature to
 * half a degree, then by height. Undefined where no sample is near enough.
 */
export function estimateStanding(
  book: StandingBook,
  pace: string,
  below: number,
  temperature: Celsius,
  wish: number,
): number | undefined {
  let best: StandingSample | undefined
  let nearest = Number.POSITIVE_INFINITY
  for (const sample of book.samples.get(pace) ?? []) {
    // A sample that stood whole says nothing of more layers than it was asked for.
    if (sample.layers >= sample.asked && sample.asked < wish) continue
    const apart = Math.abs(sample.temperature - temperature)
    if (apart > NEAR_ENOUGH) continue
    const distance = Math.round(apart * 2) + Math.abs(sample.below - below) / 1000
    if (distance > nearest) continue
    nearest = distance
    best = sample
  }
  return best && Math.min(wish, best.layers)
}
