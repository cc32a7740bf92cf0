import type { Metres, Pascals } from '../../quantity/index.js'
import { assert } from '../../result/index.js'
import { edgeLength, type PlanMesh, thicknessIn } from './plan-mesh.js'
import {
  drillingStiffness,
  pointStiffness,
  type Rectangle,
  type ShellPoint,
  shellPoints,
  UNKNOWNS,
} from './rectangle.js'
import { type ShellNodes, shellNodes } from './shell-nodes.js'

/** Unknowns of a node in the building frame, in this order. */
export type Unknown = 0 | 1 | 2 | 3 | 4 | 5

/** A section's walls as flat shells on a clamping foot. */
export interface Shell {
  readonly mesh: PlanMesh
  readonly height: Metres
  /** Elements over the height. */
  readonly rows: number
  /** Heights between which the rows lie, foot and top with them; none: rows of one height. */
  readonly levels?: readonly Metres[]
  /** Young's modulus at a height over the foot. */
  readonly modulusAt: (height: Metres) => Pascals
  readonly poisson: number
  readonly density: number
  readonly gravity: number
  /** Positions held over their whole height: ux 0, uy 1, uz 2, and the rotations about x 3, y 4, z 5. */
  readonly held?: readonly { readonly position: number; readonly unknowns: readonly Unknown[] }[]
}

/** One element in its own axes, with its stiffness per unit E below and above its middle. */
export interface ShellElement {
  readonly rectangle: Rectangle
  readonly points: readonly ShellPoint[]
  readonly low: Float64Array
  readonly high: Float64Array
}

/** An edge of the plan, an element in every row that has a bead there. */
export interface ShellEdge {
  readonly elements: readonly (ShellElement | undefined)[]
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
  readonly nodes: ShellNodes
  /** First unknown of every block in one long vector, and its length at the end. */
  readonly offsets: Int32Array
  readonly fixed: Uint8Array
}

export function shellSystem(shell: Shell): ShellSystem {
  const { mesh, rows } = shell
  assert(rows >= 1 && shell.height > 0 && mesh.edges.length > 0, 'a shell has elements')
  const nodes = shellNodes(mesh, rows)
  const offsets = new Int32Array(nodes.sizes.length + 1)
  nodes.sizes.forEach((size, i) => {
    offsets[i + 1] = offsets[i]! + size
  })
  return { shell, edges: shellEdges(shell), nodes, offsets, fixed: fixedUnknowns(shell, nodes, offsets) }
}

function fixedUnknowns({ held = [] }: Shell, nodes: ShellNodes, offsets: Int32Array): Uint8Array {
  const fixed = new Uint8Array(offsets[offsets.length - 1]!)
  for (const { position, unknowns } of held)
    for (let first = 0; first < nodes.sizes[position]!; first += UNKNOWNS)
      for (const unknown of unknowns) fixed[offsets[position]! + first + unknown] = 1
  for (const { block, first, unknowns } of nodes.borne)
    for (const unknown of unknowns) fixed[offsets[block]! + first + unknown] = 1
  return fixed
}

/** Foot and top of every row, one after the other. */
export const levelsOf = ({ height, rows, levels }: Shell): readonly Metres[] =>
  levels ?? Array.from({ length: rows + 1 }, (_, row) => (height * row) / rows)

function shellEdges(shell: Shell): readonly ShellEdge[] {
  const { mesh, rows, poisson } = shell
  const levels = levelsOf(shell)
  const known = new Map<string, ShellElement>()
  const element = (width: Metres, height: Metres, thickness: Metres): ShellElement => {
    const key = `${width.toFixed(9)}/${height.toFixed(9)}/${thickness}`
    const parts = known.get(key) ?? elementParts({ width, height, thickness, poisson })
    known.set(key, parts)
    return parts
  }
  return mesh.edges.map((edge, e) => {
    const width = edgeLength(mesh, edge)
    assert(width > 0, 'an edge has a length')
    const [a, b] = [mesh.positions[edge.from]!, mesh.positions[edge.to]!]
    return {
      elements: Array.from({ length: rows }, (_, row) => {
        const thickness = thicknessIn(edge, row)
        return thickness > 0 ? element(width, levels[row + 1]! - levels[row]!, thickness) : undefined
      }),
      cosine: (b[0] - a[0]) / width,
      sine: (b[1] - a[1]) / width,
      from: edge.from,
      to: edge.to,
      middle: mesh.positions.length + e,
    }
  })
}

function elementParts(rectangle: Rectangle): ShellElement {
  const points = shellPoints(rectangle)
  const at = points.map(point => pointStiffness(rectangle, point))
  const half = (side: 0 | 1): Float64Array => {
    const tie = drillingStiffness(rectangle, side)
    return tie.map((value, i) => value + at[2 * side]![i]! + at[2 * side + 1]![i]!)
  }
  return { rectangle, points, low: half(0), high: half(1) }
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

/** Block and first unknown inside it of each node of an element in a row; −1 on the clamped foot. */
export function nodesOf(
  { firstOf }: Pick<ShellNodes, 'firstOf'>,
  edge: Pick<ShellEdge, 'from' | 'to' | 'middle'>,
  row: number,
  blocks: Int32Array,
  firsts: Int32Array,
): void {
  const set = (node: number, block: number, level: number) => {
    const first = firstOf[block]![level]!
    blocks[node] = first < 0 ? -1 : block
    firsts[node] = first
  }
  const base = 2 * row
  set(0, edge.from, base)
  set(1, edge.to, base)
  set(2, edge.to, base + 2)
  set(3, edge.from, base + 2)
  set(4, edge.middle, row)
  set(5, edge.to, base + 1)
  set(6, edge.middle, row + 1)
  set(7, edge.from, base + 1)
}

/** Moduli at the lower and upper Gauss points of a row. */
export function rowModuli(shell: Shell, row: number): readonly [Pascals, Pascals] {
  const [foot, top] = levelsOf(shell).slice(row, row + 2)
  const at = (share: number) => shell.modulusAt(foot! + (top! - foot!) * share)
  return [at((1 - 1 / Math.sqrt(3)) / 2), at((1 + 1 / Math.sqrt(3)) / 2)]
}
