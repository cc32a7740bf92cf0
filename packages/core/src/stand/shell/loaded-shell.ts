import type { Metres } from '../../quantity/index.js'
import { assert } from '../../result/index.js'
import { addGeometricTimes, type Geometric, geometricStiffness } from './geometric.js'
import { bridges, edgeLength, thicknessIn } from './plan-mesh.js'
import { NODES } from './rectangle.js'
import {
  type ShellFactor,
  shellFactor,
  solveBackward,
  solveForward,
  throughFactor,
  zeroFixed,
} from './shell-factor.js'
import { levelsOf, nodesOf, type Shell, type ShellSystem, shellSystem } from './shell-model.js'

/** A factored shell with what its own weight does to it. */
export interface LoadedShell {
  readonly factor: ShellFactor
  readonly load: Float64Array
  readonly geometric: Geometric
}

export function loadedShell(shell: Shell, goOn: (share: number) => boolean): LoadedShell | 'cancelled' {
  const system = shellSystem(shell)
  const factor = shellFactor(system, goOn)
  if (factor === 'cancelled') return factor
  assert(factor !== 'not positive', 'the stiffness of a clamped wall is positive')
  const load = weightLoad(system)
  const bent = load.slice()
  solveForward(factor, bent)
  solveBackward(factor, bent)
  return { factor, load, geometric: geometricStiffness(system, bent) }
}

/** L⁻ᵀ·x: the moves a vector of the search stands for. */
export function movesOf({ factor }: LoadedShell, x: Float64Array): Float64Array {
  const moves = x.slice()
  solveBackward(factor, moves)
  return moves
}

/** What of the search's vectors stands for how moves push: L⁻¹·G·moves. */
export function pushedBy({ factor, geometric }: LoadedShell, moves: Float64Array): Float64Array {
  const pushed = new Float64Array(moves.length)
  addGeometricTimes(geometric, [...factor.system.edges.keys()], moves, pushed)
  zeroFixed(factor.system, pushed)
  solveForward(factor, pushed)
  return pushed
}

/** L⁻¹·G·L⁻ᵀ·x: symmetric, with eigenvalues 1/λ. */
export const flexibilityTimes = ({ factor, geometric }: LoadedShell, x: Float64Array): Float64Array =>
  throughFactor(factor, x, (edges, moves, pushed) => addGeometricTimes(geometric, edges, moves, pushed))

/** ρ·g·h spread over the nodes by the shape functions; what bridges hands its weight to the other beads of its row. */
function weightLoad({ shell, edges, nodes, offsets, fixed }: ShellSystem): Float64Array {
  const load = new Float64Array(offsets[offsets.length - 1]!)
  const [blocks, firsts] = [new Int32Array(NODES), new Int32Array(NODES)]
  const levels = levelsOf(shell)
  for (let row = 0; row < shell.rows; row++) {
    const share = bearingShare(shell, row, levels)
    edges.forEach((edge, e) => {
      const element = edge.elements[row]
      if (!element || bridges(shell.mesh.edges[e]!, row, levels)) return
      nodesOf(nodes, edge, row, blocks, firsts)
      const pressure = (shell.density * shell.gravity * element.rectangle.thickness) / share
      for (const point of element.points)
        for (let n = 0; n < NODES; n++)
          if (blocks[n]! >= 0)
            load[offsets[blocks[n]!]! + firsts[n]! + 2]! -= pressure * point.area * point.value[n]!
    })
  }
  return load.map((value, i) => (fixed[i] ? 0 : value))
}

/** Of the beads in a row, the share that stands on beads. */
function bearingShare({ mesh }: Shell, row: number, levels: readonly Metres[]): number {
  let [all, bearing] = [0, 0]
  for (const edge of mesh.edges) {
    const area = edgeLength(mesh, edge) * thicknessIn(edge, row)
    all += area
    if (!bridges(edge, row, levels)) bearing += area
  }
  return bearing / all
}
