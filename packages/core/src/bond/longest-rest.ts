import type { Rules } from '../job/index.js'
import type { Limit } from '../limit/index.js'
import type { MixModel } from '../mix/index.js'
import { ageFactor } from '../mix/index.js'
import type { Celsius, Instant, Metres, MetresPerSecond, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { PrintHour } from '../weather/index.js'
import { dryingRest } from './drying-rest.js'
import { type StructurationRest, structurationRest } from './structuration-rest.js'

export type RestCause = 'structuration' | 'drying' | 'rest-rule'

export interface LongestRest {
  readonly seconds: Seconds
  readonly limit: Limit
  /** What ends the rest first. */
  readonly cause: RestCause
  /** Water lost by then [kg/m²], and equivalent age reached [s]: what the number rests on. */
  readonly evaporated: number
  readonly equivalentAge: Seconds
}

export interface RestOptions {
  /** Layer height and nozzle speed of the intermixing index. */
  readonly layerHeight?: Metres
  readonly speed?: MetresPerSecond
  /** The mix's own rest at this layer height and speed, where the caller asks many times. */
  readonly stiffened?: StructurationRest
  /** The chiller is at work: the hours' chilled mix temperature counts. */
  readonly chilled?: boolean
  /** Temperature of the resting layer, where the caller knows it better than the mix at the nozzle. */
  readonly temperatureAt?: (at: Instant) => Celsius
}

/**
 * How long a layer may lie bare from `at` on before the next one covers it, and what ends that time: structuration
 * (equivalent age), drying (evaporated water against the limit set by test) or the job's own longest rest.
 * Weather changes from hour to hour while the layer rests; the last known hour goes on where the hours end.
 */
export function longestRest(
  at: Instant,
  mix: MixModel,
  hours: readonly PrintHour[],
  rules: Pick<Rules, 'dryingMost' | 'restMost'>,
  options: RestOptions = {},
): LongestRest {
  assert(Number.isFinite(rules.restMost.value) && rules.restMost.value > 0, 'the longest rest is a time')
  const stiffened = options.stiffened ?? structurationRest(mix, options.layerHeight, options.speed)
  let [rested, aged, dried] = [0, 0, 0]
  while (true) {
    const hour = hourAt(hours, at + rested)
    const aging = ageFactor(restingTemperature(hour, at + rested, options), mix)
    assert(Number.isFinite(hour.evaporation), 'every hour knows its evaporation')
    const evaporation = Math.max(0, hour.evaporation)
    const inHour = Math.max(1, timeLeft(hour, hours, at + rested))
    const candidates: readonly (readonly [RestCause, Seconds])[] = [
      ['structuration', (stiffened.seconds - aged) / aging],
      ['drying', dryingRest(rules.dryingMost.value - dried, evaporation)],
      ['rest-rule', rules.restMost.value - rested],
    ]
    const [cause, left] = candidates.reduce((first, next) => (next[1] < first[1] ? next : first))
    const step = Math.max(0, Math.min(left, inHour))
    ;[rested, aged, dried] = [rested + step, aged + step * aging, dried + (step * evaporation) / 3600]
    if (left <= inHour)
      return answer(at, rested, cause, sourceOf(cause, stiffened.source, rules), dried, aged)
  }
}

function answer(
  at: Instant,
  seconds: Seconds,
  cause: RestCause,
  source: string,
  evaporated: number,
  equivalentAge: Seconds,
): LongestRest {
  const limit: Limit = {
    kind: 'resting-time',
    at: at + seconds,
    demand: seconds,
    capacity: seconds,
    unit: 's',
    source,
  }
  return { seconds, limit, cause, evaporated, equivalentAge }
}

function sourceOf(
  cause: RestCause,
  structuration: string,
  rules: Pick<Rules, 'dryingMost' | 'restMost'>,
): string {
  if (cause === 'structuration') return structuration
  return cause === 'drying' ? rules.dryingMost.source : rules.restMost.source
}

function restingTemperature(hour: PrintHour, at: Instant, options: RestOptions): Celsius {
  if (options.temperatureAt) return options.temperatureAt(at)
  return (options.chilled ? hour.mixTemperatureChilled : undefined) ?? hour.mixTemperature
}

/** The hour that holds this moment; before the first and after the last, that one. Hours are in order. */
function hourAt(hours: readonly PrintHour[], at: Instant): PrintHour {
  assert(hours.length > 0, 'there is weather to rest in')
  let [low, high] = [0, hours.length - 1]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (hours[middle]!.start <= at) low = middle
    else high = middle - 1
  }
  return hours[low]!
}

function timeLeft(hour: PrintHour, hours: readonly PrintHour[], at: Instant): Seconds {
  if (at < hour.start) return hour.start - at
  const isLast = hour === hours[hours.length - 1]
  return isLast ? Infinity : hour.start + 3600 - at
}
