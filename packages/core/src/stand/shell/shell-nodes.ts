import { type PlanMesh, thicknessIn } from './plan-mesh.js'
import { UNKNOWNS } from './rectangle.js'

/** Where the unknowns of every node are: a block for each position of the plan, and one for the middle of each edge. */
export interface ShellNodes {
  /** `firstOf[block][level]`: half rows for positions, rows for middles; −1 on the clamped foot and where no bead is. */
  readonly firstOf: readonly Int32Array[]
  readonly sizes: readonly number[]
  /** Nodes that begin over nothing and are borne. */
  readonly borne: readonly Borne[]
}

interface Borne {
  readonly block: number
  readonly first: number
  readonly unknowns: readonly number[]
}

/** A lintel or a box bears the weight of what begins on it and keeps it from rolling; it moves sideways with the wall. */
const BORNE = [2, 3, 4, 5]
const ALL = [0, 1, 2, 3, 4, 5]

/**
 * Nodes of a plan whose beads come and go from row to row. A bead that begins over nothing bears on a lintel or a box; a
 * tie hangs from its wythes. What then touches nothing that stands on the foot is held where it begins.
 */
export function shellNodes(mesh: PlanMesh, rows: number): ShellNodes {
  const corners = mesh.positions.length
  const used = [
    ...mesh.positions.map(() => new Uint8Array(2 * rows + 1)),
    ...mesh.edges.map(() => new Uint8Array(rows + 1)),
  ]
  eachElement(mesh, rows, (nodes, row) => {
    for (const [block, level] of nodes) used[block]![level] = row + 1
  })
  let count = 0
  const names = used.map(levels => Int32Array.from(levels, present => (present > 0 ? count++ : -1)))
  const firstOf = used.map(levels => {
    let next = 0
    return Int32Array.from(levels, (present, level) => (level > 0 && present > 0 ? UNKNOWNS * next++ : -1))
  })
  const sizes = firstOf.map(levels => UNKNOWNS * levels.filter(first => first >= 0).length)
  const standing = standingNodes(mesh, rows, names, count)
  const borne: Borne[] = []
  const known = new Set<number>()
  eachElement(mesh, rows, (nodes, row, e) => {
    const edge = mesh.edges[e]!
    if (row === 0 || thicknessIn(edge, row - 1) > 0) return
    for (const [block, level] of nodes.slice(0, 3)) {
      const name = names[block]![level]!
      const alone = !standing[name]
      const below = block < corners && hasBeadBelow(mesh, block, row)
      if (below || known.has(name) || (edge.hangs && !alone)) continue
      known.add(name)
      borne.push({ block, first: firstOf[block]![level]!, unknowns: alone ? ALL : BORNE })
    }
  })
  return { firstOf, sizes, borne }
}

const hasBeadBelow = ({ edges }: PlanMesh, position: number, row: number): boolean =>
  edges.some(edge => (edge.from === position || edge.to === position) && thicknessIn(edge, row - 1) > 0)

/** Calls back with the nodes of every element as block and level, the three at its foot first. */
function eachElement(
  { positions, edges }: PlanMesh,
  rows: number,
  call: (nodes: readonly (readonly [block: number, level: number])[], row: number, edge: number) => void,
): void {
  edges.forEach((edge, e) => {
    const [{ from, to }, middle] = [edge, positions.length + e]
    for (let row = 0; row < rows; row++) {
      if (!(thicknessIn(edge, row) > 0)) continue
      const [foot, half, top] = [2 * row, 2 * row + 1, 2 * row + 2]
      call(
        [
          [from, foot],
          [to, foot],
          [middle, row],
          [from, half],
          [to, half],
          [from, top],
          [to, top],
          [middle, row + 1],
        ],
        row,
        e,
      )
    }
  })
}

/** By the name of a node: whether elements lead from it down to the foot. */
function standingNodes(
  mesh: PlanMesh,
  rows: number,
  names: readonly Int32Array[],
  count: number,
): Uint8Array {
  const parent = Int32Array.from({ length: count + 1 }, (_, i) => i)
  const foot = count
  const root = (node: number): number => {
    let at = node
    while (parent[at] !== at) {
      parent[at] = parent[parent[at]!]!
      at = parent[at]!
    }
    return at
  }
  eachElement(mesh, rows, (nodes, row) => {
    const own = nodes.map(([block, level]) => names[block]![level]!)
    for (const node of own) parent[root(node)] = root(own[0]!)
    if (row === 0) parent[root(own[0]!)] = root(foot)
  })
  return Uint8Array.from({ length: count }, (_, node) => (root(node) === root(foot) ? 1 : 0))
}
