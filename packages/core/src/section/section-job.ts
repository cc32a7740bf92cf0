import type { Job, MakeUp, PrintRules, Wall } from '../job/index.js'
import type { Metres, Seconds } from '../quantity/index.js'

/** The parts of a job that decide its sections. A whole `Job` will do. */
export type SectionJob = Pick<Job, 'walls' | 'openings' | 'print' | 'rules' | 'sections' | 'noCutAt'>

/** What the lead or the integrator may set besides. */
export interface SectionOptions {
  /** Bead metres of one layer per metre of wall; worked out from the make-up if not given. */
  readonly beadLengthOf?: (wall: Wall) => number
  /** Time lost at each start and stop of the bead: lag, lead-in, travel [s]. */
  readonly startTime?: Seconds
  /** Shortest layer time that standing asks for; shorter ones count against a division [s]. */
  readonly layerTimeLeast?: Seconds
  /** Whether a stem may be divided from the wall it meets. */
  readonly teesAllowed?: boolean
  /** Cuts the lead insists on, by wall and station. */
  readonly pinned?: readonly { readonly wall: string; readonly at: Metres }[]
  /** Ask for at least so many sections: more sections fill days better, fewer have fewer joints. */
  readonly sectionsLeast?: number
}

/** Common practice, no source: valve lag, lead-in and a short travel. The route stage times it truly. */
export const START_TIME: Seconds = 8

/**
 * Bead metres of one layer per metre of wall: one for a single bead; for a double wall both wythes and the web, which
 * crosses the cavity twice a pitch; for a solid wall as many beads side by side as fit its thickness.
 * An estimate for dividing; beads laid later have their true lengths.
 */
export function beadPerMetre(makeUp: MakeUp, thickness: Metres, print: PrintRules): number {
  switch (makeUp.kind) {
    case 'single':
      return 1
    case 'solid':
      return Math.max(1, Math.round(thickness / print.beadWidth))
    case 'double': {
      const cavity = Math.max(0, thickness - 2 * print.beadWidth)
      const along = makeUp.web === 'crosstie' ? 0 : 1
      const crossings = (2 * cavity) / makeUp.webPitch
      return 2 + Math.hypot(along, crossings)
    }
  }
}
