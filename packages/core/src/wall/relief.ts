import { chordTolerance } from '../geometry/index.js'
import type { Relief, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Lateral } from './strip.js'

/**
 * How far a face stands out at station s and height z, within ±depth [m].
 *   flute    depth·cos(2π s/pitch)                    upright channels, the same at every height
 *   ripple   depth·cos(2π z/rise)                     level waves
 *   lozenge  depth·cos(2π s/pitch)·cos(2π z/rise)
 * Between the stations of the ramp it grows from nothing to full as 3t² − 2t³.
 */
export function reliefAt(relief: Relief, station: Metres, z: Metres): Metres {
  const along = Math.cos((2 * Math.PI * station) / relief.pitch)
  const upward = Math.cos((2 * Math.PI * z) / relief.rise)
  const shape = { flute: along, ripple: upward, lozenge: along * upward }[relief.pattern]
  return relief.depth * rampShare(relief, station) * shape
}

/** Steepest sideways change with height [–]; a flute has none. */
export const reliefLean = ({ pattern, depth, rise }: Relief): number =>
  pattern === 'flute' ? 0 : (2 * Math.PI * depth) / rise

/** Whether the plan of the relief changes from layer to layer. */
export const reliefVariesWithHeight = (wall: Wall): boolean =>
  wall.relief !== undefined && wall.relief.pattern !== 'flute' && wall.relief.depth > 0

/**
 * What of the height the relief of a wall depends on: layers with equal phases have equal faces, so a wave that comes
 * round every 25 layers is laid once. 0 without such a relief.
 */
export const reliefPhase = (wall: Wall, z: Metres): number =>
  wall.relief && reliefVariesWithHeight(wall)
    ? Math.round(Math.cos((2 * Math.PI * z) / wall.relief.rise) * 1e9)
    : 0

/** Distances of the right and the left face from the centreline at height z. */
export function facesAt({ thickness, relief }: Wall, z: Metres): { low: Lateral; high: Lateral } {
  const half = thickness / 2
  if (!relief || relief.depth === 0) return { low: -half, high: half }
  const side = relief.face === 'left' ? 1 : -1
  const at = (station: Metres) => side * (half + reliefAt(relief, station, z))
  const face = { at, step: sampleStep(relief) }
  return side > 0 ? { low: -half, high: face } : { low: face, high: half }
}

/** Chords s of a face of curvature κ leave it by s²κ/8, which stays within the chord tolerance. At most a bead's width. */
function sampleStep({ pattern, depth, pitch, ramp }: Relief): Metres {
  const waves = pattern === 'ripple' ? 0 : (2 * Math.PI) / pitch
  const ramps = ramp ? 6 / Math.max(1e-3, ramp[1] - ramp[0]) ** 2 : 0
  const curvature = depth * (waves ** 2 + ramps)
  return Math.min(0.05, Math.sqrt((8 * chordTolerance) / Math.max(1e-9, curvature)))
}

/** How far each face stands out at a station and a height: 0 on the face without relief. */
export const faceSwell =
  ({ relief }: Wall, z: Metres) =>
  (station: Metres, side: 1 | -1): Metres =>
    relief && (relief.face === 'left') === side > 0 ? reliefAt(relief, station, z) : 0

function rampShare({ ramp }: Relief, station: Metres): number {
  if (!ramp) return 1
  const t = Math.min(1, Math.max(0, (station - ramp[0]) / (ramp[1] - ramp[0])))
  return t * t * (3 - 2 * t)
}
