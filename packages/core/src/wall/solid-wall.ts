import { fitArcs, inset, type Region, regionRings, ringLength } from '../geometry/index.js'
import { solidFill } from './bead-section.js'
import type { Body } from './body.js'
import { loopPath } from './loop.js'
import type { RawBead } from './raw-bead.js'
import { remembered } from './remembered.js'

/** Loops one inside the other from the faces to the middle, at the pitch that fills the wall. */
export const solidBeads = remembered((body: Body, print): readonly RawBead[] => {
  const { pitch, width } = solidFill(body.thickness, print.beadWidth, print.layerHeight)
  const beads: RawBead[] = []
  let rest: Region = inset(body.region, width / 2, 'mitre')
  for (let k = 0; rest.length > 0; k++) {
    const role = k === 0 ? 'wythe' : 'fill'
    for (const ring of regionRings(rest)) {
      // A loop round next to nothing would lay its bead twice over.
      if (k > 0 && ringLength(ring) < 3 * width) continue
      beads.push({
        role,
        path: k === 0 ? loopPath(ring, width, print.cornerRadius) : fitArcs(ring, true),
        width,
      })
    }
    rest = inset(rest, pitch, 'mitre')
  }
  return beads
})
