import { sayQuantity, type Units } from '../limit/index.js'
import { leastSquares, standardErrors } from '../numeric/index.js'
import type { CubicMetresPerSecond, Kilograms, KilogramsPerCubicMetre, Seconds } from '../quantity/index.js'
import type { Problem, Result } from '../result/index.js'
import { failure, success } from '../result/index.js'

/** Mix caught in a bucket at one pump setting. */
export interface PumpTrial {
  readonly at: string
  /** The number the controller sends as S word. */
  readonly setting: number
  readonly caught: Kilograms
  readonly during: Seconds
}

/** Flow against setting, Q = (S − idle)/settingPerFlow, with its doubt. */
export interface PumpCurve {
  readonly settingPerFlow: number
  /** Setting at which the pump begins to deliver: 0 unless the trials clearly say otherwise. */
  readonly idle: number
  /** Standard error of a flow set by this curve, as a share. */
  readonly flowError: number
  /** Scatter of one bucket about the curve, as a share. */
  readonly scatter: number
  readonly settings: readonly [number, number]
  readonly points: readonly {
    readonly at: string
    readonly flow: CubicMetresPerSecond
    readonly residual: number
  }[]
  readonly say: string
}

/** An idle setting is believed when it stands this many standard errors off zero. */
const CLEAR = 2.5

/**
 * The pump's curve from weighed buckets, errors taken as a share of the flow. Through zero unless the trials clearly
 * show slip: then with the setting at which delivery begins.
 *
 * Source   least squares, closed form; the two curves are told apart by the standard error of the second parameter.
 * Range    the settings tried; a rotor and stator wear, so weigh again each week.
 * Assumes  one mix, one hose, steady delivery while the bucket filled.
 */
export function fitPumpCurve(
  trials: readonly PumpTrial[],
  density: KilogramsPerCubicMetre,
  units: Units = 'metric',
): Result<PumpCurve> {
  const problems = [...trials.flatMap(trial => badTrial(trial, units)), ...tooFew(trials)]
  if (problems.length > 0) return failure(problems)
  const points = trials.map(trial => ({ ...trial, flow: trial.caught / density / trial.during }))
  const straight = curve(points, false)
  const withIdle = new Set(points.map(({ setting }) => setting)).size >= 3 ? curve(points, true) : undefined
  const clear = withIdle && Math.abs(withIdle.idle) > CLEAR * withIdle.idleError
  return success(curveOf(points, clear ? withIdle : straight, units))
}

interface Point extends PumpTrial {
  readonly flow: CubicMetresPerSecond
}

/** Least squares of ln(flow) on the settings: one parameter, or two with the idle setting. */
function curve(points: readonly Point[], idling: boolean) {
  const lowest = Math.min(...points.map(({ setting }) => setting))
  const guess = points.reduce((sum, { setting, flow }) => sum + setting / flow, 0) / points.length
  const fit = leastSquares({
    residuals: ([perFlow, idle = 0]) =>
      points.map(({ setting, flow }) => Math.log((setting - idle) / perFlow! / flow)),
    start: idling ? [guess, 0] : [guess],
    least: idling ? [guess * 1e-3, -10 * lowest] : [guess * 1e-3],
    most: idling ? [guess * 1e3, 0.99 * lowest] : [guess * 1e3],
  })
  const errors = standardErrors(fit) ?? []
  const [settingPerFlow = guess, idle = 0] = fit.parameters
  return {
    fit,
    settingPerFlow,
    idle,
    idleError: errors[1] ?? Infinity,
    slopeError: (errors[0] ?? 0) / settingPerFlow,
  }
}

function curveOf(points: readonly Point[], chosen: ReturnType<typeof curve>, units: Units): PumpCurve {
  const { fit, settingPerFlow, idle, slopeError } = chosen
  const settings = points.map(({ setting }) => setting)
  const free = Math.max(1, points.length - fit.parameters.length)
  const scatter = Math.sqrt(fit.sumOfSquares / free)
  const [unit, flow] = flowUnits[units]
  return {
    settingPerFlow,
    idle,
    flowError: slopeError,
    scatter,
    settings: [Math.min(...settings), Math.max(...settings)],
    points: points.map(({ at, flow }, i) => ({ at, flow, residual: -fit.residuals[i]! })),
    say: `S ${(settingPerFlow * flow).toPrecision(3)} for each ${unit}${
      idle === 0 ? '' : `, beginning at S ${idle.toPrecision(3)}`
    }; a set flow is within ${(200 * slopeError).toFixed(1)} % nineteen times in twenty, a single bucket scatters by ${(100 * scatter).toFixed(1)} %.`,
  }
}

/** What a flow is read in, and one of it in m³/s. */
const flowUnits = { metric: ['L/min', 1 / 60_000], imperial: ['gal/min', 3.785411784 / 60_000] } as const

const badTrial = ({ at, setting, caught, during }: PumpTrial, units: Units): Problem[] =>
  setting > 0 && caught > 0 && during > 0 && [setting, caught, during].every(Number.isFinite)
    ? []
    : [
        {
          code: 'trial/pump-value',
          at,
          say: `Setting ${setting}, ${sayQuantity(caught, 'kg', units)} in ${during} s: all three are numbers above zero. Leave out a bucket that caught nothing.`,
        },
      ]

const tooFew = (trials: readonly PumpTrial[]): Problem[] =>
  trials.length >= 3
    ? []
    : [
        {
          code: 'trial/too-few',
          at: 'pump trials',
          say: `A pump curve needs three weighed buckets or more, two of them at different settings; there are ${trials.length}.`,
        },
      ]
