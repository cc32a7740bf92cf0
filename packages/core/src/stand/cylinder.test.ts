import { describe, expect, it } from 'vitest'
import { collapseSafety, firstUnstable, type StandRules } from './assess-lift.js'
import { memberFactor } from './member-buckling.js'
import { membersOf } from './members.js'
import { evenEnds } from './pace.js'
import { ringMesh } from './shell/plan-mesh.js'
import { shellBuckling } from './shell/shell-buckling.js'

/**
 * The published printed cylinder [Wolfs2018]: radius 250 mm, layers 10 × 40 mm, 18.85 s each; five specimens failed at 30, 25,
 * 31, 27 and 31 layers (mean 28.8); the authors' own finite elements said 46 (from memory).
 */
const measured = { kind: 'linear', start: 5984, rate: 147 / 60 } as const
const rules: StandRules = {
  density: 2070,
  poisson: 0.3,
  growth: {
    yield: { kind: 'linear', start: 3050, rate: 58 / 60 },
    stiffness: { start: 78_100, rate: 1200 / 60, bend: 0 },
  },
  strength: { kind: 'uniaxial', measured },
  safety: 1,
  imperfection: 1,
}
const cylinder = {
  place: 'cylinder',
  wall: 'C',
  from: 0,
  to: 2 * Math.PI * 0.25,
  length: 2 * Math.PI * 0.25,
  bottom: 0,
  top: 1,
  supports: 'ring',
  radius: 0.25,
  make: { kind: 'leaf', thickness: 0.04 },
} as const
const age = { layerHeight: 0.01, ends: evenEnds(80, 18.85), factor: 1 }
const [ring] = membersOf({ section: 'C', panels: [cylinder] }, rules, 0, 0.8)

describe('the published printed cylinder', () => {
  it('yields at its foot at layer 38 with the strength measured in compression', () => {
    // hand: ρgh·n = 5984 + 2.45·18.85·(n − 1) gives n = 37.9; 38.1 when the foot's age is counted from its start
    const first = firstUnstable(80, layers => collapseSafety(age, layers, rules) >= 1)
    expect(first).toBe(38)
  })

  it('buckles by the quick model at layer 42 or 43, under the published finite elements', () => {
    // hand: 0.605·0.04/0.25·(78,100 + 377·0.65·n) = 203.07·n gives n = 42.2
    const first = firstUnstable(80, layers => memberFactor(ring!, age, layers, rules) >= 1)
    expect([42, 43]).toContain(first)
  })

  it('buckles as a shell between layers 45 and 50', () => {
    const factor = (layers: number) => {
      const modulusAt = (at: number) => 78_100 + 20 * 18.85 * (layers - 1 - at / 0.01 + 1)
      const mesh = ringMesh(0.25, 24, 0.04)
      const shell = {
        mesh,
        height: layers * 0.01,
        rows: 8,
        modulusAt,
        poisson: 0.3,
        density: 2070,
        gravity: 9.81,
      }
      const found = shellBuckling(shell)
      return found.kind === 'buckles' ? found.factor : Number.NaN
    }
    expect(factor(45)).toBeGreaterThan(1)
    expect(factor(50)).toBeLessThan(1)
  })

  it('stood less than any perfect model: the tests failed at 0.58 to 0.75 of the quick one, the imperfection factor’s task', () => {
    const perfect = firstUnstable(80, layers => memberFactor(ring!, age, layers, rules) >= 1)!
    const shares = [30, 25, 31, 27, 31].map(layers => layers / perfect)
    expect(Math.min(...shares)).toBeGreaterThan(0.55)
    expect(Math.max(...shares)).toBeLessThan(0.75)
  })
})
