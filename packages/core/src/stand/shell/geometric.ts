import { bridges } from './plan-mesh.js'
import { addGeometric, membraneForces, NODES, SIZE, UNKNOWNS } from './rectangle.js'
import { axesOf, levelsOf, nodesOf, rowModuli, type ShellEdge, type ShellSystem } from './shell-model.js'

/** What the membrane forces of the self-weight do to every element: one 8 × 8 matrix that all displacements share. */
export interface Geometric {
  readonly rows: number
  /** The matrix of an edge in a row is at (edge·rows + row)·64, zero where it is not judged. */
  readonly matrices: Float64Array
  /** First unknown of its nodes at (edge·rows + row)·8; −1 on the foot and where no element is. */
  readonly nodes: Int32Array
}

const EACH = NODES * NODES

export function geometricStiffness(system: ShellSystem, bent: Float64Array): Geometric {
  const { shell, edges } = system
  const matrices = new Float64Array(shell.rows * edges.length * EACH)
  const nodes = new Int32Array(shell.rows * edges.length * NODES).fill(-1)
  const levels = levelsOf(shell)
  for (let row = 0; row < shell.rows; row++) {
    const moduli = rowModuli(shell, row)
    edges.forEach((edge, e) => {
      const element = edge.elements[row]
      if (!element || bridges(shell.mesh.edges[e]!, row, levels)) return
      const place = e * shell.rows + row
      const own = nodes.subarray(place * NODES, (place + 1) * NODES)
      own.set(firstUnknowns(system, edge, row))
      const local = localMoves(edge, own, bent)
      element.points.forEach((point, g) => {
        const young = moduli[g < 2 ? 0 : 1]
        const [nx, ny, nxy] = membraneForces(element.rectangle, point, local)
        addGeometric(matrices, place * EACH, point, [young * nx, young * ny, young * nxy])
      })
    })
  }
  return { rows: shell.rows, matrices, nodes }
}

function firstUnknowns({ nodes, offsets }: ShellSystem, edge: ShellEdge, row: number): Int32Array {
  const [blocks, firsts] = [new Int32Array(NODES), new Int32Array(NODES)]
  nodesOf(nodes, edge, row, blocks, firsts)
  return firsts.map((first, n) => (first < 0 ? -1 : offsets[blocks[n]!]! + first))
}

/** Displacements and rotations of an element's nodes in its own axes. */
function localMoves({ cosine, sine }: ShellEdge, nodes: Int32Array, moves: Float64Array): Float64Array {
  const axes = axesOf(cosine, sine)
  const local = new Float64Array(SIZE)
  nodes.forEach((first, n) => {
    if (first >= 0)
      for (let a = 0; a < UNKNOWNS; a++)
        for (let k = 0; k < 3; k++)
          local[n * UNKNOWNS + a]! += axes[(a % 3) * 3 + k]! * moves[first + a - (a % 3) + k]!
  })
  return local
}

/** Adds G·x of some edges to y. */
export function addGeometricTimes(
  { rows, matrices, nodes }: Geometric,
  edges: readonly number[],
  x: Float64Array,
  y: Float64Array,
): void {
  for (const edge of edges)
    for (let first = edge * rows * NODES; first < (edge + 1) * rows * NODES; first += NODES)
      addElementTimes(matrices, nodes, first, x, y)
}

function addElementTimes(
  matrices: Float64Array,
  nodes: Int32Array,
  first: number,
  x: Float64Array,
  y: Float64Array,
): void {
  for (let m = 0; m < NODES; m++) {
    const to = nodes[first + m]!
    if (to < 0) continue
    const base = (first + m) * NODES
    let ux = 0
    let uy = 0
    let uz = 0
    for (let n = 0; n < NODES; n++) {
      const from = nodes[first + n]!
      if (from < 0) continue
      const g = matrices[base + n]!
      ux += g * x[from]!
      uy += g * x[from + 1]!
      uz += g * x[from + 2]!
    }
    y[to]! += ux
    y[to + 1]! += uy
    y[to + 2]! += uz
  }
}
