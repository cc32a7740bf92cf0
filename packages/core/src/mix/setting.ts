import type { Pascals, Seconds } from '../quantity/index.js'
import type { Observation } from './mix-test.js'

/** Resistance of mortar to a needle at which it counts as set: 500 and 4000 psi. */
const INITIAL: Pascals = 3.447e6
const FINAL: Pascals = 27.579e6

export interface SettingTimes {
  readonly initial: Seconds
  readonly final: Seconds
}

/**
 * Initial and final set from penetration resistance: a straight line through ln(resistance) against ln(age).
 *
 * Source   [ASTM-C403], from memory: 3.5 MPa and 27.6 MPa, log–log line.
 * Range    three readings or more that grow; otherwise there is no answer.
 * Assumes  readings of one batch at one equivalent-age clock.
 */
export function settingTimes(readings: readonly Observation[]): SettingTimes | undefined {
  const points = readings.filter(({ age }) => age > 0)
  if (points.length < 3) return undefined
  const x = points.map(({ age }) => Math.log(age))
  const y = points.map(({ value }) => Math.log(value))
  const [middleX, middleY] = [average(x), average(y)]
  const across = x.reduce((sum, value) => sum + (value - middleX) ** 2, 0)
  const slope = x.reduce((sum, value, i) => sum + (value - middleX) * (y[i]! - middleY), 0) / across
  if (!(slope > 0)) return undefined
  const ageAt = (resistance: Pascals) => Math.exp(middleX + (Math.log(resistance) - middleY) / slope)
  return { initial: ageAt(INITIAL), final: ageAt(FINAL) }
}

const average = (values: readonly number[]): number => values.reduce((sum, v) => sum + v, 0) / values.length
