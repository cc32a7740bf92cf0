import { bulgeThrough, distance, type Path, type Point, towards } from '@dawnlift/core/geometry'

/** Corners being set on the plan, of a wall to be or of a measurement. */
export interface Chain {
  readonly points: readonly Point[]
  readonly bulges: readonly number[]
  /** The far end of an arc, set before the point it passes through. */
  readonly arcEnd?: Point
}

export const emptyChain: Chain = { points: [], bulges: [] }

/** One corner more. An arc takes two clicks: where it ends, then a point it passes through. */
export function withCorner(chain: Chain, point: Point, arc: boolean): Chain {
  const last = chain.points.at(-1)
  if (!last) return { points: [point], bulges: [] }
  if (chain.arcEnd) {
    if (distance(point, last) < 1e-6 || distance(point, chain.arcEnd) < 1e-6) return chain
    const bulge = bulgeThrough(last, point, chain.arcEnd)
    return { points: [...chain.points, chain.arcEnd], bulges: [...chain.bulges, bulge] }
  }
  if (distance(point, last) < 1e-6) return chain
  if (arc) return { ...chain, arcEnd: point }
  return { points: [...chain.points, point], bulges: [...chain.bulges, 0] }
}

export function withoutCorner({ points, bulges, arcEnd }: Chain): Chain {
  if (arcEnd) return { points, bulges }
  return { points: points.slice(0, -1), bulges: bulges.slice(0, -1) }
}

/** What is drawn while the cross moves: the corners set, and the piece that a click would add. */
export function chainPath(chain: Chain, cursor: Point | undefined): Path | undefined {
  const last = chain.points.at(-1)
  const onward = last && cursor ? withCorner(chain, cursor, false) : chain
  return onward.points.length > 1
    ? { points: onward.points, bulges: onward.bulges, closed: false }
    : undefined
}

/** Direction in which the last piece arrives; none after an arc. */
export function lastDirection({ points, bulges }: Chain): Point | undefined {
  const [before, last] = [points.at(-2), points.at(-1)]
  return before && last && bulges.at(-1) === 0 ? towards(before, last) : undefined
}
