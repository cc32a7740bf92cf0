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

/** The lower triangle of a term over the first `each` unknowns of both ends, row after row. */
function packed(term: Float64Array, each: number): Float64Array {
  const place = (i: number) => (i < each ? i : i - each + EACH)
  const out: number[] = []
  for (let i = 0; i < 2 * each; i++) for (let j = 0; j <= i; j++) out.push(term[place(i) * SIZE + place(j)]!)
  return Float64Array.from(out)
}

/** The terms as strips ask for them, by unknowns of a node: a campaign asks for thousands. */
const packedTerms = [2, 3, 4].map(each =>
  terms.map(
    point =>
      Object.fromEntries(
        Object.entries(point).map(([term, matrix]) => [term, packed(matrix, each)]),
      ) as (typeof terms)[number],
  ),
)

/**
 * Energy at each Gauss point for E = 1: symmetric matrices over the unknowns of both ends, as packed lower triangles.
 *
 *   D·[ X″² + a₂X² − 2νa₀XX″ + ½(1 − ν)a₁(φ + ψ′)² ];  with φ = X′, ψ = X the plate of the literature
 */
export function stiffnessAtPoints(span: Metres, law: StripLaw, each: 2 | 3 | 4): readonly Float64Array[] {
  const amounts = termAmounts(span, law).filter(([, amount]) => amount !== 0)
  return packedTerms[each - 2]!.map(point => {
    const sum = new Float64Array(each * (2 * each + 1))
    for (const [name, amount] of amounts) {
      const term = point[name]
      for (let t = 0; t < sum.length; t++) sum[t]! += amount * term[t]!
    }
    return sum
  })
}

function termAmounts(span: Metres, law: StripLaw): readonly (readonly [Term, number])[] {
  const { poisson, shape, own, composite, shearUp, shearAlong } = law
  const [bend, value] = [1 / span ** 3, shape.bend * span]
  const [cross, twist] = [(-2 * poisson * shape.cross) / span, (shape.slope * (1 - poisson)) / 2 / span]
  const leaf = [
    ['bend', own * bend],
    ['value', own * value],
    ['cross', own * cross],
    ['twist', own * twist],
  ] as const
  if (composite === 0) return leaf
  return [
    ...leaf,
    ['compositeBend', composite * bend],
    ['compositeValue', composite * value],
    ['compositeCross', composite * cross],
    ['compositeTwist', composite * twist],
    ['angleUp', shearUp / span],
    ['angleAlong', shearAlong * shape.slope * span],
  ]
}

/** Work of a unit membrane force at each Gauss point over a unit span: W′², packed alike. */
export const slopeSquaredAtPoints = (each: 2 | 3 | 4): readonly Float64Array[] =>
  packedTerms[each - 2]!.map(point => point.slope)

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
