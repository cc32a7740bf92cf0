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
  /** Hermite cubics of (W, dW/dξ) at both ends, their first and second derivatives in ξ. */
  readonly value: readonly number[]
  readonly first: readonly number[]
  readonly second: readonly number[]
}

/** Four points integrate every product of cubics exactly; the age profile inside an element sets the rest. */
export const gaussPoints: readonly GaussPoint[] = [
  [-0.8611363115940526, 0.34785484513745385],
  [-0.3399810435848563, 0.6521451548625461],
  [0.3399810435848563, 0.6521451548625461],
  [0.8611363115940526, 0.34785484513745385],
].map(([place, weight]) => hermiteAt((place! + 1) / 2, weight! / 2))

function hermiteAt(x: number, weight: number): GaussPoint {
  return {
    at: x,
    weight,
    value: [1 - 3 * x ** 2 + 2 * x ** 3, x - 2 * x ** 2 + x ** 3, 3 * x ** 2 - 2 * x ** 3, x ** 3 - x ** 2],
    first: [6 * x ** 2 - 6 * x, 1 - 4 * x + 3 * x ** 2, 6 * x - 6 * x ** 2, 3 * x ** 2 - 2 * x],
    second: [12 * x - 6, 6 * x - 4, 6 - 12 * x, 6 * x - 2],
  }
}

/** Energy of one Gauss point for E = 1: a symmetric matrix over the unknowns of both ends. */
export function stiffnessAtPoint(point: GaussPoint, span: Metres, law: StripLaw, each: number): Float64Array {
  const rows = fieldRows(point, span, each)
  const { poisson, shape, own, composite, shearUp, shearAlong } = law
  const matrix = new Float64Array(4 * each * each)
  const add = (amount: number, a: Float64Array, b: Float64Array) =>
    addProduct(matrix, amount * point.weight * span, a, b)
  addPlate(add, own, poisson, shape, {
    bend: rows.bend,
    slope: rows.slope,
    value: rows.value,
    twist: rows.twist,
  })
  if (composite > 0) {
    addPlate(add, composite, poisson, shape, {
      bend: rows.compositeBend,
      slope: rows.compositeSlope,
      value: rows.compositeValue,
      twist: rows.compositeTwist,
    })
    add(shearUp, rows.angleUp, rows.angleUp)
    if (each === 4) add(shearAlong * shape.slope, rows.angleAlong, rows.angleAlong)
  }
  return matrix
}

/** Work of a unit membrane force at one Gauss point: W′². */
export function slopeSquaredAtPoint(point: GaussPoint, span: Metres, each: number): Float64Array {
  const { slope } = fieldRows(point, span, each)
  const matrix = new Float64Array(4 * each * each)
  addProduct(matrix, point.weight * span, slope, slope)
  return matrix
}

interface PlateRows {
  readonly bend: Float64Array
  readonly slope: Float64Array
  readonly value: Float64Array
  /** Twice the twist: φ + ψ′. */
  readonly twist: Float64Array
}

/** D·[ X″² + a₂X² − 2νa₀XX″ + ½(1 − ν)a₁(φ + ψ′)² ]; with φ = X′, ψ = X this is the plate of the literature. */
function addPlate(
  add: (amount: number, a: Float64Array, b: Float64Array) => void,
  amount: number,
  poisson: number,
  shape: StripShape,
  rows: PlateRows,
): void {
  add(amount, rows.bend, rows.bend)
  if (shape.bend > 0) add(amount * shape.bend, rows.value, rows.value)
  if (shape.cross > 0) {
    add(-amount * poisson * shape.cross, rows.value, rows.bend)
    add(-amount * poisson * shape.cross, rows.bend, rows.value)
  }
  if (shape.slope > 0) add((amount * shape.slope * (1 - poisson)) / 2, rows.twist, rows.twist)
}

function fieldRows(point: GaussPoint, span: Metres, each: number) {
  const hermite = (values: readonly number[], scale: number) => spread(values, scale, each)
  const [value, slope, bend] = [
    hermite(point.value, 1),
    hermite(point.first, 1 / span),
    hermite(point.second, 1 / span ** 2),
  ]
  const linear = (unknown: number, near: number, far: number) => {
    const row = new Float64Array(2 * each)
    if (unknown < each) {
      row[unknown] = near
      row[each + unknown] = far
    }
    return row
  }
  const angleUp = linear(2, 1 - point.at, point.at)
  const angleAlong = linear(3, 1 - point.at, point.at)
  const angleUpSlope = linear(2, -1 / span, 1 / span)
  const angleAlongSlope = linear(3, -1 / span, 1 / span)
  const compositeSlope = minus(slope, angleUp)
  return {
    value,
    slope,
    bend,
    twist: slope.map(v => 2 * v),
    angleUp,
    angleAlong,
    compositeBend: minus(bend, angleUpSlope),
    compositeSlope,
    compositeValue: minus(value, angleAlong),
    compositeTwist: minus(compositeSlope, minus(angleAlongSlope, slope)),
  }
}

const minus = (a: Float64Array, b: Float64Array) => a.map((v, i) => v - b[i]!)

function spread(values: readonly number[], scale: number, each: number): Float64Array {
  const row = new Float64Array(2 * each)
  row[0] = values[0]! * scale
  row[1] = values[1]! * scale
  row[each] = values[2]! * scale
  row[each + 1] = values[3]! * scale
  return row
}

function addProduct(matrix: Float64Array, amount: number, a: Float64Array, b: Float64Array): void {
  const size = a.length
  for (let i = 0; i < size; i++) {
    const left = amount * a[i]!
    if (left !== 0) for (let j = 0; j < size; j++) matrix[i * size + j]! += left * b[j]!
  }
}
