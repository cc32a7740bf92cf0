import { describe, expect, it } from 'vitest'
import { ageFactor, defaultMix } from '../mix/index.js'
import { assessLift } from './assess-lift.js'
import { memberFactor } from './member-buckling.js'
import { membersOf } from './members.js'
import { evenEnds } from './pace.js'
import type { StandPanel } from './stand-geometry.js'
import { makeStanding, standRulesOf } from './standing.js'

const make = { kind: 'double', thickness: 0.25, bead: 0.05, web: 'zigzag', pitch: 0.6 } as const
const panels = (
  [
    ['both', 3],
    ['one', 2.5],
    ['none', 4],
  ] as const
).map(
  ([supports, length]): StandPanel => ({
    place: `${supports}, ${length} m`,
    wall: 'A',
    from: 0,
    to: length,
    length,
    bottom: 0,
    top: 2.7,
    supports,
    make,
  }),
)
const geometry = { section: 'A', panels }
const rule = (value: number) => ({ value, source: 'the job' })
const input = {
  mix: defaultMix,
  print: { layerHeight: 0.02 },
  rules: { standSafety: rule(1.5), imperfection: rule(0.6) },
  sections: [geometry],
}
const rules = standRulesOf(input)
const paces = Array.from({ length: 30 }, (_, i) => 70 * 1.1 ** i).flatMap(time =>
  [8.1, 20, 31.7].map(temperature => ({ time, temperature })),
)

/** Independent of the table: every number of layers judged one by one at the lift's own pace. */
describe('what the table of paces costs', () => {
  const standing = makeStanding(input)
  const asked = paces.map(({ time, temperature }) => {
    const age = { layerHeight: 0.02, ends: evenEnds(50, time), factor: ageFactor(temperature, defaultMix) }
    const table = standing({ section: 'A', firstLayer: 1, start: 0, layerEnds: age.ends, temperature })
    return { age, table, own: assessLift(geometry, 1, age, rules) }
  })

  it('is no more height than a safety 2 % greater would, by the step of the pace', () => {
    for (const { age, table } of asked) {
      const safer = assessLift(geometry, 1, age, { ...rules, safety: 1.021 * rules.safety })
      expect(table.layers).toBeGreaterThanOrEqual(safer.layers)
    }
  })

  it('is less than 2 % of the safety that is told', () => {
    const alike = asked.filter(({ table, own }) => table.layers === own.layers)
    expect(alike.length).toBeGreaterThan(40)
    for (const { table, own } of alike) {
      expect(table.safety).toBeLessThanOrEqual(own.safety * (1 + 1e-9))
      expect(table.safety / own.safety).toBeGreaterThan(0.98)
    }
  })

  it('promises no height over a state that is not safe, though it asks the height wished and not all below it', () => {
    // The number of elements goes up with the height in whole steps: 1 in 2000 is left of that.
    const members = membersOf(geometry, rules, 0, 1)
    for (const { age, table } of asked)
      for (let layers = 1; layers <= table.layers; layers++)
        for (const member of members)
          expect(0.6 * memberFactor(member, age, layers, rules)).toBeGreaterThan(1.5 * 0.9995)
  })
})
