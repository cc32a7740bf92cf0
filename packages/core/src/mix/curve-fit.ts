import type { Seconds } from '../quantity/index.js'

/** One parameter of a fitted curve with its standard error, where the tests can tell. */
export interface FittedParameter {
  readonly name: string
  readonly value: number
  readonly standardError?: number
  readonly unit: string
}

/** One test beside the curve: for the residual plot. `studentised` is the residual over its own expected scatter. */
export interface FittedPoint {
  readonly at: string
  readonly age: Seconds
  readonly measured: number
  readonly fitted: number
  /** ln(measured/fitted): 0.1 means about 10 % above. */
  readonly residual: number
  readonly studentised: number
}

/** A curve that was tried, and what the tests say for it. */
export interface Candidate {
  readonly kind: string
  readonly parameters: number
  /** Corrected information criterion; less is better. Absent: too few tests for so many parameters. */
  readonly aicc?: number
  /** Share of the evidence among those tried. */
  readonly weight: number
}

/** Edge of the band at one age. */
export interface BandPoint {
  readonly age: Seconds
  readonly fitted: number
  readonly lower: number
  readonly upper: number
}

/** A fitted growth with everything needed to draw and to doubt it. */
export interface CurveFit<Growth> {
  readonly kind: string
  readonly growth: Growth
  readonly lower: Growth
  readonly upper: Growth
  readonly parameters: readonly FittedParameter[]
  /** In the order of `parameters`. */
  readonly covariance?: readonly (readonly number[])[]
  /** Scatter of the tests about the curve, as a share: 0.1 is about 10 %. */
  readonly scatter: number
  readonly points: readonly FittedPoint[]
  readonly band: readonly BandPoint[]
  readonly candidates: readonly Candidate[]
  /** Why this curve, in one sentence. */
  readonly why: string
  readonly outliers: readonly string[]
}
