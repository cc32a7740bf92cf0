import { sayQuantity, type Units } from '../limit/index.js'
import type { Problem } from '../result/index.js'
import type { MixTest, MixTestKind } from './mix-test.js'
import { type Quantity, sayTestValue, valuesOf } from './test-values.js'

/** What usable tests contradict in each other. */
export const checkSeries = (tests: readonly MixTest[], units: Units): Problem[] => [
  ...checkDensities(tests, units),
  ...mixedUnits(tests, units),
  ...fallingStiffness(tests, units),
]

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

interface Measured {
  readonly test: MixTest
  readonly quantity: Quantity
  readonly value: number
}

/** Kinds whose value grows with age, each in order of it. */
const growing: readonly MixTestKind[] = ['vane', 'penetrometer', 'compression', 'set', 'cylinder', 'cube']

function seriesOf(tests: readonly MixTest[], kind: MixTestKind): readonly (readonly Measured[])[] {
  const values = tests
    .filter(test => test.kind === kind)
    .sort((a, b) => a.age - b.age)
    .flatMap(test =>
      valuesOf(test).flatMap(([quantity, value]) => (value === undefined ? [] : [{ test, quantity, value }])),
    )
  return [...new Set(values.map(({ quantity }) => quantity))].map(quantity =>
    values.filter(each => each.quantity === quantity),
  )
}

/** One value a hundredfold or more off its neighbours in age is in another unit than they are: each pair is named once. */
function mixedUnits(tests: readonly MixTest[], units: Units): Problem[] {
  const pairs = new Map<string, readonly [Measured, Measured]>()
  for (const series of growing.flatMap(kind => seriesOf(tests, kind)))
    series.forEach((one, i) => {
      const [before, after] = [series[i - 1], series[i + 1]]
      const other = before && after ? between(before, one, after) : atAnEnd(series, i)
      const pair = other && [one.test.at, other.test.at].sort().join(' ')
      if (pair && !pairs.has(pair)) pairs.set(pair, [one, other])
    })
  return [...pairs.values()].map(([one, other]) => mixed(one, other, units))
}

/** The neighbour that a value inside a series is a hundredfold off, if it is off both, and to the same side. */
function between(before: Measured, one: Measured, after: Measured): Measured | undefined {
  const [low, high] = before.value < after.value ? [before, after] : [after, before]
  if (one.value * 100 <= low.value) return low
  return one.value >= 100 * high.value ? high : undefined
}

/** At an end a mix may really leap: only where the others lie close together, or at the same age, is it the unit. */
function atAnEnd(series: readonly Measured[], i: number): Measured | undefined {
  const one = series[i]!
  const near = series[i === 0 ? 1 : i - 1]
  if (!near) return undefined
  const ratio = Math.max(one.value / near.value, near.value / one.value)
  const sameAge = Math.abs(one.test.age - near.test.age) <= 60 + 0.1 * Math.max(one.test.age, near.test.age)
  if (sameAge && ratio >= 100) return near
  const others = series.filter(each => each !== one).map(({ value }) => value)
  const spread = Math.max(...others) / Math.min(...others)
  return others.length >= 2 && ratio >= 300 && spread < ratio / 10 ? near : undefined
}

function mixed(one: Measured, other: Measured, units: Units): Problem {
  const said = ({ quantity, value, test }: Measured) =>
    `${sayTestValue(quantity, value, units)} at ${sayTestValue('age', test.age, units)}`
  return {
    code: 'mix/mixed-units',
    at: `${one.test.at}, ${other.test.at}`,
    say: `This ${one.test.kind} test gives ${said(one)}, the one beside it ${said(other)}: a hundredfold apart or more. One of them has the wrong unit.`,
    values: { found: one.value, beside: other.value },
  }
}

/** A mix that gets softer from test to test, to under half: the rows are swapped, or specimens were spoilt. */
function fallingStiffness(tests: readonly MixTest[], units: Units): Problem[] {
  const series = seriesOf(tests, 'compression').find(([first]) => first?.quantity === 'stiffness') ?? []
  const [first, last] = [series[0], series.at(-1)]
  if (!first || !last || series.length < 3) return []
  const falls = series.every((each, i) => i === 0 || each.value < series[i - 1]!.value)
  if (!falls || last.value > first.value / 2) return []
  return [
    {
      code: 'mix/stiffness-falls',
      at: series.map(({ test }) => test.at).join(', '),
      say: `The stiffness falls from ${sayTestValue('stiffness', first.value, units)} at ${sayTestValue('age', first.test.age, units)} to ${sayTestValue('stiffness', last.value, units)} at ${sayTestValue('age', last.test.age, units)}: a mix stiffens as it ages. Check that ages and values stand in their own rows, or leave the spoilt specimens out.`,
      values: { first: first.value, last: last.value },
    },
  ]
}
