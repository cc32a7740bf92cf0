import type { Metres } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { countNegativePivots, solveBanded } from './banded.js'
import { gaussPoints, type StripLaw, slopeSquaredAtPoints, stiffnessAtPoints } from './strip-element.js'

/**
 * A growing wall as one strip over its height, x = 0 at its clamped foot:
 *
 *   w(x, y) = W(x)·f(y),   energy = ½∫E(x)·{ stiffness law }dx − λ·½∫N(x)·W′²dx,   N(x) = weight·(height − x)
 *
 * Cubic Hermite elements in x; composite walls carry the shear angles between their wythes as further unknowns.
 */
export interface Strip {
  readonly height: Metres
  /** ρ·g·cross-section: N per metre of height and metre of wall. */
  readonly weight: number
  readonly law: StripLaw
  /** Young's modulus at the Gauss points, foot first [Pa]; see `gaussHeights`. */
  readonly modulus: Float64Array
  readonly elements: number
}

/** Unknowns of a node: deflection and slope, then the shear angle up the wall and, where held sideways, along it. */
const unknowns = (law: StripLaw): 2 | 3 | 4 => (law.composite === 0 ? 2 : law.shape.slope === 0 ? 3 : 4)

/** Heights over the foot of the points where the strip asks for the modulus, as shares of its height. */
export function gaussHeights(elements: number): Float64Array {
  const shares = new Float64Array(elements * gaussPoints.length)
  for (let e = 0; e < elements; e++)
    gaussPoints.forEach((point, g) => {
      shares[e * gaussPoints.length + g] = (e + point.at) / elements
    })
  return shares
}

/** How many buckling loads lie below `factor` times the self-weight: none means the strip stands. */
export function bucklingLoadsBelow(strip: Strip, factor: number): number {
  const { size, width } = bandOf(strip)
  return countNegativePivots(assemble(strip, 1, -factor), size, width)
}

/** Whether the strip bears `factor` times its self-weight. */
export function stripStands(strip: Strip, factor = 1): boolean {
  const { size, width } = bandOf(strip)
  return countNegativePivots(assemble(strip, 1, -factor), size, width, 1) === 0
}

export interface StripBuckling {
  /** Self-weight may be this many times what it is before the strip buckles. */
  readonly factor: number
  /** Deflection at the nodes, foot first, largest 1. */
  readonly shape: readonly number[]
  /** Relative change of the factor in the last step of the iteration. */
  readonly residual: number
}

/** Lowest buckling factor of a strip by inverse iteration with Rayleigh quotients. */
export function stripBuckling(strip: Strip): StripBuckling {
  const { size, width, each } = bandOf(strip)
  const load = assemble(strip, 0, 1)
  const factored = assemble(strip, 1, 0)
  assert(countNegativePivots(factored, size, width) === 0, 'a strip without load stands')
  let shape = new Float64Array(size).map((_, i) => (i % each === 0 ? ((i + each) / size) ** 2 : 0))
  let pushed = multiply(load, shape, size, width)
  let [factor, residual] = [0, 1]
  for (let step = 0; step < 200 && residual > 1e-9; step++) {
    const next = solveBanded(factored, pushed.slice(), size, width)
    const again = multiply(load, next, size, width)
    const better = dot(next, pushed) / dot(next, again)
    residual = Math.abs(better - factor) / better
    const scale = 1 / Math.sqrt(dot(next, again))
    factor = better
    shape = next.map(value => value * scale)
    pushed = again.map(value => value * scale)
  }
  return { factor, shape: deflections(shape, each), residual }
}

function deflections(shape: Float64Array, each: number): number[] {
  const values = [0]
  for (let node = 0; node * each < shape.length; node++) values.push(shape[node * each]!)
  const largest = values.reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0)
  return values.map(value => value / largest)
}

type FourPoints = readonly [Float64Array, Float64Array, Float64Array, Float64Array]

/** Size of the banded matrices; the foot's unknowns are left out. */
function bandOf({ law, elements }: Strip): {
  readonly size: number
  readonly width: number
  readonly each: 2 | 3 | 4
} {
  const each = unknowns(law)
  return { size: elements * each, width: 2 * each, each }
}

/** `stiff`·K + `load`·G as lower band by rows: entry (i, j) at i·width + (j − i + width − 1). */
function assemble(strip: Strip, stiff: number, load: number): Float64Array {
  const { height, weight, law, modulus, elements } = strip
  assert(height > 0 && weight > 0 && elements > 0, 'a strip has height and weight')
  assert(modulus.length === elements * gaussPoints.length, 'one modulus for every Gauss point')
  const { size, width, each } = bandOf(strip)
  const span = height / elements
  const band = new Float64Array(size * width)
  const [k0, k1, k2, k3] = stiffnessAtPoints(span, law, each) as FourPoints
  const [q0, q1, q2, q3] = slopeSquaredAtPoints(each) as FourPoints
  // the force at a point, times the span of its element over that of W′² itself
  const forceAt = (e: number, g: number) => load * weight * (elements - e - gaussPoints[g]!.at)
  for (const young of modulus)
    assert(young > 0 && young < Number.POSITIVE_INFINITY, 'the wall has a stiffness everywhere')
  // Asked for thousands of times in a campaign: the four points of an element are summed before the band is touched.
  for (let e = 0; e < elements; e++) {
    const first = (e - 1) * each
    const from = Math.max(0, -first)
    const [e0, e1] = [stiff * modulus[4 * e]!, stiff * modulus[4 * e + 1]!]
    const [e2, e3] = [stiff * modulus[4 * e + 2]!, stiff * modulus[4 * e + 3]!]
    const [f0, f1, f2, f3] = [forceAt(e, 0), forceAt(e, 1), forceAt(e, 2), forceAt(e, 3)]
    for (let i = from; i < width; i++) {
      const row = (first + i) * width + width - 1 - i
      const packedRow = (i * (i + 1)) / 2
      for (let j = from; j <= i; j++) {
        const t = packedRow + j
        const stiffness = e0 * k0[t]! + e1 * k1[t]! + e2 * k2[t]! + e3 * k3[t]!
        band[row + j]! += stiffness + f0 * q0[t]! + f1 * q1[t]! + f2 * q2[t]! + f3 * q3[t]!
      }
    }
  }
  return band
}

function multiply(band: Float64Array, x: Float64Array, size: number, width: number): Float64Array {
  const y = new Float64Array(size)
  for (let i = 0; i < size; i++)
    for (let j = Math.max(0, i - width + 1); j <= i; j++) {
      const value = band[i * width + j - i + width - 1]!
      y[i]! += value * x[j]!
      if (i !== j) y[j]! += value * x[i]!
    }
  return y
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!
  return sum
}
