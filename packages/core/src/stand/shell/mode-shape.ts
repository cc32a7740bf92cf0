import type { Point } from '../../geometry/index.js'
import type { Metres } from '../../quantity/index.js'
import { levelsOf, type ShellSystem } from './shell-model.js'

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

export function modeShape({ shell, offsets, nodes }: ShellSystem, x: Float64Array): ModeShape {
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
