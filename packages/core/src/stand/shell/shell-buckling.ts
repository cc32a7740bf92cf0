import type { Point } from '../../geometry/index.js'
import type { Metres } from '../../quantity/index.js'
import { backwardBlocks, factorBlocks, forwardBlocks } from './block-cholesky.js'
import { type LargestEigenvalue, largestEigenvalue } from './lanczos.js'
import { bridges, edgeLength, thicknessIn } from './plan-mesh.js'
import { addGeometric, membraneForces, NODES, SIZE, UNKNOWNS } from './rectangle.js'
import {
  axesOf,
  levelsOf,
  nodesOf,
  rowModuli,
  type Shell,
  type ShellSystem,
  shellSystem,
} from './shell-model.js'

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
  if (!factorBlocks(system.stiffness, share => progress(0.7 * share))) return { kind: 'cancelled' }
  const load = weightLoad(system)
  const weight = weightOf(shell)
  const bent = load.slice()
  const parts = views(system, bent)
  forwardBlocks(system.stiffness, parts)
  backwardBlocks(system.stiffness, parts)
  const geometric = geometricMatrices(system, bent)
  const found = largestEigenvalue(
    load.length,
    x => flexibilityTimesGeometric(system, geometric, x),
    share => progress(0.7 + 0.3 * Math.min(1, share)),
  )
  if (!found) return { kind: 'cancelled' }
  // Nothing compressed: what is left above zero is rounding against the stiffest answer a wall could give.
  if (!(found.value > 1e-9)) return { kind: 'none' }
  return {
    kind: 'buckles',
    factor: 1 / found.value,
    mode: modeOf(system, found),
    residual: found.residual,
    unknowns: load.length,
    weight,
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

const views = ({ offsets }: ShellSystem, vector: Float64Array): Float64Array[] =>
  Array.from({ length: offsets.length - 1 }, (_, i) => vector.subarray(offsets[i]!, offsets[i + 1]!))

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

/** G of every element, as the 8 × 8 matrix that all displacements share; element (edge, row) at (row·edges + edge)·64. */
function geometricMatrices({ shell, edges, nodes, offsets }: ShellSystem, bent: Float64Array): Float64Array {
  const matrices = new Float64Array(shell.rows * edges.length * NODES * NODES)
  const [blocks, firsts, local] = [new Int32Array(NODES), new Int32Array(NODES), new Float64Array(SIZE)]
  const levels = levelsOf(shell)
  for (let row = 0; row < shell.rows; row++) {
    const moduli = rowModuli(shell, row)
    edges.forEach((edge, e) => {
      const element = edge.elements[row]
      if (!element || bridges(shell.mesh.edges[e]!, row, levels)) return
      nodesOf(nodes, edge, row, blocks, firsts)
      const axes = axesOf(edge.cosine, edge.sine)
      for (let n = 0; n < NODES; n++)
        for (let a = 0; a < 6; a++) {
          const base = a < 3 ? 0 : 3
          let sum = 0
          if (blocks[n]! >= 0)
            for (let k = 0; k < 3; k++)
              sum += axes[(a % 3) * 3 + k]! * bent[offsets[blocks[n]!]! + firsts[n]! + base + k]!
          local[n * UNKNOWNS + a] = sum
        }
      element.points.forEach((point, g) => {
        const young = moduli[g < 2 ? 0 : 1]
        const [nx, ny, nxy] = membraneForces(element.rectangle, point, local)
        const offset = (row * edges.length + e) * NODES * NODES
        addGeometric(matrices, offset, point, [young * nx, young * ny, young * nxy])
      })
    })
  }
  return matrices
}

/** L⁻¹·G·L⁻ᵀ·x: symmetric, with eigenvalues 1/λ. */
function flexibilityTimesGeometric(
  system: ShellSystem,
  matrices: Float64Array,
  x: Float64Array,
): Float64Array {
  const moved = x.slice()
  backwardBlocks(system.stiffness, views(system, moved))
  for (let i = 0; i < moved.length; i++) if (system.fixed[i]) moved[i] = 0
  const pushed = geometricTimes(system, matrices, moved)
  forwardBlocks(system.stiffness, views(system, pushed))
  return pushed
}

function geometricTimes(
  { shell, edges, nodes, offsets, fixed }: ShellSystem,
  matrices: Float64Array,
  x: Float64Array,
): Float64Array {
  const y = new Float64Array(x.length)
  const [blocks, firsts] = [new Int32Array(NODES), new Int32Array(NODES)]
  const at = new Int32Array(NODES)
  for (let row = 0; row < shell.rows; row++)
    for (let e = 0; e < edges.length; e++) {
      const edge = edges[e]!
      if (!edge.elements[row]) continue
      nodesOf(nodes, edge, row, blocks, firsts)
      for (let n = 0; n < NODES; n++) at[n] = blocks[n]! < 0 ? -1 : offsets[blocks[n]!]! + firsts[n]!
      const base = (row * edges.length + e) * NODES * NODES
      for (let m = 0; m < NODES; m++) {
        const to = at[m]!
        if (to < 0) continue
        let [ux, uy, uz] = [0, 0, 0]
        for (let n = 0; n < NODES; n++) {
          const from = at[n]!
          if (from < 0) continue
          const g = matrices[base + m * NODES + n]!
          ux += g * x[from]!
          uy += g * x[from + 1]!
          uz += g * x[from + 2]!
        }
        y[to]! += ux
        y[to + 1]! += uy
        y[to + 2]! += uz
      }
    }
  for (let i = 0; i < y.length; i++) if (fixed[i]) y[i] = 0
  return y
}

function modeOf(system: ShellSystem, found: LargestEigenvalue): ModeShape {
  const { shell, offsets, nodes } = system
  const x = found.vector.slice()
  backwardBlocks(system.stiffness, views(system, x))
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
