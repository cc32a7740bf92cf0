import type { MixModel } from '../mix/index.js'
import type { Celsius, Instant, Seconds } from '../quantity/index.js'
import type { CoverKind } from './cover.js'
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
  readonly step?: Seconds
  readonly hydration?: Hydration
  /** Burlap is wetted again when this share of its water is left; 0 lets it dry out once. */
  readonly reserve?: number
}
