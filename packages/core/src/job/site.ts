import type { Celsius, Instant, Kilograms, Metres, Radians, Seconds } from '../quantity/index.js'

export interface Site {
  readonly name: string
  /** Degrees, north positive. */
  readonly latitude: number
  /** Degrees, east positive. */
  readonly longitude: number
  readonly elevation: Metres
  /** IANA name, e.g. `Europe/Madrid`. */
  readonly timeZone: string
  /** Bearing of the building's +y axis, clockwise from true north. */
  readonly yAxisBearing: Radians
  /** When noise is allowed by permit or neighbourhood; any time where absent. */
  readonly permittedHours?: PermittedHours | undefined
}

/** Local clock times between which noise is allowed [s after midnight]; `until` before `from` runs over midnight. */
export interface PermittedHours {
  readonly from: Seconds
  readonly until: Seconds
  /** Reference key, `common practice, no source`, or `the job`. */
  readonly source: string
}

/** Crew and calendar. Clock times are seconds after local midnight. */
export interface Crew {
  readonly size: number
  readonly dayStart: Seconds
  readonly dayEnd: Seconds
  /** Longest paid shift in one day, set-up and wash-out included. */
  readonly longestShift: Seconds
  readonly setUp: Seconds
  readonly washOut: Seconds
  /** Moving nozzle and hose from one section to the next within a day. */
  readonly changeOver: Seconds
  /** ISO weekdays worked, 1 = Monday … 7 = Sunday. */
  readonly workDays: readonly number[]
  /** ISO dates `2026-07-25` on which nobody works. */
  readonly daysOff: readonly string[]
  /** Setting one lintel, one `set` embed, opening and closing a pour. */
  readonly lintelTime: Seconds
  readonly embedTime: Seconds
  readonly pourTime: Seconds
}

/** A limit the lead sets, with where its default comes from. */
export interface RuleValue {
  readonly value: number
  /** Reference key, `common practice, no source`, or `the job`. */
  readonly source: string
}

export interface Rules {
  /** Tallest lift by rule [m]. */
  readonly liftHeight: RuleValue
  /** Shortest cure between two lifts of one section [s]. */
  readonly overnightCure: RuleValue
  readonly mixTemperatureMost: RuleValue
  readonly mixTemperatureLeast: RuleValue
  readonly airTemperatureLeast: RuleValue
  /** kg/m² per hour. */
  readonly evaporationMost: RuleValue
  /** m/s at 10 m. */
  readonly windMost: RuleValue
  readonly gustMost: RuleValue
  /** mm per hour. */
  readonly rainMost: RuleValue
  /** Effective WBGT for the crew's work [°C]. */
  readonly wbgtMost: RuleValue
  /** 1: daylight needed, 0: lights on site. */
  readonly daylightNeeded: RuleValue
  /** Safety factor on height for standing. */
  readonly standSafety: RuleValue
  /** Imperfection factor on buckling height, 0–1. */
  readonly imperfection: RuleValue
  /** Evaporated water since exposed beyond which the joint counts as dry [kg/m²]. */
  readonly dryingMost: RuleValue
  /** Longest resting time whatever the weather [s]. */
  readonly restMost: RuleValue
  /** Bead metres a machine may spend on one layer before the section is divided: target layer time [s]. */
  readonly layerTimeMost: RuleValue
}

/** How the batch is made: temperatures of what goes in. */
export interface Batching {
  readonly waterTemperature: Celsius
  /** What the chiller can reach, and how fast it can make it [kg/s at that temperature]; none: no chiller. */
  readonly chiller?: { readonly temperature: Celsius; readonly rate: number }
  /** Dry material on site before the first day, and what comes when; none: there is always enough. */
  readonly silo?: {
    readonly stock: Kilograms
    readonly loads: readonly { readonly at: Instant; readonly mass: Kilograms }[]
  }
  readonly icePerBatchMost: number
  /** Dry material over the air's daily mean [K], as measured; none: from the sun on the silo, hour by hour. */
  readonly siloGain?: Celsius
  /** A roof or net keeps the beam of the sun off the silo; without a measured gain only. */
  readonly siloShade?: boolean
  readonly mixingHeat: Celsius
  readonly pumpHeat: Celsius
  readonly hoseLength: Metres
  readonly hoseDiameter: Metres
  readonly hoseInSun: boolean
}

export interface Calendar {
  readonly firstDay: string
  /** Moment the document says planning happens, if any. */
  readonly now?: Instant
}
