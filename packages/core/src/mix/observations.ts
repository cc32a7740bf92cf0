import type { Celsius, KilogramsPerCubicMetre, Seconds } from '../quantity/index.js'
import { type Arrhenius, ageFactor } from './equivalent-age.js'
import type { MixTest, Observation } from './mix-test.js'
import { spreadYieldStress } from './spread.js'

/** Cylinder strength over cube strength of the same concrete: 30/37 of [EN206], rounded. */
const CYLINDER_PER_CUBE = 0.81

/** A test with the value a curve is fitted to and the clock it was aged by. */
export interface Aged {
  readonly at: string
  readonly clockAge: Seconds
  readonly temperature: Celsius
  readonly value: number
}

/** Yield stresses measured as such: by vane, penetrometer or spread. */
export const directYields = (tests: readonly MixTest[], density: KilogramsPerCubicMetre): Aged[] =>
  tests.flatMap(test => {
    if (test.kind === 'vane' || test.kind === 'penetrometer') return [aged(test, test.stress)]
    if (test.kind === 'spread') return [aged(test, spreadYieldStress(test.diameter, test.volume, density))]
    return []
  })

/** Yield stresses from unconfined compression: strength over √3 (von Mises). */
export const compressionYields = (tests: readonly MixTest[]): Aged[] =>
  tests.flatMap(test =>
    test.kind === 'compression' && test.strength !== undefined
      ? [aged(test, test.strength / Math.sqrt(3))]
      : [],
  )

export const stiffnesses = (tests: readonly MixTest[]): Aged[] =>
  tests.flatMap(test =>
    test.kind === 'compression' && test.stiffness !== undefined ? [aged(test, test.stiffness)] : [],
  )

/** Breaks as cylinder strengths. */
export const breaks = (tests: readonly MixTest[]): Aged[] =>
  tests.flatMap(test => {
    if (test.kind === 'cylinder') return [aged(test, test.strength)]
    return test.kind === 'cube' ? [aged(test, CYLINDER_PER_CUBE * test.strength)] : []
  })

export const penetrations = (tests: readonly MixTest[]): Aged[] =>
  tests.flatMap(test => (test.kind === 'set' ? [aged(test, test.resistance)] : []))

/** The tests on the clock of the reference temperature. */
export const atReference = (tests: readonly Aged[], mix: Arrhenius): Observation[] =>
  tests.map(({ at, clockAge, temperature, value }) => ({
    at,
    age: clockAge * ageFactor(temperature, mix),
    value,
  }))

const aged = (test: MixTest, value: number): Aged => ({
  at: test.at,
  clockAge: test.age,
  temperature: test.temperature,
  value,
})
