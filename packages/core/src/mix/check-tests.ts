import { sayQuantity, type Units } from '../limit/index.js'
import type { Problem } from '../result/index.js'
import { checkSeries } from './check-series.js'
import type { MixTest } from './mix-test.js'
import { patSlenderness } from './spread.js'
import { type Quantity, sayTestValue, valuesOf } from './test-values.js'

/** What a value of each kind may be. Outside it a unit or a decimal point is wrong, not the mix. */
const plausible: Readonly<Record<Quantity, { readonly least: number; readonly most: number }>> = {
  age: { least: 0, most: 400 * 86_400 },
  temperature: { least: -10, most: 80 },
  stress: { least: 1, most: 2e6 },
  diameter: { least: 0.02, most: 2 },
  volume: { least: 1e-6, most: 0.05 },
  strength: { least: 10, most: 200e6 },
  stiffness: { least: 100, most: 60e9 },
  resistance: { least: 1000, most: 100e6 },
  density: { least: 800, most: 3500 },
}

/** Stiffness over strength of one pressed specimen: fresh mortar 20 to 200, hardened about 1000; beyond, one unit is wrong. */
const stiffnessOverStrength = { least: 2, most: 5000 }

/** Everything in the tests that cannot be used, each with its place, the number found and the numbers allowed. */
export function checkTests(tests: readonly MixTest[], units: Units = 'metric'): Problem[] {
  const checked = tests.map(test => ({ test, problems: checkTest(test, units) }))
  const usable = checked.filter(({ problems }) => problems.length === 0).map(({ test }) => test)
  return [...checked.flatMap(({ problems }) => problems), ...checkSeries(usable, units)]
}

function checkTest(test: MixTest, units: Units): Problem[] {
  const said = (size: number) => sayQuantity(Math.round(size * 1000), 'mm', units)
  const values: readonly (readonly [Quantity, number | undefined])[] = [
    ['age', test.age],
    ['temperature', test.temperature],
    ...valuesOf(test),
  ]
  const found = values.flatMap(([quantity, value]) => outside(test, quantity, value, units))
  if (test.kind === 'compression' && found.length === 0) found.push(...contradiction(test, units))
  if (test.kind === 'compression' && test.strength === undefined && test.stiffness === undefined)
    found.push({
      code: 'mix/empty-test',
      at: test.at,
      say: 'The compression test gives neither strength nor stiffness; write at least one of them.',
    })
  if (test.kind === 'spread' && found.length === 0 && patSlenderness(test.diameter, test.volume) > 0.5)
    found.push({
      code: 'mix/spread-too-stiff',
      at: test.at,
      say: `A pat ${said(test.diameter)} across stands ${said(test.volume / (Math.PI * (test.diameter / 2) ** 2))} high: it hardly flowed, and the spread says nothing of its yield stress. Use a vane or penetrometer.`,
    })
  return found
}

function contradiction(test: MixTest & { readonly kind: 'compression' }, units: Units): Problem[] {
  const { strength, stiffness } = test
  if (strength === undefined || stiffness === undefined) return []
  const ratio = stiffness / strength
  const { least, most } = stiffnessOverStrength
  if (ratio >= least && ratio <= most) return []
  return [
    {
      code: 'mix/stiffness-contradicts',
      at: test.at,
      say: `A stiffness of ${sayTestValue('stiffness', stiffness, units)} is ${Number(ratio.toPrecision(3))} times the strength of ${sayTestValue('strength', strength, units)}; between ${least} and ${most} times can be. One of the two has the wrong unit.`,
      values: { stiffness, strength },
    },
  ]
}

function outside(test: MixTest, quantity: Quantity, value: number | undefined, units: Units): Problem[] {
  if (value === undefined) return []
  const { least, most } = plausible[quantity]
  if (value >= least && value <= most) return []
  const said = (number: number) => sayTestValue(quantity, number, units)
  return [
    {
      code: `mix/implausible-${quantity}`,
      at: test.at,
      say: `The ${quantity} of this ${test.kind} test is ${said(value)}; between ${said(least)} and ${said(most)} can be used. Check the number and its unit.`,
      values: { found: value, least, most },
    },
  ]
}
