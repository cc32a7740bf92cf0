/** What a quantity measures. Each has one unit inside the program, `inside`; everything else is converted at the edge. */
export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'time'
  | 'speed'
  | 'windSpeed'
  | 'acceleration'
  | 'flow'
  | 'mass'
  | 'massRate'
  | 'massPerArea'
  | 'density'
  | 'force'
  | 'moment'
  | 'pressure'
  | 'pressureRate'
  | 'pressureBend'
  | 'viscosity'
  | 'temperature'
  | 'temperatureDifference'
  | 'angle'
  | 'turnRate'
  | 'turnAcceleration'
  | 'share'
  | 'evaporation'
  | 'rain'
  | 'rateConstant'
  | 'heatPerMass'
  | 'heatFlux'
  | 'radiationPerDay'

/** One unit: value inside = text value · `scale` + `offset`. The first alias is how we write it. */
export interface Unit {
  readonly names: readonly [string, ...string[]]
  readonly scale: number
  readonly offset?: number
  /** Units of one family may stand together, larger first: `8 ft 1 in`, `1 h 30 min`. */
  readonly family?: string
}

export interface DimensionUnits {
  /** The unit inside the program, as a symbol. */
  readonly inside: string
  /** What is shown to metric and to imperial readers. */
  readonly shown: { readonly metric: string; readonly imperial: string }
  /** Smallest sensible step of the shown value, metric and imperial. */
  readonly step: { readonly metric: number; readonly imperial: number }
  readonly example: string
  readonly units: readonly Unit[]
}
