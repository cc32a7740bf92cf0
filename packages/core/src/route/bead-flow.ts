import type { CubicMetresPerSecond, Metres, MetresPerSecond, Seconds } from '../quantity/index.js'
import { beadArea } from '../wall/index.js'

/** Width and height of a bead's section. */
export interface BeadSize {
  readonly width: Metres
  readonly height: Metres
}

/**
 * Flow that lays a bead at a speed.
 *
 *   Q = A·v
 *
 * @param bead   width, height [m]
 * @param speed  v [m/s]
 *
 * Source   closed form: conservation of volume.
 * Range    height ≤ width, as `beadArea`.
 * Assumes  no loss of air or water on the way.
 */
export const beadFlow = ({ width, height }: BeadSize, speed: MetresPerSecond): CubicMetresPerSecond =>
  beadArea(width, height) * speed

/**
 * How fast the wall rises.
 *
 *   rate = h / T
 *
 * @param height     layer height h [m]
 * @param layerTime  T, stops included [s]
 *
 * Source   closed form.
 * Range    T > 0.
 * Assumes  layers follow each other without a pause.
 */
export const riseRate = (height: Metres, layerTime: Seconds): MetresPerSecond => height / layerTime
