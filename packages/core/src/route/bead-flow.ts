import type {
  CubicMetres,
  CubicMetresPerSecond,
  Metres,
  MetresPerSecond,
  Seconds,
  SquareMetres,
} from '../quantity/index.js'

/** Width and height of a bead's section. */
export interface BeadSize {
  readonly width: Metres
  readonly height: Metres
}

/**
 * Section of a bead: flat above and below, half-round at the sides.
 *
 *   A = h·(w − h) + π·h²/4
 *
 * @param bead  width w, height h [m]
 *
 * Source   closed form: a stadium.
 * Range    h ≤ w.
 * Scatter  stacked beads squash towards rectangles: between A and w·h. Weigh a metre of wall to know.
 * Assumes  sides free to round off.
 */
export const beadSection = ({ width, height }: BeadSize): SquareMetres =>
  height * (width - height) + (Math.PI / 4) * height ** 2

/** Width on which one bead rests on the next: w − h. */
export const contactWidth = ({ width, height }: BeadSize): Metres => width - height

/** Outline of the section: 2·(w − h) + π·h. */
export const beadPerimeter = ({ width, height }: BeadSize): Metres => 2 * (width - height) + Math.PI * height

/**
 * Flow that lays a bead at a speed.
 *
 *   Q = A·v
 *
 * @param bead   width, height [m]
 * @param speed  v [m/s]
 *
 * Source   closed form: conservation of volume.
 * Range    as `beadSection`.
 * Assumes  no loss of air or water on the way.
 */
export const beadFlow = (bead: BeadSize, speed: MetresPerSecond): CubicMetresPerSecond =>
  beadSection(bead) * speed

export const beadVolume = (bead: BeadSize, length: Metres): CubicMetres => beadSection(bead) * length

/**
 * Spacing of parallel beads that fills a solid wall without gaps.
 *
 *   p = w − h·(1 − π/4)
 *
 * @param bead  width w, height h [m]
 *
 * Source   closed form: h·p = A.
 * Range    as `beadSection`.
 * Assumes  the rounded sides flow together and stay level.
 */
export const fillPitch = ({ width, height }: BeadSize): Metres => width - height * (1 - Math.PI / 4)

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
