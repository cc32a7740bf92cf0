import type { Point } from '../../geometry/index.js'
import type { Metres } from '../../quantity/index.js'
import { assert } from '../../result/index.js'
import { type Geometric, geometricStiffness, geometricTimes } from './geometric.js'
import { type LargestEigenvalue, largestEigenvalue } from './lanczos.js'
import { bridges, edgeLength, thicknessIn } from './plan-mesh.js'
import { NODES } from './rectangle.js'
import { type ShellFactor, shellFactor, solveBackward, solveForward, zeroFixed } from './shell-factor.js'
import { levelsOf, nodesOf, type Shell, type ShellSystem, shellSystem } from './shell-model.js'

/** Called now and then with the share done; answering false stops the work. */
export type Progress = (share: number) => boolean

/** How a buckling wall moves, for a picture: largest movement 1. */
export interface ModeShape {
  readonly positions: readonly Point[]
  readonly edges: readonly (readonly [number, number])[]
  readonly heights: readonly Metres[]
  /** moves[position][level] = [x, y, z] */
  readonly moves: readonly (readonly (readonly [number, number, number])[])[]
  /** Where it moves most. */
  readonly largest: { readonly position: number; readonly level: number }
}

export type ShellBuckling =
  | {
      readonly kind: 'buckles'
      /** Self-weight may be this many times what it is. */
      readonly factor: number
      readonly mode: ModeShape
      readonly residual: number
      readonly unknowns: number
      /** Of the walls [N]. */
      readonly weight: number
    }
  /** No factor above zero: nothing is compressed. */
  | { readonly kind: 'none' }
  | { readonly kind: 'cancelled' }

/**
 * Lowest factor on self-weight at which a section's walls buckle, and how they move.
 * Linear buckling: (K − λ·G)·x = 0 with G from the membrane forces of a static solution under self-weight.
 *
 * Source   closed form; eight-node Mindlin shells with reduced integration after [Zienkiewicz1971], from memory;
 *          compared with CalculiX 2.20 on the same meshes.
 * Range    small strains: fresh material that shortens by more than a few per cent is beyond linear buckling.
 * Assumes  clamped foot; beads meet on their middle lines; perfect geometry: apply the imperfection factor.
 */
export function shellBuckling(shell: Shell, progress: Progress = () => true): ShellBuckling {
  const system = shellSystem(shell)
  const factor = shellFactor(system, share => progress(0.5 * share))
  if (factor === 'cancelled') return { kind: 'cancelled' }
  assert(factor !== 'not positive', 'the stiffness of a clamped wall is positive')
  const bent = weightLoad(system)
  solveForward(factor, bent)
  solveBackward(factor, bent)
  const geometric = geometricStiffness(system, bent)
  const found = largestEigenvalue(
    bent.length,
    x => flexibilityTimesGeometric(factor, geometric, x),
    share => progress(0.5 + 0.5 * Math.min(1, share)),
  )
  if (!found) return { kind: 'cancelled' }
  // Nothing compressed: what is left above zero is rounding against the stiffest answer a wall could give.
  if (!(found.value > 1e-9)) return { kind: 'none' }
  return {
    kind: 'buckles',
    factor: 1 / found.value,
    mode: modeOf(factor, found),
    residual: found.residual,
    unknowns: bent.length,
    weight: weightOf(shell),
  }
}

export function weightOf(shell: Shell): number {
  const { mesh, density, gravity } = shell
  const levels = levelsOf(shell)
  let volume = 0
  for (const edge of mesh.edges)
    for (let row = 0; row < shell.rows; row++)
      volume += edgeLength(mesh, edge) * thicknessIn(edge, row) * (levels[row + 1]! - levels[row]!)
  return volume * density * gravity
}

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

/** L⁻¹·G·L⁻ᵀ·x: symmetric, with eigenvalues 1/λ. */
function flexibilityTimesGeometric(factor: ShellFactor, geometric: Geometric, x: Float64Array): Float64Array {
  const moved = x.slice()
  solveBackward(factor, moved)
  const pushed = geometricTimes(geometric, moved)
  zeroFixed(factor.system, pushed)
  solveForward(factor, pushed)
  return pushed
}

function modeOf(factor: ShellFactor, found: LargestEigenvalue): ModeShape {
  const { shell, offsets, nodes } = factor.system
  const x = found.vector.slice()
  solveBackward(factor, x)
  const levels = 2 * shell.rows
  const bounds = levelsOf(shell)
  let [largest, where] = [0, { position: 0, level: 0 }]
  const read = (position: number, level: number) => {
    const first = nodes.firstOf[position]![level]!
    const at = offsets[position]! + first
    return first < 0 ? ([0, 0, 0] as const) : ([x[at]!, x[at + 1]!, x[at + 2]!] as const)
  }
  shell.mesh.positions.forEach((_, position) => {
    for (let level = 1; level <= levels; level++) {
      const size = Math.hypot(...read(position, level))
      if (size > largest) [largest, where] = [size, { position, level }]
    }
  })
  return {
    positions: shell.mesh.positions,
    edges: shell.mesh.edges.map(({ from, to }) => [from, to] as const),
    heights: Array.from(
      { length: levels + 1 },
      (_, level) => (bounds[Math.floor(level / 2)]! + bounds[Math.ceil(level / 2)]!) / 2,
    ),
    moves: shell.mesh.positions.map((_, position) =>
      Array.from({ length: levels + 1 }, (__, level) => {
        const [a, b, c] = read(position, level)
        return [a / largest, b / largest, c / largest] as const
      }),
    ),
    largest: where,
  }
}
