import { sayQuantity, type Units } from '../limit/index.js'
import { mean, standardDeviation } from '../numeric/index.js'
import type { Metres, MetresPerSecond, Seconds } from '../quantity/index.js'
import type { Problem, Result } from '../result/index.js'
import { failure, success } from '../result/index.js'

/** One start or stop on trial: how far the nozzle went before the bead was full, or after the pump was told to stop. */
export interface LagTrial {
  readonly at: string
  readonly kind: 'start' | 'stop'
  readonly speed: MetresPerSecond
  /** Bare length at a start, tail length at a stop. */
  readonly distance: Metres
}

/** A lag with its doubt, and what the machine file does about it. */
export interface Lag {
  readonly seconds: Seconds
  /** Standard error of the mean; absent with a single trial. */
  readonly error?: number
  readonly trials: number
  readonly say: string
}

export interface Lags {
  readonly start?: Lag
  readonly stop?: Lag
}

/** Start and stop lag from trials: time = distance over speed, meaned. Negative distances are problems. */
export function fitLags(trials: readonly LagTrial[], units: Units = 'metric'): Result<Lags> {
  const problems = trials.flatMap(trial => badTrial(trial, units))
  if (problems.length > 0) return failure(problems)
  const start = lagOf(trials, 'start')
  const stop = lagOf(trials, 'stop')
  return success({ ...(start ? { start } : {}), ...(stop ? { stop } : {}) })
}

function lagOf(trials: readonly LagTrial[], kind: LagTrial['kind']): Lag | undefined {
  const times = trials.filter(trial => trial.kind === kind).map(({ distance, speed }) => distance / speed)
  if (times.length === 0) return undefined
  const seconds = mean(times)
  const error = times.length > 1 ? standardDeviation(times) / Math.sqrt(times.length) : undefined
  const doubt = error === undefined ? 'one trial, doubt unknown' : `± ${(2 * error).toFixed(2)} s`
  const deed =
    kind === 'start'
      ? 'the pump starts that much before the nozzle moves'
      : 'the pump stops that much before the end'
  return {
    seconds,
    ...(error === undefined ? {} : { error }),
    trials: times.length,
    say: `${kind === 'start' ? 'Start' : 'Stop'} lag ${seconds.toFixed(2)} s (${doubt}): ${deed}.`,
  }
}

const badTrial = ({ at, kind, speed, distance }: LagTrial, units: Units): Problem[] =>
  speed > 0 && distance >= 0 && Number.isFinite(speed) && Number.isFinite(distance)
    ? []
    : [
        {
          code: 'trial/lag-value',
          at,
          say: `The ${kind} trial gives ${sayQuantity(1000 * distance, 'mm', units)} at ${sayQuantity(1000 * speed, 'mm/s', units)}; the distance is 0 or more, the speed above 0.`,
        },
      ]
