import { beforeAll, describe, expect, it } from 'vitest'
import { initGeometry } from '../geometry/index.js'
import type { Relief } from '../job/index.js'
import { embed, fixture, line, opening, type WallFixture, wall } from './fixtures/invented.js'
import { layAllBeads } from './lay-beads.js'
import { checkOverhang } from './overhang.js'

beforeAll(() => initGeometry())

const findings = ({ parts, sections }: WallFixture) =>
  layAllBeads(parts, sections).flatMap(laid => checkOverhang(parts, laid))
const straight = line([0, 0], [4, 0])

describe('checkOverhang', () => {
  it('finds nothing in a plain wall with a lintel over its window', () => {
    expect(
      findings(fixture('lintel', { walls: [wall('w', straight)], openings: [opening('o', 'w', 2, 1)] })),
    ).toEqual([])
  })
  it('finds the wall over a window without lintel hanging', () => {
    const { lintel: _, ...bare } = opening('o', 'w', 2, 1)
    const [found, ...rest] = findings(fixture('bare', { walls: [wall('w', straight)], openings: [bare] }))
    expect(rest).toEqual([])
    expect(found).toMatchObject({ check: 'unsupported', verdict: 'fail', at: 'section A, layer 106' })
    // hand: the opening is 1 m by 0.25 m less the 7.5 mm either side that the limit allows: 0.985 × 0.25 = 2463 cm².
    expect(found!.say).toContain('2463 cm²')
    expect(found!.point![0]).toBeCloseTo(2, 3)
  })
  it('is content with a box in its gap, not with an empty niche', () => {
    const over = (kind: 'box' | 'niche') =>
      findings(
        fixture(kind, {
          walls: [wall('w', straight)],
          embeds: [embed('e', 'w', 2, { kind, width: 0.4, height: 0.4 })],
        }),
      )
    expect(over('box')).toEqual([])
    expect(over('niche').map(({ check }) => check)).toEqual(['unsupported'])
  })
  it('finds a wall that starts above the slab', () => {
    expect(
      findings(fixture('high', { walls: [wall('w', straight, { base: 1 })] })).map(({ check }) => check),
    ).toEqual(['unsupported'])
  })

  const ripple = (depth: number): Relief => ({ face: 'left', pattern: 'ripple', depth, pitch: 1, rise: 0.4 })
  const waved = (depth: number) =>
    findings(
      fixture('ripple', {
        walls: [wall('w', straight, { top: 0.4, thickness: 0.3, relief: ripple(depth) })],
      }),
    )
  // hand: d = a·cos(2πz/0.4) steps at most a·2π·0.02/0.4 = 0.314 a from layer to layer; allowed 15 % of 50 mm = 7.5 mm → a = 23.9 mm.
  it('lets a ripple of 22 mm pass and stops one of 30 mm', () => {
    expect(waved(0.022)).toEqual([])
    const found = waved(0.03)
    expect(found.length).toBeGreaterThan(0)
    // hand: 0.03·2·sin(π/20) = 9.39 mm at the steepest layer, 18.8 % of the bead.
    expect(Math.max(...found.map(({ demand }) => demand))).toBeCloseTo(0.188, 2)
  })
})
