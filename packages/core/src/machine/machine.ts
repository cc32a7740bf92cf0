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
  }
  /** Words the controller expects, all of ISO 6983 / RS-274. */
  readonly words: {
    readonly rotary: 'A' | 'B' | 'C'
    readonly pumpOn: 'M3' | 'M4'
    readonly units: 'G20' | 'G21'
    readonly extraOn?: string
    readonly extraOff?: string
  }
}
