import type { Path } from '../geometry/index.js'
import { assert } from '../result/index.js'

/** A path that stands for all paths with the same points and bulges. */
export interface PooledPath {
  readonly path: Path
  /** One number for one content, never given twice. */
  readonly id: number
}

/**
 * Six of seven beads of a section recur from band to band: the same points in another object. Here they become one object,
 * so that what is worked out for the first serves all.
 */
export class PathPool {
  /** By a number that equal paths share, the youngest last; its owner drops the oldest. */
  readonly byContent = new Map<number, PooledPath>()
  private readonly seen = new WeakMap<Path, PooledPath>()
  private count = 0

  pooled(path: Path): PooledPath {
    const seen = this.seen.get(path) ?? this.ofContent(path)
    this.seen.set(path, seen)
    return seen
  }

  private ofContent(path: Path): PooledPath {
    const sum = contentSum(path)
    assert(Number.isFinite(sum) && path.bulges.length > 0, 'bead points are finite and beads have pieces')
    const known = this.byContent.get(sum)
    const pooled = known && isSame(known.path, path) ? known : { path, id: ++this.count }
    this.byContent.delete(sum)
    this.byContent.set(sum, pooled)
    return pooled
  }
}

/** Equal for equal paths; for others almost never, and then the two are merely not shared. */
function contentSum({ points, bulges, closed }: Path): number {
  let sum = closed ? 1 : 0
  for (const [x, y] of points) sum = 0.875 * sum + x + 0.375 * y
  for (const bulge of bulges) sum = 0.875 * sum + bulge
  return sum
}

const isSame = (a: Path, b: Path): boolean =>
  a.closed === b.closed &&
  a.points.length === b.points.length &&
  a.bulges.every((bulge, i) => bulge === b.bulges[i]) &&
  a.points.every(([x, y], i) => x === b.points[i]![0] && y === b.points[i]![1])
