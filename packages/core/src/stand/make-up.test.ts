import { describe, expect, it } from 'vitest'
import { solveLinear } from '../numeric/index.js'
import { curvatureGain, curvedInertiaGain } from './curvature.js'
import {
  leafLaw,
  materialWidth,
  shearLagShare,
  shearSoftening,
  shearStiffnessUp,
  softLeafLaw,
  wallLaw,
} from './make-up.js'
import { lineMesh } from './shell/line-mesh.js'
import { shellBuckling } from './shell/shell-buckling.js'
import { gaussHeights, stripBuckling } from './strip.js'
import { freeShape, type StripLaw, simplySupportedShape } from './strip-element.js'

const make = { kind: 'double', thickness: 0.25, bead: 0.05, web: 'zigzag', pitch: 0.6 } as const
const constant = (law: StripLaw, elements = 24, height = 1) =>
  stripBuckling({ height, weight: 1000, law, modulus: gaussHeights(elements).map(() => 1e6), elements })
    .factor

describe('a double wall as two wythes on a web', () => {
  it('holds 2·bead + web of material', () =>
    // hand: 0.1 + 2 legs of 0.15 m clear × √(0.2² + 0.3²)/0.2, 0.05 thick, per 0.6 m = 0.1 + 0.04507
    expect(materialWidth(make)).toBeCloseTo(0.14507, 5))

  it('has the web’s shear stiffness of inclined plates', () =>
    // hand: 0.05·2·0.2·(0.2/0.36056)/0.6/2.6 = 0.00711154
    expect(shearStiffnessUp(make, 0.3)).toBeCloseTo(0.00711154, 7))

  it('bears as one piece when the web is stiff: own and composite inertia add up', () => {
    const law = { ...wallLaw(make, 1, 0.3, freeShape), shearUp: 1e6 }
    const solid = { ...leafLaw(1, 0.3, freeShape), own: law.own + law.composite }
    expect(constant(law) / constant(solid)).toBeCloseTo(1, 4)
  })

  it('bears as two leaves when the web gives way', () => {
    const law = { ...wallLaw(make, 1, 0.3, freeShape), shearUp: 1e-9 }
    // the composite still costs a little energy in the linear shear angle of an element: 1 in 1000 with 24 of them
    const apart = { ...leafLaw(1, 0.3, freeShape), own: law.own }
    expect(Math.abs(constant(law) / constant(apart) - 1)).toBeLessThan(1e-3)
  })

  it('bears no less than the two ways of giving way in series [closed form, Föppl–Papkovich]', () => {
    for (const shear of [1e-3, 1e-2, 1e-1]) {
      const law = { ...wallLaw(make, 1, 0.3, freeShape), own: 1e-9, shearUp: shear }
      const bending = constant({ ...law, shearUp: 1e6 })
      const shearing = (1e6 * shear) / 1000
      expect(constant(law, 60)).toBeGreaterThan(1 / (1 / bending + 1 / shearing))
    }
  })

  it('comes nearer with about the fourth power of the element, web and all', () => {
    const law = wallLaw(make, 1, 0.3, simplySupportedShape(3))
    const fine = constant(law, 96)
    const order = Math.log2((constant(law, 8) - fine) / (constant(law, 16) - fine))
    expect(order).toBeGreaterThan(1.8)
  })
})

/**
 * The same flange by finite elements over half its width: u = U(y)·cos kx, v = V(y)·sin kx in plane stress, U = 1 and V = 0 at
 * the web, V = 0 in the middle. Linear elements, one Gauss point each.
 */
function flangeShare(half: number, wave: number, poisson: number, elements: number): number {
  const k = Math.PI / wave
  const h = half / elements
  const [plate, shear] = [1 / (1 - poisson ** 2), 1 / (2 * (1 + poisson))]
  const size = 2 * (elements + 1)
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0))
  for (let e = 0; e < elements; e++) {
    // Strains of U and V at the middle of the element by its four values: along, across, shear.
    const at = [2 * e, 2 * e + 1, 2 * e + 2, 2 * e + 3]
    const along = [-k / 2, 0, -k / 2, 0]
    const across = [0, -1 / h, 0, 1 / h]
    const sheared = [-1 / h, k / 2, 1 / h, k / 2]
    for (let i = 0; i < 4; i++)
      for (let j = 0; j < 4; j++) {
        const normal =
          along[i]! * along[j]! +
          across[i]! * across[j]! +
          poisson * (along[i]! * across[j]! + across[i]! * along[j]!)
        matrix[at[i]!]![at[j]!]! += h * (plate * normal + shear * sheared[i]! * sheared[j]!)
      }
  }
  const right = new Array<number>(size).fill(0)
  for (const [row, value] of [
    [1, 0],
    [size - 2, 1],
    [size - 1, 0],
  ] as const) {
    matrix[row] = matrix[row]!.map((_, j) => (j === row ? 1 : 0))
    right[row] = value
  }
  const solved = solveLinear(matrix, right)!
  let force = 0
  for (let e = 0; e < elements; e++)
    force +=
      h *
      plate *
      ((k / 2) * (solved[2 * e]! + solved[2 * e + 2]!) -
        (poisson / h) * (solved[2 * e + 3]! - solved[2 * e + 1]!))
  return force / (plate * k * half)
}

describe('shear lag in a wythe', () => {
  it.each([0.05, 0.3, 0.6, 1, 2])('is that of finite elements, webs %d m from the middle', half => {
    // independent: of second order, so a third of the gap between 40 and 80 elements is what 80 still err by.
    const [coarse, fine] = [flangeShare(half, 2, 0.3, 40), flangeShare(half, 2, 0.3, 80)]
    const limit = fine + (fine - coarse) / 3
    expect(Math.abs(shearLagShare(half, 2, 0.3) / limit - 1)).toBeLessThan(1e-4)
  })
  it('takes nothing from close webs', () => expect(shearLagShare(0.001, 2, 0.3)).toBeCloseTo(1, 5))
  it('leaves the effective width of a wide flange, 2/((3 + 2ν − ν²)k) each side [TimoshenkoGoodier1970]', () => {
    const [half, wave] = [10, 1]
    const width = half * shearLagShare(half, wave, 0.3) * (1 / (1 - 0.09))
    expect(width).toBeCloseTo((2 * wave) / ((3 + 0.6 - 0.09) * Math.PI), 6)
  })
  it('grows with the spacing of the webs', () => {
    const shares = [0.1, 0.3, 1, 3].map(half => shearLagShare(half, 2, 0.3))
    expect(shares).toEqual([...shares].sort((a, b) => b - a))
  })
})

describe('a leaf’s own shear', () => {
  it('takes nothing from a slender leaf and always something from a thick one', () => {
    expect(shearSoftening(0.001, 1, freeShape, 0.3)).toBeCloseTo(1, 5)
    expect(shearSoftening(0.2, 0.6, freeShape, 0.3)).toBeLessThan(0.95)
  })
})

describe('a curved leaf', () => {
  it('has the inertia of its arc (closed form against a sum over the arc)', () => {
    const [h, radius, length] = [0.05, 2, 1.2]
    const heights = Array.from(
      { length: 20000 },
      (_, i) => radius * Math.cos(((i + 0.5) / 20000 - 0.5) * (length / radius)),
    )
    const mean = heights.reduce((a, b) => a + b, 0) / heights.length
    const spread = heights.reduce((sum, y) => sum + (y - mean) ** 2, 0) / heights.length
    // a parabola for an arc of 34°: 1 %
    expect(Math.abs(curvedInertiaGain(h, radius, length) / (1 + spread / (h ** 2 / 12)) - 1)).toBeLessThan(
      0.015,
    )
  })

  // independent of the strip: shells of the true curve
  it.each([
    [1, 20, 0.6],
    [1, 45, 0.6],
    [1, 90, 1],
    [2, 90, 0.6],
    [0.5, 90, 1],
  ])('bears at least what the strip says, R %d m, %d°, %d m high', (radius, degrees, height) => {
    const angle = (degrees * Math.PI) / 180
    const points = [
      [radius, 0],
      [radius * Math.cos(angle), radius * Math.sin(angle)],
    ] as const
    const path = { points, bulges: [Math.tan(angle / 4)], closed: false }
    const modulusAt = (at: number) => 240e3 - (160e3 * at) / height
    const mesh = lineMesh([{ path, thickness: 0.05 }], Math.min(0.12, radius / 6))
    const shell = shellBuckling({
      mesh,
      height,
      rows: 6,
      modulusAt,
      poisson: 0.3,
      density: 2100,
      gravity: 9.81,
    })
    const straight = softLeafLaw(0.05, height, 0.3, freeShape)
    const gain = curvatureGain({ thickness: 0.05, radius, length: radius * angle }, height)
    const modulus = gaussHeights(24).map(share => modulusAt(share * height))
    const law = { ...straight, own: straight.own * gain }
    const strip = stripBuckling({ height, weight: 2100 * 9.81 * 0.05, law, modulus, elements: 24 }).factor
    if (shell.kind !== 'buckles') throw new Error('the arc buckles')
    expect(gain).toBeGreaterThan(1)
    expect(strip).toBeLessThan(shell.factor)
    expect(strip).toBeGreaterThan(0.55 * shell.factor)
  })
})
