import { sayQuantity, type Units } from '../limit/index.js'
import type { Problem } from '../result/index.js'
import type { MixTest } from './mix-test.js'
import { patSlenderness } from './spread.js'

/** What a value of each kind may be. Outside it a unit or a decimal point is wrong, not the mix. */
const plausible = {
  age: { least: 0, most: 400 * 86_400, unit: 's' },
  temperature: { least: -10, most: 80, unit: '°C' },
  stress: { least: 1, most: 2e6, unit: 'Pa' },
  diameter: { least: 0.02, most: 2, unit: 'm' },
  volume: { least: 1e-6, most: 0.05, unit: 'm³' },
  strength: { least: 10, most: 200e6, unit: 'Pa' },
  stiffness: { least: 100, most: 60e9, unit: 'Pa' },
  resistance: { least: 1000, most: 100e6, unit: 'Pa' },
  density: { least: 800, most: 3500, unit: 'kg/m³' },
} as const

type Quantity = keyof typeof plausible

/** Everything in the tests that cannot be used, each with its place, the number found and the numbers allowed. */
export function checkTests(tests: readonly MixTest[], units: Units = 'metric'): Problem[] {
  return [
    ...tests.flatMap(test => checkTest(test, units)),
    ...checkDensities(tests, units),
    ...checkAgreement(tests),
  ]
}

function checkTest(test: MixTest, units: Units): Problem[] {
  const said = (size: number) => sayQuantity(Math.round(size * 1000), 'mm', units)
  const values: readonly (readonly [Quantity, number | undefined])[] = [
    ['age', test.age],
    ['temperature', test.temperature],
    ...valuesOf(test),
  ]
  const found = values.flatMap(([quantity, value]) => outside(test, quantity, value))
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

function valuesOf(test: MixTest): readonly (readonly [Quantity, number | undefined])[] {
  switch (test.kind) {
    case 'vane':
    case 'penetrometer':
      return [['stress', test.stress]]
    case 'spread':
      return [
        ['diameter', test.diameter],
        ['volume', test.volume],
      ]
    case 'compression':
      return [
        ['strength', test.strength],
        ['stiffness', test.stiffness],
      ]
    case 'set':
      return [['resistance', test.resistance]]
    case 'density':
      return [['density', test.density]]
    case 'cylinder':
    case 'cube':
      return [['strength', test.strength]]
  }
}

function outside(test: MixTest, quantity: Quantity, value: number | undefined): Problem[] {
  if (value === undefined) return []
  const { least, most, unit } = plausible[quantity]
  if (value >= least && value <= most) return []
  return [
    {
      code: `mix/implausible-${quantity}`,
      at: test.at,
      say: `The ${quantity} of this ${test.kind} test is ${value} ${unit}; between ${least} and ${most} ${unit} can be used. Check the number and its unit.`,
      values: { found: value, least, most },
    },
  ]
}

/** Densities of one mix agree within a few per cent; more means two mixes, or entrapped air in a mould. */
function checkDensities(tests: readonly MixTest[], units: Units): Problem[] {
  const found = tests.filter(test => test.kind === 'density').sort((a, b) => a.density - b.density)
  const [low, high] = [found[0], found.at(-1)]
  if (!low || !high || high.density <= 1.08 * low.density) return []
  return [
    {
      code: 'mix/density-contradicts',
      at: `${low.at}, ${high.at}`,
      say: `Densities of ${sayQuantity(low.density, 'kg/m³', units)} and ${sayQuantity(high.density, 'kg/m³', units)} differ by more than 8 %: they cannot be the same mix. Weigh again, or fit the two mixes apart.`,
      values: { low: low.density, high: high.density },
    },
  ]
}

/** Two tests of one kind at about the same age a hundredfold apart are one mix in two units. */
function checkAgreement(tests: readonly MixTest[]): Problem[] {
  const problems: Problem[] = []
  for (const [index, test] of tests.entries())
    for (const other of tests.slice(index + 1)) {
      const [a, b] = [mainValue(test), mainValue(other)]
      const sameAge = Math.abs(test.age - other.age) <= 60 + 0.1 * Math.max(test.age, other.age)
      if (test.kind !== other.kind || !sameAge || !(a > 0 && b > 0)) continue
      if (Math.max(a / b, b / a) < 100) continue
      problems.push({
        code: 'mix/mixed-units',
        at: `${test.at}, ${other.at}`,
        say: `Two ${test.kind} tests at about ${Math.round(test.age / 60)} min give ${a.toPrecision(3)} and ${b.toPrecision(3)} (SI), more than a hundredfold apart. One of them has the wrong unit.`,
      })
    }
  return problems
}

const mainValue = (test: MixTest): number => valuesOf(test).find(([, value]) => value !== undefined)?.[1] ?? 0
