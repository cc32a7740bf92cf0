import { describe, expect, it } from 'vitest'
import { defaultMix } from '../mix/index.js'
import { type Member, membersOf } from './members.js'
import { paceTable } from './pace-table.js'
import type { StandPanel } from './stand-geometry.js'
import { standRulesOf } from './standing.js'

const rules = standRulesOf({
  mix: { ...defaultMix, lower: { ...defaultMix.lower, stiffness: { start: 60_000, rate: 25, bend: 0 } } },
  rules: {
    standSafety: { value: 1.5, source: 'the job' },
    imperfection: { value: 0.7, source: 'the job' },
  },
  print: { layerHeight: 0.02 },
  sections: [],
})

const panel = (length: number, supports: StandPanel['supports'], pitch: number): StandPanel => ({
  place: `${supports} ${length}`,
  wall: 'W1',
  from: 0,
  to: length,
  length,
  bottom: 0,
  top: 3,
  supports,
  make: { kind: 'double', thickness: 0.25, bead: 0.05, web: 'zigzag', pitch },
})
const panels = [panel(6, 'both', 0.4), panel(3, 'one', 0.4), panel(2, 'none', 0.8), panel(1, 'both', 1.4)]
const members: readonly Member[] = membersOf({ section: 'A', panels }, rules, 0, 1)
const paces = [900, 40, 300, 120, 61, 62, 500]

describe('what stands at a pace', () => {
  it('is the same whatever was asked before', () => {
    const asked = paceTable(0.02, 60, rules)
    for (const pace of paces) {
      for (const member of members) {
        // `independent`: the whole verdict of a table that was asked nothing else.
        const whole = paceTable(0.02, 60, rules).buckling(member.key, member, pace)
        for (const wished of [60, 10, 25, 1]) {
          expect(asked.standing(member.key, member, pace, wished)).toBe(Math.min(wished, whole.layers))
          expect(asked.safety(member.key, member, pace, wished, 4)).toBeCloseTo(
            Math.min(4, whole.safetyAt(wished)),
            6,
          )
        }
      }
    }
  })
  it('is asked of the strip seldom: a second look costs nothing', () => {
    let asked = 0
    const counted = members.map(member => ({
      ...member,
      elementsAt: (height: number) => {
        asked++
        return member.elementsAt(height)
      },
    }))
    const table = paceTable(0.02, 60, rules)
    for (const member of counted) table.standing(member.key, member, 300, 40)
    const once = asked
    for (const member of counted) table.standing(member.key, member, 300, 40)
    expect([asked, once > 0]).toEqual([once, true])
    for (const member of counted) table.buckling(member.key, member, 300)
    expect(asked).toBeGreaterThan(once)
  })
})
