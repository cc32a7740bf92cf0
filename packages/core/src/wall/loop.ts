import { filletPath, fitArcs, type Path, type Ring } from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'

/**
 * The path of a bead along a ring that was inset with mitres: arcs found again, and inside corners swung round at half
 * a bead from the face. A nozzle that may turn on the spot (no corner radius) keeps them sharp.
 */
export function loopPath(ring: Ring, width: Metres, cornerRadius: Metres): Path {
  const path = fitArcs(ring, true)
  return cornerRadius > 0 ? filletPath(path, turn => (turn < 0 ? width / 2 : 0)) : path
}
