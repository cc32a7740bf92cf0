import {
  distance,
  nearestOnPath,
  type Point,
  pathLength,
  pathPoint,
  plus,
  times,
  towards,
} from '@dawnlift/core/geometry'
import type { Draft } from '../draft.js'

export interface SnappedPoint {
  readonly point: Point
  /** What it fell onto: an end, a wall, square with what came before, or nothing but the step. */
  readonly to?: string
}

export interface PointSnap {
  /** How near counts as meant [m]. */
  readonly reach: number
  readonly step: number
  /** The corner before this one, and the direction that led to it. */
  readonly from?: Point
  readonly along?: Point
  /** Walls that must not be fallen onto: the one whose end is in the hand. */
  readonly except?: readonly string[]
}

/** Onto a wall’s end, onto a wall, square with the corner before, or onto the step; the first that is near enough. */
export function snapPoint(draft: Draft, asked: Point, snap: PointSnap): SnappedPoint {
  const walls = draft.walls.filter(wall => !snap.except?.includes(wall.id))
  return (
    onEnd(walls, asked, snap.reach) ??
    onWall(walls, asked, snap) ??
    square(asked, snap) ?? { point: [step(asked[0], snap.step), step(asked[1], snap.step)] }
  )
}

type Walls = Draft['walls']

function onEnd(walls: Walls, asked: Point, reach: number): SnappedPoint | undefined {
  const ends = walls.flatMap(({ id, centreline }) =>
    centreline.points.map((point, index) => ({
      point,
      to:
        index === 0 && !centreline.closed
          ? `start of ${id}`
          : index === centreline.points.length - 1 && !centreline.closed
            ? `end of ${id}`
            : `corner of ${id}`,
    })),
  )
  const [best] = ends
    .filter(({ point }) => distance(point, asked) <= reach)
    .sort((a, b) => distance(a.point, asked) - distance(b.point, asked))
  return best
}

/** On the nearest wall, a whole number of steps from its start. */
function onWall(walls: Walls, asked: Point, { reach, step: by }: PointSnap): SnappedPoint | undefined {
  const [best] = walls
    .map(wall => ({ wall, ...nearestOnPath(wall.centreline, asked) }))
    .filter(each => each.distance <= reach)
    .sort((a, b) => a.distance - b.distance)
  if (!best) return undefined
  const { id, centreline } = best.wall
  const station = Math.min(step(best.station, by), pathLength(centreline))
  return { point: tidy(pathPoint(centreline, station)), to: `wall ${id}` }
}

/** Along an axis of the sheet, or straight on or at a right angle to the segment before, when no more than 6° off. */
function square(asked: Point, { from, along, step: by }: PointSnap): SnappedPoint | undefined {
  if (!from || distance(from, asked) < 1e-9) return undefined
  const wished = towards(from, asked)
  const main: readonly Point[] = [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ]
  const turned: readonly Point[] = along
    ? [along, [-along[1], along[0]], [-along[0], -along[1]], [along[1], -along[0]]]
    : []
  const best = [...main, ...turned]
    .map(way => ({ way, cosine: way[0] * wished[0] + way[1] * wished[1] }))
    .sort((a, b) => b.cosine - a.cosine)[0]!
  if (best.cosine < Math.cos((6 * Math.PI) / 180)) return undefined
  const length = step(distance(from, asked) * best.cosine, by)
  return { point: tidy(plus(from, times(best.way, length))), to: 'square' }
}

/** A point a typed length away from the last corner, in the direction shown. */
export const pointAtLength = (from: Point, toward: Point, length: number): Point =>
  tidy(plus(from, times(towards(from, toward), length)))

const step = (value: number, by: number): number => Number((Math.round(value / by) * by).toFixed(9))
const tidy = ([x, y]: Point): Point => [Number(x.toFixed(9)), Number(y.toFixed(9))]
