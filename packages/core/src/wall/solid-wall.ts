import {
  difference,
  fitArcs,
  inset,
  type Region,
  regionRings,
  ringLength,
  unionRings,
} from '../geometry/index.js'
import type { PrintRules } from '../job/index.js'
import { pitchOfNarrowest, type SolidFill, solidFill } from './bead-section.js'
import type { Body } from './body.js'
import { loopPath } from './loop.js'
import type { RawBead } from './raw-bead.js'
import { remembered } from './remembered.js'
import { type Skin, skinsOf } from './skin.js'
import { skinBeads, skinRing } from './skin-beads.js'

/**
 * Loops one inside the other from the faces to the middle, at the pitch that fills the wall. Behind a recess go as many as
 * fit whole, and beads of their own into what is left between them.
 */
export const solidBeads = remembered((body: Body, print): readonly RawBead[] => {
  const fill = fillOf(body, print)
  const skins = solidSkins(body, print)
  return [...loops(body, skins, fill, print), ...skins.flatMap(skin => skinBeads(body, skin, fill, print))]
})

export const fillOf = ({ thickness }: Body, { beadWidth, layerHeight }: PrintRules): SolidFill =>
  solidFill(thickness, beadWidth, layerHeight)

export const solidSkins = remembered((body: Body, print): readonly Skin[] =>
  skinsOf(body, fillOf(body, print), pitchOfNarrowest(print.layerHeight)),
)

function loops(body: Body, skins: readonly Skin[], { pitch, width }: SolidFill, print: PrintRules) {
  const beads: RawBead[] = []
  let rest: Region = inset(body.region, width / 2, 'mitre')
  for (let k = 0; rest.length > 0; k++) {
    // A loop that would squeeze both its beads into a skin for one ends beside it.
    const full = skins.filter(skin => skin.loops === k)
    if (full.length > 0)
      rest = difference(rest, unionRings(full.map(skin => skinRing(skin, width / 2 + k * pitch + 1e-6))))
    for (const ring of regionRings(rest)) {
      // A loop round next to nothing would lay its bead twice over.
      if (k > 0 && ringLength(ring) < 3 * width) continue
      beads.push({
        role: k === 0 ? 'wythe' : 'fill',
        path: k === 0 ? loopPath(ring, width, print.cornerRadius) : fitArcs(ring, true),
        width,
      })
    }
    rest = inset(rest, pitch, 'mitre')
  }
  return beads
}
