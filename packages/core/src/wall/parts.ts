import type { Column, Embed, Opening, PrintRules, Wall } from '../job/index.js'
import type { Units } from '../limit/index.js'
import type { Metres } from '../quantity/index.js'

/** What of a job the walls are made of; a `Job` fits. */
export interface WallParts {
  readonly walls: readonly Wall[]
  readonly openings: readonly Opening[]
  readonly embeds: readonly Embed[]
  readonly columns: readonly Column[]
  readonly print: PrintRules
  /** Of the words; metric unless said. */
  readonly units?: Units
}

/** How far a tie laps into a wythe so that the two bond, as a share of the bead width. Common practice, no source. */
const contactShare = 0.2
export const contactLap = (print: PrintRules): Metres => contactShare * print.beadWidth

/** From a face that closes the cavity to the middle of a tie bead that just laps onto the wythe along it. */
export const tieSetback = (print: PrintRules): Metres => 1.5 * print.beadWidth - contactLap(print)

/** Two layers' worth of rounding: heights and stations closer than this are the same. */
export const slack: Metres = 1e-6

export const standsAt = (wall: Wall, z: Metres): boolean => wall.base < z && z <= wall.top
