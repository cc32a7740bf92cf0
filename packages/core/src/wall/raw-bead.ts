import type { Path } from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'
import type { BeadRole } from './bead.js'

/** A bead before it is numbered and given its layer's height. */
export interface RawBead {
  readonly role: BeadRole
  readonly path: Path
  readonly width: Metres
}
