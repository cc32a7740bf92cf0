import type { CubicMetresPerSecond, Metres, MetresPerSecond, Seconds } from '../quantity/index.js'

/** What the printer and pump can do. Positions are in the machine frame [m]. */
export interface Machine {
  readonly name: string
  readonly reach: {
    readonly x: readonly [Metres, Metres]
    readonly y: readonly [Metres, Metres]
    readonly z: readonly [Metres, Metres]
  }
  readonly keepOut: readonly {
    readonly name: string
    readonly x: readonly [Metres, Metres]
    readonly y: readonly [Metres, Metres]
    readonly z: readonly [Metres, Metres]
  }[]
  readonly printSpeedMost: MetresPerSecond
  readonly travelSpeed: MetresPerSecond
  readonly liftSpeed: MetresPerSecond
  readonly acceleration: number
  /** How far the nozzle may leave a sharp corner [m]; sets corner speed. */
  readonly cornerDeviation: Metres
  /** rad/s and rad/s² of the tangential axis; rate 0: the nozzle is round and has none. */
  readonly headingRate: number
  readonly headingAcceleration: number
  /** How far the tangential axis may wind from its home, each way [rad]. */
  readonly headingTravel: number
  /** Clearance over what stands proud when travelling. */
  readonly travelClearance: Metres
  readonly pump: {
    readonly flowLeast: CubicMetresPerSecond
    readonly flowMost: CubicMetresPerSecond
    readonly startLag: Seconds
    readonly stopLag: Seconds
    /** Largest pressure [Pa]. */
    readonly pressureMost: number
    /** S word per m³/s. */
    readonly settingPerFlow: number
    /** S word at which it begins to deliver; 0 unless trials say otherwise. */
    readonly settingIdle?: number
  }
  /** How its beads come out, where trials have measured it. Flows of the pump, above, are those of the bead as it lies. */
  readonly laying?: Laying
  /** Words the controller expects, all of ISO 6983 / RS-274. */
  readonly words: {
    readonly rotary: 'A' | 'B' | 'C'
    readonly pumpOn: 'M3' | 'M4'
    readonly units: 'G20' | 'G21'
    readonly extraOn?: string
    readonly extraOff?: string
  }
}

/** What trials measured of beads. What is absent was not measured, and quantities do not count it. */
export interface Laying {
  /** Section of the bead over pumped flow over speed: under 1, more is pumped than lies. */
  readonly fill?: number
  /** Beads widen with this power of the slow-down: 0 the pump follows the nozzle, 1 it does not. */
  readonly swelling?: number
  /** The lags of the pump are measured ones. */
  readonly lags?: boolean
}
