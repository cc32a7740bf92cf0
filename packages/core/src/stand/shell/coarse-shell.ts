import type { PlanMesh } from './plan-mesh.js'
import { thicknessIn } from './plan-mesh.js'
import { CORNERS, NODES, serendipity, UNKNOWNS } from './rectangle.js'
import { levelsOf, nodesOf, type Shell, type ShellSystem } from './shell-model.js'

/** The same plan in fewer rows, to begin a search with. */
export interface CoarseShell {
  readonly shell: Shell
  /** The coarse row each row of the shell is in. */
  readonly rowOf: readonly number[]
}

/** Up to so many rows become one. */
const TOGETHER = 3

/** Rows with the same beads taken together; none where that would leave too many for the search to gain. */
export function coarseShell(shell: Shell): CoarseShell | undefined {
  const levels = levelsOf(shell)
  const tops: number[] = []
  const rowsOf: number[][] = []
  const limit = Math.min(TOGETHER, Math.floor(shell.rows / 2))
  for (let row = 0; row < shell.rows; row++) {
    const last = rowsOf[rowsOf.length - 1]
    if (last && last.length < limit && isSame(shell.mesh, last[0]!, row)) last.push(row)
    else rowsOf.push([row])
    tops[rowsOf.length - 1] = levels[row + 1]!
  }
  if (rowsOf.length > 0.4 * shell.rows) return undefined
  const edges = shell.mesh.edges.map(edge => {
    const { rows } = edge
    return rows ? { ...edge, rows: rowsOf.map(([first]) => rows[first!]!) } : edge
  })
  return {
    shell: {
      ...shell,
      mesh: { ...shell.mesh, edges },
      rows: rowsOf.length,
      levels: [levels[0]!, ...tops],
    },
    rowOf: rowsOf.flatMap((rows, coarse) => rows.map(() => coarse)),
  }
}

const isSame = ({ edges }: PlanMesh, a: number, b: number): boolean =>
  edges.every(edge => thicknessIn(edge, a) === thicknessIn(edge, b))

/** Moves of the coarse shell's nodes as moves of the fine one's, by the coarse elements' shape functions. */
export function refined(
  coarse: ShellSystem,
  moves: Float64Array,
  system: ShellSystem,
  rowOf: readonly number[],
): Float64Array {
  const fine = new Float64Array(system.offsets[system.offsets.length - 1]!)
  const [levels, coarseLevels] = [levelsOf(system.shell), levelsOf(coarse.shell)]
  const [blocks, firsts] = [new Int32Array(NODES), new Int32Array(NODES)]
  rowOf.forEach((coarseRow, row) => {
    const [foot, top] = [coarseLevels[coarseRow]!, coarseLevels[coarseRow + 1]!]
    const shapes = CORNERS.map(([x, y]) => {
      const height = levels[row]! + ((levels[row + 1]! - levels[row]!) * (y + 1)) / 2
      return serendipity(x, (2 * (height - foot)) / (top - foot) - 1).value
    })
    system.edges.forEach((edge, e) => {
      if (!edge.elements[row]) return
      const nodes = nodeMoves(coarse, moves, e, coarseRow, blocks, firsts)
      nodesOf(system.nodes, edge, row, blocks, firsts)
      shapes.forEach((shape, n) => {
        if (blocks[n]! < 0) return
        const at = system.offsets[blocks[n]!]! + firsts[n]!
        for (let a = 0; a < UNKNOWNS; a++) {
          let sum = 0
          for (let m = 0; m < NODES; m++) sum += shape[m]! * nodes[m * UNKNOWNS + a]!
          fine[at + a] = sum
        }
      })
    })
  })
  return fine
}

function nodeMoves(
  { nodes, edges, offsets }: ShellSystem,
  moves: Float64Array,
  e: number,
  row: number,
  blocks: Int32Array,
  firsts: Int32Array,
): Float64Array {
  const own = new Float64Array(NODES * UNKNOWNS)
  nodesOf(nodes, edges[e]!, row, blocks, firsts)
  blocks.forEach((block, n) => {
    if (block < 0) return
    const at = offsets[block]! + firsts[n]!
    own.set(moves.subarray(at, at + UNKNOWNS), n * UNKNOWNS)
  })
  return own
}
