import type { Lift } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import type { Celsius, SquareMetres } from '../quantity/index.js'
import type { CoverKind } from './cover.js'
import type { CureTables } from './cure-tables.js'
import type { WallBuild } from './wall-cells.js'
import type { WallWeather } from './wall-weather.js'

/** What a lift's cure is planned from. */
export interface CureCase {
  /** Words are in metric units where the job does not say. */
  readonly job: Pick<Job, 'mix' | 'rules' | 'batching'> & Partial<Pick<Job, 'units'>>
  readonly lift: Pick<Lift, 'id' | 'start' | 'end'>
  readonly build: WallBuild
  readonly weather: WallWeather
  /** At the nozzle at the end of the lift. */
  readonly mixTemperature: Celsius
  readonly area: { readonly left: SquareMetres; readonly right: SquareMetres }
  /** Chosen by the weather where absent: blanket in the cold, wet burlap otherwise. */
  readonly cover?: CoverKind
  /** The most shaded of several places: what plastic would do is asked of the others. */
  readonly shaded?: boolean
  /** Made once for all lifts of a mix. */
  readonly tables?: CureTables
}
