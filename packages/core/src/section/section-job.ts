import type { Job, Wall } from '../job/index.js'
import type { Metres, Seconds } from '../quantity/index.js'
import type { WallParts } from '../wall/index.js'

/** The parts of a job that decide its sections. A whole `Job` will do. */
export type SectionJob = Pick<Job, 'walls' | 'openings' | 'print' | 'rules' | 'sections' | 'noCutAt'> &
  Partial<Pick<Job, 'machine' | 'units' | 'embeds'>>

/** What of it says where a wall has something to print. */
export const solidParts = ({ walls, openings, embeds = [], print }: SectionJob): WallParts => ({
  walls,
  openings,
  embeds,
  columns: [],
  print,
})

/** What the lead or the caller may set besides. */
export interface SectionOptions {
  /** Bead metres of one layer per metre of wall; worked out from the make-up if not given. */
  readonly beadLengthOf?: (wall: Wall) => number
  /** True layer time over estimated, learned from routes already timed. */
  readonly timeFactor?: number
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
