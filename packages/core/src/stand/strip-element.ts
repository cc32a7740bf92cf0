import type { Metres } from '../quantity/index.js'

/** Integrals of the shape f(y) along the wall, over ∫f² = 1: a₁ = ∫f′², a₂ = ∫f″², a₀ = −∫f·f″. */
export interface StripShape {
  readonly slope: number
  readonly bend: number
  readonly cross: number
}

/** No support sideways: the wall leans as a whole. */
export const freeShape: StripShape = { slope: 0, bend: 0, cross: 0 }

/** Simply supported at both ends of a length b: f = sin(πy/b). */
export function simplySupportedShape(length: Metres): StripShape {
  const slope = (Math.PI / length) ** 2
  return { slope, bend: slope ** 2, cross: slope }
}

/** Clamped at both ends: f = 1 − cos(2πy/b), one term, an upper bound (4.5 % high on a narrow plate). */
export function clampedShape(length: Metres): StripShape {
  const wave = (2 * Math.PI) / length
  return { slope: wave ** 2 / 3, bend: wave ** 4 / 3, cross: wave ** 2 / 3 }
}

/**
 * Simply supported at one end, free at the other: the wall twists, f = y/b, a₁ = 3/b². That shape is stiffer than the
 * wall, which leans most at its free end; two thirds of a₁ keep the strip under whole-section shells.
 */
export const oneEndShape = (length: Metres): StripShape => ({ slope: 2 / length ** 2, bend: 0, cross: 0 })

/** Stiffnesses as multiples of Young's modulus, per metre of wall. */
export interface StripLaw {
  readonly poisson: number
  readonly shape: StripShape
  /** Σ h³/(12(1 − ν²)) of the wythes by themselves [m³]. */
  readonly own: number
  /** Of the wythes acting together, about the middle of the wall [m³]; 0: one leaf. */
  readonly composite: number
  /** Of the web against shear up the wall and along the wall [m]; read only when `composite` > 0. */
  readonly shearUp: number
  readonly shearAlong: number
}

interface GaussPoint {
  readonly at: number
  readonly weight: number
}

/** Four points integrate every product of cubics exactly; the age profile inside an element sets the rest. */
export const gaussPoints: readonly GaussPoint[] = [
  [-0.8611363115940526, 0.34785484513745385],
  [-0.3399810435848563, 0.6521451548625461],
  [0.3399810435848563, 0.6521451548625461],
  [0.8611363115940526, 0.34785484513745385],
].map(([place, weight]) => ({ at: (place! + 1) / 2, weight: weight! / 2 }))

/**
 * Unknowns of one end of an element, lengths in element spans so that every term scales with a power of the span:
 * W, dW/dξ, span·(shear angle up), (shear angle along)·span⁰.
 */
const EACH = 4
const SIZE = 2 * EACH

/** Products of fields at one Gauss point over a unit span, SIZE × SIZE, and the power of the span each comes with. */
type Term =
  | 'bend'
  | 'value'
  | 'cross'
  | 'twist'
  | 'compositeBend'
  | 'compositeValue'
  | 'compositeCross'
  | 'compositeTwist'
  | 'angleUp'
  | 'angleAlong'

const terms: readonly Readonly<Record<Term | 'slope', Float64Array>>[] = gaussPoints.map(termsAt)

function termsAt({ at: x, weight }: GaussPoint): Readonly<Record<Term | 'slope', Float64Array>> {
  const value = row(
    [1 - 3 * x ** 2 + 2 * x ** 3, x - 2 * x ** 2 + x ** 3],
    [3 * x ** 2 - 2 * x ** 3, x ** 3 - x ** 2],
  )
  const slope = row([6 * x ** 2 - 6 * x, 1 - 4 * x + 3 * x ** 2], [6 * x - 6 * x ** 2, 3 * x ** 2 - 2 * x])
  const bend = row([12 * x - 6, 6 * x - 4], [6 - 12 * x, 6 * x - 2])
  const angleUp = row([0, 0, 1 - x], [0, 0, x])
  const angleAlong = row([0, 0, 0, 1 - x], [0, 0, 0, x])
  // φ = W′ − γ, ψ = W − θ; twice the twist is φ + ψ′
  const compositeBend = minus(bend, row([0, 0, -1], [0, 0, 1]))
  const compositeSlope = minus(slope, angleUp)
  const compositeValue = minus(value, angleAlong)
  const compositeTwist = minus(compositeSlope, minus(row([0, 0, 0, -1], [0, 0, 0, 1]), slope))
  const twist = slope.map(entry => 2 * entry)
  const product = (a: Float64Array, b: Float64Array) => symmetricProduct(a, b, weight)
  return {
    slope: product(slope, slope),
    bend: product(bend, bend),
    value: product(value, value),
    cross: product(value, bend),
    twist: product(twist, twist),
    compositeBend: product(compositeBend, compositeBend),
    compositeValue: product(compositeValue, compositeValue),
    compositeCross: product(compositeValue, compositeBend),
    compositeTwist: product(compositeTwist, compositeTwist),
    angleUp: product(angleUp, angleUp),
    angleAlong: product(angleAlong, angleAlong),
  }
}

/**
 * Energy of one Gauss point for E = 1: a symmetric matrix over the first `each` unknowns of both ends.
 *
 *   D·[ X″² + a₂X² − 2νa₀XX″ + ½(1 − ν)a₁(φ + ψ′)² ];  with φ = X′, ψ = X the plate of the literature
 */
export function stiffnessAtPoint(point: number, span: Metres, law: StripLaw, each: number): Float64Array {
  const { poisson, shape, own, composite, shearUp, shearAlong } = law
  const plate = (amount: number, prefix: 'own' | 'composite'): readonly (readonly [Term, number])[] => [
    [prefix === 'own' ? 'bend' : 'compositeBend', amount / span ** 3],
    [prefix === 'own' ? 'value' : 'compositeValue', amount * shape.bend * span],
    [prefix === 'own' ? 'cross' : 'compositeCross', (-2 * amount * poisson * shape.cross) / span],
    [prefix === 'own' ? 'twist' : 'compositeTwist', (amount * shape.slope * (1 - poisson)) / 2 / span],
  ]
  const matrix = new Float64Array(4 * each * each)
  for (const [term, amount] of plate(own, 'own')) addTerm(matrix, terms[point]![term], amount, each)
  if (composite === 0) return matrix
  for (const [term, amount] of plate(composite, 'composite'))
    addTerm(matrix, terms[point]![term], amount, each)
  addTerm(matrix, terms[point]!.angleUp, shearUp / span, each)
  addTerm(matrix, terms[point]!.angleAlong, shearAlong * shape.slope * span, each)
  return matrix
}

/** Work of a unit membrane force at one Gauss point: W′². */
export function slopeSquaredAtPoint(point: number, span: Metres, each: number): Float64Array {
  const matrix = new Float64Array(4 * each * each)
  addTerm(matrix, terms[point]!.slope, 1 / span, each)
  return matrix
}

function addTerm(matrix: Float64Array, term: Float64Array, amount: number, each: number): void {
  if (amount === 0) return
  const size = 2 * each
  for (let i = 0; i < size; i++) {
    const from = (i < each ? i : i - each + EACH) * SIZE
    for (let j = 0; j < each; j++) {
      matrix[i * size + j]! += amount * term[from + j]!
      matrix[i * size + each + j]! += amount * term[from + EACH + j]!
    }
  }
}

function row(near: readonly number[], far: readonly number[]): Float64Array {
  const out = new Float64Array(SIZE)
  out.set(near)
  out.set(far, EACH)
  return out
}

function minus(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, i) => value - b[i]!)
}

function symmetricProduct(a: Float64Array, b: Float64Array, weight: number): Float64Array {
  const out = new Float64Array(SIZE * SIZE)
  for (let i = 0; i < SIZE; i++)
    for (let j = 0; j < SIZE; j++) out[i * SIZE + j] = (weight * (a[i]! * b[j]! + b[i]! * a[j]!)) / 2
  return out
}
