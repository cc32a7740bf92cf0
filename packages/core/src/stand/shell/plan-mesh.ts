import type { Point } from '../../geometry/index.js'
import type { Metres } from '../../quantity/index.js'

/** The middle lines of what is printed, cut into short straight pieces: the shell stands on these. */
export interface PlanMesh {
  readonly positions: readonly Point[]
  readonly edges: readonly PlanEdge[]
}

export interface PlanEdge {
  readonly from: number
  readonly to: number
  readonly thickness: Metres
}

export const edgeLength = ({ positions }: PlanMesh, { from, to }: PlanEdge): Metres =>
  Math.hypot(positions[to]![0] - positions[from]![0], positions[to]![1] - positions[from]![1])

/** A straight piece of wall cut into equal edges. */
export function straightMesh(length: Metres, pieces: number, thickness: Metres): PlanMesh {
  return {
    positions: Array.from({ length: pieces + 1 }, (_, i): Point => [(length * i) / pieces, 0]),
    edges: Array.from({ length: pieces }, (_, i) => ({ from: i, to: i + 1, thickness })),
  }
}

/** A closed ring cut into equal chords on its circle. */
export function ringMesh(radius: Metres, pieces: number, thickness: Metres): PlanMesh {
  const angle = (i: number) => (2 * Math.PI * i) / pieces
  return {
    positions: Array.from(
      { length: pieces },
      (_, i): Point => [radius * Math.cos(angle(i)), radius * Math.sin(angle(i))],
    ),
    edges: Array.from({ length: pieces }, (_, i) => ({ from: i, to: (i + 1) % pieces, thickness })),
  }
}
