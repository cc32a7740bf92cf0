import type { CubicMetres } from '../quantity/index.js'
import type { Band } from './bead.js'
import { beadVolume } from './bead-section.js'

/** Bead volume of one layer of a band. */
export const bandLayerVolume = (band: Band): CubicMetres =>
  band.beads.reduce((sum, bead) => sum + beadVolume(bead), 0)
