import type { Path } from '../geometry/index.js'
import type {
  CubicMetres,
  CubicMetresPerSecond,
  Metres,
  MetresPerSecond,
  Radians,
  Seconds,
} from '../quantity/index.js'

/** One bead as it is run: in this direction, from this start, with this heading, in this time. */
export interface Pass {
  readonly bead: string
  /** In order of travel; closed loops start and end at the same point. */
  readonly path: Path
  readonly width: Metres
  readonly height: Metres
  readonly length: Metres
  readonly volume: CubicMetres
  /** Flow while at full speed. */
  readonly flow: CubicMetresPerSecond
  /** Fastest speed the pump, heading and speed limits allow on each segment. */
  readonly speeds: readonly MetresPerSecond[]
  readonly time: Seconds
  /** Unwrapped heading at the start of each segment and at the end [rad]. */
  readonly headings: readonly Radians[]
}

/** The nozzle off, from the end of one pass to the start of the next, lifted over what stands proud. */
export interface Travel {
  readonly from: readonly [number, number]
  readonly to: readonly [number, number]
  readonly lift: Metres
  readonly time: Seconds
  /** Rotation of the tangential axis during the travel [rad]. */
  readonly turn: Radians
  /** The ends touch: the next pass follows without a stop of the pump, no lift. */
  readonly joined?: boolean
}

/** One layer of one section in the order it is run; travels[i] leads to passes[i]. */
export interface LayerRoute {
  readonly section: string
  readonly fromLayer: number
  readonly toLayer: number
  /** Layers of this parity (1 odd, 0 even) use this route. */
  readonly parity: 0 | 1
  readonly passes: readonly Pass[]
  readonly travels: readonly Travel[]
  readonly printTime: Seconds
  readonly travelTime: Seconds
  readonly length: Metres
  readonly volume: CubicMetres
}

export interface SectionRoutes {
  readonly section: string
  readonly routes: readonly LayerRoute[]
}
