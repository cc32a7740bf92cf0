import type {
  Celsius,
  CubicMetres,
  KilogramsPerCubicMetre,
  Metres,
  Pascals,
  Seconds,
} from '../quantity/index.js'

/** What every test of the mix says. */
interface Made {
  /** Where it came from, `tests.csv:7`: named in problems, outliers and plots. */
  readonly at: string
  /** Since first water left the nozzle or the mixer, as the lead counts it; the same for all tests of one file. */
  readonly age: Seconds
  /** Of the material while it aged. */
  readonly temperature: Celsius
}

/** One test on site or in the laboratory, in SI. */
export type MixTest =
  | (Made & { readonly kind: 'vane' | 'penetrometer'; readonly stress: Pascals })
  | (Made & { readonly kind: 'spread'; readonly diameter: Metres; readonly volume: CubicMetres })
  | (Made & { readonly kind: 'compression'; readonly strength?: Pascals; readonly stiffness?: Pascals })
  /** Resistance of mortar to a needle, ASTM C403. */
  | (Made & { readonly kind: 'set'; readonly resistance: Pascals })
  | (Made & { readonly kind: 'density'; readonly density: KilogramsPerCubicMetre })
  | (Made & { readonly kind: 'cylinder' | 'cube'; readonly strength: Pascals })

export type MixTestKind = MixTest['kind']

/** Something measured at an equivalent age: what a curve is fitted to. */
export interface Observation {
  readonly at: string
  readonly age: Seconds
  readonly value: number
}
