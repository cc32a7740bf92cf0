import type {
  Celsius,
  Kilograms,
  KilogramsPerCubicMetre,
  Pascals,
  Seconds,
  Share,
} from '../quantity/index.js'

/** Where the tests of a growth end. Past that age its value is held: no growth is counted on that nobody has seen. */
export interface Tested {
  readonly until?: Seconds
}

/** Static yield stress against equivalent age t [s] since leaving the nozzle, at the reference temperature. */
export type YieldGrowth = Tested &
  (
    | { readonly kind: 'linear'; readonly start: Pascals; readonly rate: number }
    | {
        readonly kind: 'bilinear'
        readonly start: Pascals
        readonly earlyRate: number
        readonly kneeAge: Seconds
        readonly lateRate: number
      }
    | {
        readonly kind: 'exponential'
        readonly start: Pascals
        readonly rate: number
        readonly time: Seconds
      }
  )

/** Young's modulus against equivalent age: E = start + rate·t + bend·t². */
export interface StiffnessGrowth extends Tested {
  readonly start: Pascals
  readonly rate: number
  readonly bend: number
}

/** S = ultimate·k(t − t0)/(1 + k(t − t0)) against equivalent age. */
export interface StrengthGrowth {
  readonly ultimate: Pascals
  /** 1/s */
  readonly rateConstant: number
  readonly start: Seconds
}

/** Longest rest at the reference temperature after which the site's own bond test still passed. */
export interface BondTest {
  readonly rest: Seconds
  readonly source: string
}

/** The mix on its way through the hose: yield stress in motion, and the slip layer on the wall [Pa, Pa·s/m]. */
export interface PumpingModel {
  readonly yield: Pascals
  readonly slipYield: Pascals
  readonly slipViscosity: number
}

/** What the planner knows of the mix. `lower` is the lower band that planning uses; `fitted` the best estimate. */
export interface MixModel {
  readonly name: string
  /** `default` (wide bands, no tests) or the name of the test file it was fitted from. */
  readonly provenance: string
  readonly density: KilogramsPerCubicMetre
  readonly poisson: number
  readonly fitted: { readonly yield: YieldGrowth; readonly stiffness: StiffnessGrowth }
  readonly lower: { readonly yield: YieldGrowth; readonly stiffness: StiffnessGrowth }
  /** Quick edge of the band, as far above `fitted` as `lower` is below: for what must be done before the mix is stiff. */
  readonly upper?: { readonly yield: YieldGrowth }
  /** Chance that the true curve lies under `lower`. */
  readonly lowerProbability: number
  readonly strength: StrengthGrowth
  /** Q = Ea/R [K] and reference temperature of the equivalent age. */
  readonly activation: number
  readonly reference: Celsius
  /** From first water to the end of pumping life at the reference temperature. */
  readonly openTime: Seconds
  /** Oldest equivalent age the tests cover; beyond it the model says so. */
  readonly testedTo: Seconds
  /** Coldest and hottest test; outside them the equivalent age is an extrapolation. Absent for the default mix. */
  readonly testedTemperatures?: readonly [Celsius, Celsius]
  /** Stress at which a cut keeps its shape, and at which the wall is too stiff to slice by hand. */
  readonly cutFrom: Pascals
  readonly cutUntil: Pascals
  readonly cutSource: string
  readonly plasticViscosity: number
  /** Absent: the static yield stress and no slip are assumed, the upper bound of pressure. */
  readonly pumping?: PumpingModel
  /** Dry material per bag and water per kg of dry material. */
  readonly bag: Kilograms
  readonly waterRatio: number
  /** Binder share of the dry material and its heat of hydration [J/kg]. */
  readonly binderShare: number
  readonly hydrationHeat: number
  /** Largest aggregate [m]. */
  readonly aggregate: number
  /** The site's bond test, if there is one; without it the structuration limit is a rule of thumb. */
  readonly bondTest?: BondTest
  /** Where each value of the model comes from, by field: a reference key, `common practice, no source`, or the tests. */
  readonly sources?: Readonly<Record<string, string>>
  /** Share of the fitted curve taken as the lower band where no tests say more. */
  readonly lowerShare?: Share
}
