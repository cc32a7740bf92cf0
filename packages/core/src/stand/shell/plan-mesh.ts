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
  /** Row by row of the elements, 0 where no bead lies; none: `thickness` all the way up. */
  readonly rows?: readonly Metres[]
  /** Where it begins over nothing it hangs from what it touches: a tie across the cavity. Others bear on a lintel or a box. */
  readonly hangs?: boolean
}

export const thicknessIn = ({ thickness, rows }: PlanEdge, row: number): Metres =>
  rows ? rows[row]! : thickness

/** How high a tie that begins over nothing is a bridge, about as long as one of its legs. */
const BRIDGE: Metres = 0.15

/**
 * Whether a tie in a row still bridges from wythe to wythe: while it does it is stiff and weighs, but is not judged for
 * buckling by itself. How a fresh bead bridges is for a trial to show.
 */
export function bridges(edge: PlanEdge, row: number, levels: readonly Metres[]): boolean {
  if (!edge.hangs) return false
  let first = row
  while (first > 0 && thicknessIn(edge, first - 1) > 0) first--
  return first > 0 && levels[row]! - levels[first]! < BRIDGE - 1e-9
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
