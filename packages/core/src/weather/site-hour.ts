import type { Limit } from '../limit/index.js'
import type { Celsius, Instant, MetresPerSecond, Share } from '../quantity/index.js'

export type HourSource = 'measured' | 'forecast' | 'history' | 'normals'

/** One hour of weather, as means over [start, start + 3600). */
export interface WeatherHour {
  readonly start: Instant
  readonly air: Celsius
  /** Relative humidity 0–1. */
  readonly humidity: Share
  /** At 10 m. */
  readonly wind: MetresPerSecond
  readonly gust: MetresPerSecond
  /** mm in the hour. */
  readonly rain: number
  /** W/m² on the horizontal, beam normal, and diffuse horizontal. */
  readonly global: number
  readonly beam: number
  readonly diffuse: number
  /** Pa */
  readonly pressure: number
  readonly source: HourSource
}

/** What one hour means for printing. */
export interface PrintHour {
  readonly start: Instant
  readonly weather: WeatherHour
  /** Mix at the nozzle with the job's tap water, and with the chiller at work if there is one. */
  readonly mixTemperature: Celsius
  readonly mixTemperatureChilled?: Celsius
  /** Water at which the mix would just meet the limit. */
  readonly waterNeeded?: Celsius
  /** kg/m² per hour off the fresh bead. */
  readonly evaporation: number
  readonly wbgt: Celsius
  readonly sunAltitude: number
  /** Every limit of the hour with its margin; the hour is open when none has demand beyond capacity. */
  readonly limits: readonly Limit[]
  readonly open: boolean
}
