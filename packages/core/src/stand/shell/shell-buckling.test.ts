import { describe, expect, it } from 'vitest'
import { GREENHILL } from '../greenhill.js'
import { leafLaw } from '../make-up.js'
import { gaussHeights, stripBuckling } from '../strip.js'
import { simplySupportedShape } from '../strip-element.js'
import { calculixCases } from './calculix.fixture.js'
import { doubleSection } from './double-section.fixture.js'
import { straightMesh } from './plan-mesh.js'
import { type ShellBuckling, shellBuckling, shellStands, weightOf } from './shell-buckling.js'
import type { Shell, Unknown } from './shell-model.js'

const factorOf = (answer: ShellBuckling) => (answer.kind === 'buckles' ? answer.factor : Number.NaN)
const fresh = { poisson: 0.3, density: 2100, gravity: 9.81, modulusAt: () => 1e5 }

/** A long wall: nothing moves or turns along it. */
function longWall(height: number, rows: number, thickness = 0.02): Shell {
  const held = [0, 1, 2, 3, 4].map(position => ({ position, unknowns: [0, 4, 5] as const }))
  return { ...fresh, mesh: straightMesh(0.5, 4, thickness), height, rows, held }
}

describe('buckling of a section as shells', () => {
  // independent: CalculiX 2.20, see the fixture. Tolerance 2 %, what the product promises.
  it.each(calculixCases)('agrees with an outside solver within 2 %: $name', ({ shell, factor }) =>
    expect(Math.abs(factorOf(shellBuckling(shell)) / factor - 1)).toBeLessThan(0.02),
  )

  // Sturm's count: no buckling load under the one found, one by a thousandth above it
  it.each([
    ...calculixCases.map(({ name, shell }) => ({ name, shell })),
    { name: 'a double wall of 6 m', shell: doubleSection(6) },
  ])('is the lowest there is: $name', ({ shell }) => {
    const factor = factorOf(shellBuckling(shell))
    expect(shellStands(shell, 0.999 * factor)).toBe(true)
    expect(shellStands(shell, 1.001 * factor)).toBe(false)
  })

  it('is that of Greenhill for a long slender wall', () => {
    // closed form with D = E·h³/12(1 − ν²); shear of a wall 50 times as high as thick takes 0.1 %
    const rigidity = (1e5 * 0.02 ** 3) / 12 / 0.91
    const exact = (GREENHILL * rigidity) / (2100 * 9.81 * 0.02)
    expect(Math.abs(factorOf(shellBuckling(longWall(1, 8))) / exact - 1)).toBeLessThan(2e-3)
  })

  /** Shells over Hermite strips for a plate held at both ends, an independent method, exact for a thin plate pressed upright alone. */
  const overStrip = (
    [length, height, thickness, poisson]: readonly [number, number, number, number],
    unknowns: readonly Unknown[],
    rows = 16,
  ) => {
    const law = leafLaw(thickness, poisson, simplySupportedShape(length))
    const weight = 2100 * 9.81 * thickness
    const modulus = gaussHeights(40).map(() => 1e5)
    const strip = stripBuckling({ height, weight, law, modulus, elements: 40 }).factor
    const held = [0, 8].map(position => ({ position, unknowns }))
    const mesh = straightMesh(length, 8, thickness)
    return factorOf(shellBuckling({ ...fresh, poisson, mesh, height, rows, held })) / strip
  }

  it.each([
    [1, 0.5],
    [2, 0.4],
  ])(
    'is within 2 %% of plate theory for a wall held at both ends, %d m long and %d m high',
    (length, height) => {
      const share = overStrip([length, height, 0.02, 0.3], [1], 8)
      expect(share).toBeLessThan(1)
      expect(share).toBeGreaterThan(0.98)
    },
  )

  // what plate theory leaves out is left out here too: no shear in a plate of 5 mm, ends that cannot twist, no widening.
  // 0.3 %: 0.3·(π·5/250)², a sixth of the shear of the shortest wave, and the mesh
  it.each([
    [0.3, 1],
    [0.3, 0.6],
    [0.25, 0.25],
    [0.5, 1],
  ])('is plate theory itself for a thin narrow plate, %d m long and %d m high', (length, height) =>
    expect(Math.abs(overStrip([length, height, 0.005, 0], [1, 3]) - 1)).toBeLessThan(3e-3),
  )

  it('falls under plate theory on a narrow thick plate by its shear, its ends and its foot', () => {
    const plate = [0.3, 1, 0.02, 0.3] as const
    const wave = 2 * (Math.PI / 0.3) ** 2
    // half waves as wide as high: 1/(1 + k²h²/(5(1 − ν))), see `shearSoftening`
    const softening = 1 / (1 + (wave * 0.02 ** 2) / 5)
    const sheared = overStrip([0.3, 1, 0.02, 0], [1, 3])
    expect(sheared / softening).toBeGreaterThan(0.99)
    expect(sheared / softening).toBeLessThan(1.01)
    // ends that may twist
    const twisting = overStrip([0.3, 1, 0.02, 0], [1])
    expect(twisting / sheared).toBeLessThan(0.98)
    // a foot that keeps the plate from widening presses it sideways too
    expect(overStrip(plate, [1]) / twisting).toBeLessThan(0.99)
  })

  it('comes nearer with the fourth power of the row height', () => {
    const fine = factorOf(shellBuckling(longWall(0.6, 32, 0.05)))
    const gap = (rows: number) => Math.abs(factorOf(shellBuckling(longWall(0.6, rows, 0.05))) - fine)
    const order = Math.log2(gap(3) / gap(6))
    expect(order).toBeGreaterThan(3)
  })

  it('comes nearer with the fourth power of the piece too, on a plate held at both sides', () => {
    const plate = (pieces: number) => {
      const held = [0, pieces].map(position => ({ position, unknowns: [1, 3] as const }))
      const mesh = straightMesh(0.5, pieces, 0.05)
      return factorOf(shellBuckling({ ...fresh, mesh, height: 0.5, rows: pieces, held }))
    }
    const fine = plate(24)
    const order = Math.log2(Math.abs(plate(3) - fine) / Math.abs(plate(6) - fine))
    expect(order).toBeGreaterThan(3.5)
    expect(order).toBeLessThan(4.7)
  })

  it('halves when the density doubles, and doubles with the stiffness', () => {
    const wall = longWall(0.6, 4)
    const once = factorOf(shellBuckling(wall))
    expect(factorOf(shellBuckling({ ...wall, density: 4200 })) / once).toBeCloseTo(0.5, 5)
    expect(factorOf(shellBuckling({ ...wall, modulusAt: () => 2e5 })) / once).toBeCloseTo(2, 5)
  })

  it('weighs what the walls weigh', () =>
    // hand: 2100·9.81·0.02·0.5·0.6 = 123.606 N
    expect(weightOf(longWall(0.6, 4))).toBeCloseTo(123.606, 6))

  it('finds no buckling in a wall that hangs', () =>
    // without Poisson's ratio: with it the foot keeps the wall from narrowing and presses it sideways
    expect(shellBuckling({ ...longWall(0.6, 4), poisson: 0, gravity: -9.81 })).toEqual({ kind: 'none' }))

  it('stops at once whenever it is told to', () => {
    let all = 0
    shellBuckling(longWall(0.6, 4), () => ++all > 0)
    expect(all).toBeGreaterThan(10)
    for (let told = 1; told <= all; told++) {
      let calls = 0
      expect(shellBuckling(longWall(0.6, 4), () => ++calls < told)).toEqual({ kind: 'cancelled' })
      expect(calls).toBe(told)
    }
  })

  it('asks before every run, joint and step, and never goes back', () => {
    const shares: number[] = []
    const shell = doubleSection(6)
    shellBuckling(shell, share => shares.push(share) > 0)
    // runs and joints of 20 legs and their wythes, in few rows and in all
    expect(shares.length).toBeGreaterThan(2 * (20 + 20))
    expect(shares.every((share, i) => share >= (shares[i - 1] ?? 0) && share <= 1)).toBe(true)
  })

  it('hands back a mode that is still at the foot, largest at the free top, and survives JSON', () => {
    const found = shellBuckling(longWall(0.6, 4))
    if (found.kind !== 'buckles') throw new Error('the wall buckles')
    const { mode } = found
    expect(mode.moves.every(levels => levels[0]!.every(move => move === 0))).toBe(true)
    expect(mode.largest.level).toBe(8)
    expect(Math.max(...mode.moves.flatMap(levels => levels.map(move => Math.hypot(...move))))).toBeCloseTo(
      1,
      12,
    )
    expect(JSON.parse(JSON.stringify(mode))).toEqual(mode)
  })
})
