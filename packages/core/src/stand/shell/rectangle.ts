import type { Metres } from '../../quantity/index.js'

/**
 * A flat shell element standing upright: a rectangle of eight nodes, membrane + Mindlin plate + drilling, two by two
 * Gauss points. Local axes: x along the plan, y up, n = x × y. Unknowns of a node: u, v, w, θx, θy, θn.
 * Nodes: corners 0 (−,−) 1 (+,−) 2 (+,+) 3 (−,+), middles 4 (0,−) 5 (+,0) 6 (0,+) 7 (−,0).
 */
export interface Rectangle {
  readonly width: Metres
  readonly height: Metres
  readonly thickness: Metres
  readonly poisson: number
}

export const NODES = 8
export const UNKNOWNS = 6
export const SIZE = NODES * UNKNOWNS

/** Place of a Gauss point, its share of the area, and shape functions with their slopes in x and y. */
export interface ShellPoint {
  /** Share of the element's height. */
  readonly up: number
  readonly area: number
  readonly value: Float64Array
  readonly alongX: Float64Array
  readonly alongY: Float64Array
}

const GAUSS = 1 / Math.sqrt(3)
/** Where the nodes are. */
export const CORNERS = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
  [0, -1],
  [1, 0],
  [0, 1],
  [-1, 0],
] as const

/** Lower two points first. */
export function shellPoints(element: Rectangle): readonly ShellPoint[] {
  const area = (element.width * element.height) / 4
  return [
    [-GAUSS, -GAUSS],
    [GAUSS, -GAUSS],
    [-GAUSS, GAUSS],
    [GAUSS, GAUSS],
  ].map(([x, y]) => shellPoint(element, x!, y!, area))
}

function shellPoint({ width, height }: Rectangle, x: number, y: number, area: number): ShellPoint {
  const { value, inX, inY } = serendipity(x, y)
  return {
    up: (y + 1) / 2,
    area,
    value,
    alongX: inX.map(slope => (slope * 2) / width),
    alongY: inY.map(slope => (slope * 2) / height),
  }
}

/** Shape functions at a place of the element, −1 to 1 along and up, and their slopes there. */
export function serendipity(x: number, y: number) {
  const value = new Float64Array(NODES)
  const inX = new Float64Array(NODES)
  const inY = new Float64Array(NODES)
  CORNERS.forEach(([a, b], i) => {
    if (i < 4) {
      value[i] = ((1 + a * x) * (1 + b * y) * (a * x + b * y - 1)) / 4
      inX[i] = (a * (1 + b * y) * (2 * a * x + b * y)) / 4
      inY[i] = (b * (1 + a * x) * (2 * b * y + a * x)) / 4
    } else if (a === 0) {
      value[i] = ((1 - x * x) * (1 + b * y)) / 2
      inX[i] = -x * (1 + b * y)
      inY[i] = (b * (1 - x * x)) / 2
    } else {
      value[i] = ((1 - y * y) * (1 + a * x)) / 2
      inX[i] = (a * (1 - y * y)) / 2
      inY[i] = -y * (1 + a * x)
    }
  })
  return { value, inX, inY }
}

/** Ties the drilling rotation to the membrane's own; the answer hardly feels it between 0.01 and 1. */
const DRILLING = 0.1
const SHEAR_CORRECTION = 5 / 6

/** Stiffness of one Gauss point for E = 1 in local axes, SIZE × SIZE. */
export function pointStiffness(element: Rectangle, point: ShellPoint): Float64Array {
  const { thickness: h, poisson } = element
  const plane = 1 / (1 - poisson ** 2)
  const shear = 1 / (2 * (1 + poisson))
  const matrix = new Float64Array(SIZE * SIZE)
  const add = (amount: number, a: StrainRow, b: StrainRow) => outer(matrix, amount * point.area, a, b)
  const rows = strainRows(point)
  const plate = (amount: number, [x, y, xy]: readonly StrainRow[]) => {
    add(amount * plane, x!, x!)
    add(amount * plane, y!, y!)
    add(amount * plane * poisson, x!, y!)
    add(amount * plane * poisson, y!, x!)
    add(amount * shear, xy!, xy!)
  }
  plate(h, rows.membrane)
  plate(h ** 3 / 12, rows.bending)
  for (const row of rows.shear) add(SHEAR_CORRECTION * shear * h, row, row)
  return matrix
}

/**
 * The drilling tie of the lower (0) or upper (1) half for E = 1, at three by three points: four of them leave patterns
 * of drilling rotation that nothing resists. The middle row counts half to each.
 */
export function drillingStiffness(element: Rectangle, half: 0 | 1): Float64Array {
  const matrix = new Float64Array(SIZE * SIZE)
  const amount = (DRILLING * element.thickness) / (2 * (1 + element.poisson))
  for (const [x, weightX] of THREE)
    for (const [y, weightY] of THREE) {
      const share = y === 0 ? 0.5 : y > 0 === (half === 1) ? 1 : 0
      if (share === 0) continue
      const area = (share * weightX * weightY * element.width * element.height) / 4
      const drilling = drillingRow(shellPoint(element, x, y, area))
      outer(matrix, amount * area, drilling, drilling)
    }
  return matrix
}

const THREE = [
  [-Math.sqrt(0.6), 5 / 9],
  [0, 8 / 9],
  [Math.sqrt(0.6), 5 / 9],
] as const

/** Factors of the unknowns that a strain depends on; all others are nought. */
interface StrainRow {
  readonly at: Int32Array
  readonly factors: Float64Array
}

/** Each term: an unknown of the nodes, its factor, and the shape function or slope it comes with. */
type StrainTerm = readonly [unknown: number, factor: number, shape: Float64Array]

function strainRow(...terms: readonly StrainTerm[]): StrainRow {
  const [at, factors] = [new Int32Array(NODES * terms.length), new Float64Array(NODES * terms.length)]
  terms.forEach(([unknown, factor, shape], t) => {
    for (let i = 0; i < NODES; i++) {
      at[t * NODES + i] = i * UNKNOWNS + unknown
      factors[t * NODES + i] = factor * shape[i]!
    }
  })
  return { at, factors }
}

/** Rows that turn the unknowns into εx, εy, γxy; κx, κy, κxy; γxn, γyn. */
const strainRows = ({ value, alongX, alongY }: ShellPoint) => ({
  membrane: [strainRow([0, 1, alongX]), strainRow([1, 1, alongY]), strainRow([0, 1, alongY], [1, 1, alongX])],
  bending: [
    strainRow([4, 1, alongX]),
    strainRow([3, -1, alongY]),
    strainRow([4, 1, alongY], [3, -1, alongX]),
  ],
  shear: [strainRow([2, 1, alongX], [4, 1, value]), strainRow([2, 1, alongY], [3, -1, value])],
})

/** The idle drilling against the turning of the membrane. */
const drillingRow = ({ value, alongX, alongY }: ShellPoint): StrainRow =>
  strainRow([5, 1, value], [1, -0.5, alongX], [0, 0.5, alongY])

/** Membrane forces per unit E from local displacements: [Nx, Ny, Nxy]. */
export function membraneForces(
  { thickness, poisson }: Rectangle,
  { alongX, alongY }: ShellPoint,
  local: Float64Array,
): readonly [number, number, number] {
  let [x, y, xy] = [0, 0, 0]
  for (let n = 0; n < NODES; n++) {
    const [u, v] = [local[n * UNKNOWNS]!, local[n * UNKNOWNS + 1]!]
    x += alongX[n]! * u
    y += alongY[n]! * v
    xy += alongY[n]! * u + alongX[n]! * v
  }
  const plane = thickness / (1 - poisson ** 2)
  return [plane * (x + poisson * y), plane * (y + poisson * x), (thickness * xy) / (2 * (1 + poisson))]
}

/** −∫ N : (∇f)(∇f)ᵀ over the shape functions: the same for every displacement; positive under compression. */
export function addGeometric(
  matrix: Float64Array,
  offset: number,
  point: ShellPoint,
  [nx, ny, nxy]: readonly [number, number, number],
): void {
  for (let i = 0; i < NODES; i++)
    for (let j = 0; j < NODES; j++) {
      const [xi, yi, xj, yj] = [point.alongX[i]!, point.alongY[i]!, point.alongX[j]!, point.alongY[j]!]
      matrix[offset + i * NODES + j]! -=
        point.area * (nx * xi * xj + ny * yi * yj + nxy * (xi * yj + yi * xj))
    }
}

function outer(matrix: Float64Array, amount: number, a: StrainRow, b: StrainRow): void {
  for (let i = 0; i < a.at.length; i++) {
    const [left, row] = [amount * a.factors[i]!, a.at[i]! * SIZE]
    for (let j = 0; j < b.at.length; j++) matrix[row + b.at[j]!]! += left * b.factors[j]!
  }
}
