import type { MixModel } from '../mix/index.js'
import type { Celsius, Instant, Seconds } from '../quantity/index.js'
import type { CoverKind } from './cover.js'
import type { CureTables } from './cure-tables.js'
import type { Hydration } from './hydration.js'
import type { WallBuild } from './wall-cells.js'
import type { WallWeather } from './wall-weather.js'

/** From this moment both faces wear this cover. */
export interface CoverSpan {
  readonly from: Instant
  readonly cover: CoverKind
}

/** What a stretch of wall starts from and goes through. */
export interface WallHeatInput {
  readonly build: WallBuild
  readonly mix: MixModel
  readonly weather: WallWeather
  /** The layer is down. */
  readonly start: Instant
  readonly mixTemperature: Celsius
  /** In order of time; bare before the first. */
  readonly covers: readonly CoverSpan[]
  readonly duration?: Seconds
  /** Ends the run before its duration, once every question is answered: the wall this mature and this long after its start. */
  readonly enough?: { readonly age: Seconds; readonly after: Seconds }
  /** One step throughout. Absent: five minutes while heat and wetting are told by the clock, a quarter of an hour after that. */
  readonly step?: Seconds
  readonly hydration?: Hydration
  /** Made once for many walls of one mix; made anew where absent. */
  readonly tables?: CureTables
  /** Burlap is wetted again when this share of its water is left; 0 lets it dry out once. */
  readonly reserve?: number
}
