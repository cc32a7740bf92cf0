import type { Metres, Pascals } from '../../quantity/index.js'
import { assert } from '../../result/index.js'
import { type BlockMatrix, blockMatrix } from './block-cholesky.js'
import { edgeLength, type PlanMesh } from './plan-mesh.js'
import {
  drillingStiffness,
  NODES,
  pointStiffness,
  type Rectangle,
  type ShellPoint,
  SIZE,
  shellPoints,
  UNKNOWNS,
} from './rectangle.js'

/** Unknowns of a node in the building frame, in this order. */
export type Unknown = 0 | 1 | 2 | 3 | 4 | 5

/** A section's walls as flat shells on a clamping foot. */
export interface Shell {
  readonly mesh: PlanMesh
  readonly height: Metres
  /** Elements over the height. */
  readonly rows: number
  /** Young's modulus at a height over the foot. */
  readonly modulusAt: (height: Metres) => Pascals
  readonly poisson: number
  readonly density: number
  readonly gravity: number
  /** Positions held over their whole height: ux 0, uy 1, uz 2, and the rotations about x 3, y 4, z 5. */
  readonly held?: readonly { readonly position: number; readonly unknowns: readonly Unknown[] }[]
}

/** One element: an edge of the plan between two rows, with its stiffness per unit E below and above its middle. */
export interface ShellEdge {
  readonly rectangle: Rectangle
  readonly points: readonly ShellPoint[]
  readonly low: Float64Array
  readonly high: Float64Array
  readonly cosine: number
  readonly sine: number
  /** Blocks of its nodes: from, to, and the middle. */
  readonly from: number
  readonly to: number
  readonly middle: number
}

export interface ShellSystem {
  readonly shell: Shell
  readonly edges: readonly ShellEdge[]
  readonly stiffness: BlockMatrix
  /** First unknown of every block in one long vector, and its length at the end. */
  readonly offsets: Int32Array
  readonly fixed: Uint8Array
}

export function shellSystem(shell: Shell): ShellSystem {
  const { mesh, rows } = shell
  assert(rows >= 1 && shell.height > 0 && mesh.edges.length > 0, 'a shell has elements')
  const corners = mesh.positions.length
  const sizes = [...mesh.positions.map(() => 2 * rows * UNKNOWNS), ...mesh.edges.map(() => rows * UNKNOWNS)]
  const links = mesh.edges.flatMap(({ from, to }, e): [number, number][] => [
    [from, to],
    [from, corners + e],
    [to, corners + e],
  ])
  const offsets = new Int32Array(sizes.length + 1)
  sizes.forEach((size, i) => {
    offsets[i + 1] = offsets[i]! + size
  })
  const system: ShellSystem = {
    shell,
    edges: shellEdges(shell),
    stiffness: blockMatrix(sizes, links),
    offsets,
    fixed: fixedUnknowns(shell, offsets),
  }
  assembleStiffness(system)
  return system
}

function fixedUnknowns({ held = [], rows }: Shell, offsets: Int32Array): Uint8Array {
  const fixed = new Uint8Array(offsets[offsets.length - 1]!)
  for (const { position, unknowns } of held)
    for (let node = 0; node < 2 * rows; node++)
      for (const unknown of unknowns) fixed[offsets[position]! + node * UNKNOWNS + unknown] = 1
  return fixed
}

function shellEdges({ mesh, height, rows, poisson }: Shell): readonly ShellEdge[] {
  const known = new Map<string, { points: readonly ShellPoint[]; low: Float64Array; high: Float64Array }>()
  return mesh.edges.map((edge, e) => {
    const width = edgeLength(mesh, edge)
    assert(width > 0, 'an edge has a length')
    const rectangle = { width, height: height / rows, thickness: edge.thickness, poisson }
    const key = `${width.toFixed(9)}/${edge.thickness}`
    const parts = known.get(key) ?? elementParts(rectangle)
    known.set(key, parts)
    const [a, b] = [mesh.positions[edge.from]!, mesh.positions[edge.to]!]
    const [cosine, sine] = [(b[0] - a[0]) / width, (b[1] - a[1]) / width]
    return {
      rectangle,
      points: parts.points,
      low: turned(parts.low, cosine, sine),
      high: turned(parts.high, cosine, sine),
      cosine,
      sine,
      from: edge.from,
      to: edge.to,
      middle: mesh.positions.length + e,
    }
  })
}

function elementParts(rectangle: Rectangle) {
  const points = shellPoints(rectangle)
  const at = points.map(point => pointStiffness(rectangle, point))
  const half = (side: 0 | 1): Float64Array => {
    const tie = drillingStiffness(rectangle, side)
    return tie.map((value, i) => value + at[2 * side]![i]! + at[2 * side + 1]![i]!)
  }
  return { points, low: half(0), high: half(1) }
}

/** Local axes (along, up, outward) in the building frame: rows of the turn applied to displacements and rotations. */
export const axesOf = (cosine: number, sine: number): readonly number[] => [
  cosine,
  sine,
  0,
  0,
  0,
  1,
  sine,
  -cosine,
  0,
]

/** Tᵀ·K·T, three unknowns at a time. */
function turned(local: Float64Array, cosine: number, sine: number): Float64Array {
  const axes = axesOf(cosine, sine)
  const [half, full] = [new Float64Array(SIZE * SIZE), new Float64Array(SIZE * SIZE)]
  for (let i = 0; i < SIZE; i++)
    for (let j = 0; j < SIZE; j++) {
      const base = j - (j % 3)
      let sum = 0
      for (let k = 0; k < 3; k++) sum += local[i * SIZE + base + k]! * axes[k * 3 + (j % 3)]!
      half[i * SIZE + j] = sum
    }
  for (let i = 0; i < SIZE; i++)
    for (let j = 0; j < SIZE; j++) {
      const base = i - (i % 3)
      let sum = 0
      for (let k = 0; k < 3; k++) sum += axes[k * 3 + (i % 3)]! * half[(base + k) * SIZE + j]!
      full[i * SIZE + j] = sum
    }
  return full
}

/** Block and first unknown inside it of each node of an element in a row; −1 on the clamped foot. */
export function nodesOf(edge: ShellEdge, row: number, blocks: Int32Array, firsts: Int32Array): void {
  const set = (node: number, block: number, level: number, step: number) => {
    blocks[node] = level === 0 ? -1 : block
    firsts[node] = (level / step - 1) * UNKNOWNS
  }
  const base = 2 * row
  set(0, edge.from, base, 1)
  set(1, edge.to, base, 1)
  set(2, edge.to, base + 2, 1)
  set(3, edge.from, base + 2, 1)
  set(4, edge.middle, base, 2)
  set(5, edge.to, base + 1, 1)
  set(6, edge.middle, base + 2, 2)
  set(7, edge.from, base + 1, 1)
}

/** Moduli at the lower and upper Gauss points of a row. */
export function rowModuli({ height, rows, modulusAt }: Shell, row: number): readonly [Pascals, Pascals] {
  const at = (share: number) => modulusAt((height * (row + share)) / rows)
  return [at((1 - 1 / Math.sqrt(3)) / 2), at((1 + 1 / Math.sqrt(3)) / 2)]
}

function assembleStiffness({ shell, edges, stiffness, offsets, fixed }: ShellSystem): void {
  const [blocks, firsts] = [new Int32Array(NODES), new Int32Array(NODES)]
  for (let row = 0; row < shell.rows; row++) {
    const [low, high] = rowModuli(shell, row)
    assert(low > 0 && high > 0 && Number.isFinite(low + high), 'the wall has a stiffness at every height')
    for (const edge of edges) {
      nodesOf(edge, row, blocks, firsts)
      for (let m = 0; m < NODES; m++)
        for (let n = 0; n < NODES; n++) {
          const [i, j] = [blocks[m]!, blocks[n]!]
          if (i < 0 || j < 0 || (i !== j && stiffness.place[i]! < stiffness.place[j]!)) continue
          const target = i === j ? stiffness.diagonal[i]! : stiffness.below[j]!.get(i)!
          addNodePair(
            target,
            stiffness.sizes[j]!,
            edge,
            low,
            high,
            m,
            n,
            firsts,
            offsets[i]!,
            offsets[j]!,
            fixed,
          )
        }
    }
  }
  holdFixed(stiffness, offsets, fixed)
}

function addNodePair(
  target: Float64Array,
  columns: number,
  edge: ShellEdge,
  low: number,
  high: number,
  m: number,
  n: number,
  firsts: Int32Array,
  rowOffset: number,
  columnOffset: number,
  fixed: Uint8Array,
): void {
  for (let a = 0; a < UNKNOWNS; a++) {
    const row = firsts[m]! + a
    if (fixed[rowOffset + row]) continue
    for (let b = 0; b < UNKNOWNS; b++) {
      const column = firsts[n]! + b
      if (fixed[columnOffset + column]) continue
      const at = (m * UNKNOWNS + a) * SIZE + n * UNKNOWNS + b
      target[row * columns + column]! += low * edge.low[at]! + high * edge.high[at]!
    }
  }
}

/** A held unknown keeps a one on its diagonal and nothing else: it stays zero. */
function holdFixed(stiffness: BlockMatrix, offsets: Int32Array, fixed: Uint8Array): void {
  stiffness.diagonal.forEach((block, i) => {
    const size = stiffness.sizes[i]!
    for (let a = 0; a < size; a++) if (fixed[offsets[i]! + a]) block[a * size + a] = 1
  })
}
