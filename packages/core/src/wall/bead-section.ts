import { pathLength } from '../geometry/index.js'
import type { CubicMetres, Metres, SquareMetres } from '../quantity/index.js'
import type { Bead } from './bead.js'

/** The share of a square that a quarter circle inside it leaves free. */
const roundLoss = 1 - Math.PI / 4

/**
 * Cross-section of a bead: flat top and bottom, half-round sides.
 *
 *   A = h(w − h) + π h²/4
 *
 * @param width   w [m], ≥ height
 * @param height  h [m]
 *
 * Source   [BeadStadium], derived, exact.
 * Range    w ≥ h; at w = h it is a circle.
 * Assumes  the layer above does not squash it: stacked beads lie between A and w·h; weigh a metre to know.
 */
export const beadArea = (width: Metres, height: Metres): SquareMetres =>
  height * (width - height) + (Math.PI / 4) * height ** 2

/**
 * Width over which a bead rests on the one below [m]: b = w − h.
 *
 * Source   [BeadStadium], derived, exact.
 * Range    w ≥ h; nothing at w = h.
 * Assumes  as `beadArea`: squashed beads rest on more.
 */
export const beadContact = (width: Metres, height: Metres): Metres => width - height

/**
 * Round the section of a bead [m]: u = 2(w − h) + π h.
 *
 * Source   [BeadStadium], derived, exact.
 * Range    w ≥ h; a circle's at w = h.
 * Assumes  as `beadArea`.
 */
export const beadPerimeter = (width: Metres, height: Metres): Metres =>
  2 * (width - height) + Math.PI * height

/**
 * Distance between the middles of parallel beads that fill a wall without gap or excess: A = h·p.
 *
 *   p = w − h(1 − π/4)
 *
 * Source   [BeadStadium], derived, exact. Range w ≥ h. Assumes neighbours flow together and end flat.
 */
export const fillPitch = (width: Metres, height: Metres): Metres => width - height * roundLoss

/** The width whose fill pitch is p: w = p + h(1 − π/4). */
export const widthForPitch = (pitch: Metres, height: Metres): Metres => pitch + height * roundLoss

/** The least pitch: of a bead as wide as it is high, p = h·π/4. */
export const pitchOfNarrowest = (height: Metres): Metres => fillPitch(height, height)

export const beadVolume = ({ path, width, height }: Bead): CubicMetres =>
  beadArea(width, height) * pathLength(path)

/** What the rounded sides leave free along one face, per metre and layer: h²(1 − π/4)/2 [m²]. */
export const faceLoss = (height: Metres): SquareMetres => (height ** 2 * roundLoss) / 2

/** Beads side by side that fill a solid wall: an even number, so that they close into loops; 1 in a wall as thick as a bead. */
export interface SolidFill {
  readonly count: number
  readonly pitch: Metres
  readonly width: Metres
}

/**
 * Outer beads touch the faces: T = w + (n − 1)p with w = p + h(1 − π/4), so p = (T − h(1 − π/4))/n. The smallest even n
 * whose bead is no wider than the nozzle's own.
 */
export function solidFill(thickness: Metres, beadWidth: Metres, height: Metres): SolidFill {
  const filled = thickness - height * roundLoss
  const wanted = filled / fillPitch(beadWidth, height)
  const count = wanted < 1 + 1e-3 ? 1 : 2 * Math.ceil(wanted / 2 - 1e-6)
  const pitch = filled / count
  return { count, pitch, width: widthForPitch(pitch, height) }
}
