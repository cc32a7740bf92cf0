import { type Bounds, type Point, pointBounds } from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'
import { edgesDistance } from './obstacle.js'
import type { Proud, RouteRules } from './options.js'
import type { Travel } from './pass.js'
import { distance } from './segment.js'

/** Walls of other sections that stand while a lift is run: what its nozzle has to come, go and travel over. */
export interface StandingWalls {
  /** Highest of all, machine frame [m]; −∞ where none stands. */
  readonly top: Metres
  /** Highest of those a way leads over. */
  readonly topUnder: (way: Pick<Travel, 'from' | 'to'>) => Metres
  /** Highest of those any of the travels leads over; they recur from layer to layer. */
  readonly topUnderAll: (travels: readonly Travel[]) => Metres
}

/**
 * A way leads over a wall where it comes nearer to it than the nozzle is wide, and nearer than at either of its ends: beads
 * that meet a wall at a joint cannot but begin beside it.
 */
export function standingWalls(
  walls: readonly Proud[],
  { origin, nozzleRadius }: Pick<RouteRules, 'origin' | 'nozzleRadius'>,
): StandingWalls {
  const ready = walls
    .map(({ outline, top }) => ({ outline, top: origin.z + top, box: boxOf(outline) }))
    .sort((a, b) => b.top - a.top)
  // ways from layer to layer are between the same points
  const known = new Map<Point, Map<Point, Metres>>()
  const topUnder = (way: Pick<Travel, 'from' | 'to'>): Metres => {
    const begun = known.get(way.from) ?? new Map<Point, Metres>()
    const before = begun.get(way.to)
    if (before !== undefined) return before
    const under = ready.find(
      wall => comesBy(wall.box, way, nozzleRadius) && leadsOver(way, wall.outline, nozzleRadius),
    )
    const top = under?.top ?? none
    known.set(way.from, begun.set(way.to, top))
    return top
  }
  const all = new Map<readonly Travel[], Metres>()
  const topUnderAll = (travels: readonly Travel[]): Metres => {
    const top = all.get(travels) ?? Math.max(...travels.map(each => (each.joined ? none : topUnder(each))))
    all.set(travels, top)
    return top
  }
  return { top: ready[0]?.top ?? none, topUnder, topUnderAll }
}

const none = Number.NEGATIVE_INFINITY

function leadsOver(
  { from, to }: Pick<Travel, 'from' | 'to'>,
  outline: readonly Point[],
  room: Metres,
): boolean {
  const length = distance(from, to)
  if (length === 0) return false
  const share = Math.min(room / length, 0.45)
  const along = (at: number): Point => [from[0] + at * (to[0] - from[0]), from[1] + at * (to[1] - from[1])]
  const nearest = edgesDistance(along(share), along(1 - share), outline, room)
  if (nearest === 0 || nearest >= room) return nearest === 0
  const atEnd = (end: Point) => edgesDistance(end, end, outline, room)
  // a millimetre, so that a way along a wall's end is not one that nears it
  return nearest < Math.min(atEnd(from), atEnd(to)) - 1e-3
}

/** Boxes of outlines, which never change and recur in every lift. */
const boxes = new WeakMap<readonly Point[], Bounds>()

function boxOf(outline: readonly Point[]): Bounds {
  const box = boxes.get(outline) ?? pointBounds(outline)
  boxes.set(outline, box)
  return box
}

const comesBy = ({ least, most }: Bounds, { from, to }: Pick<Travel, 'from' | 'to'>, room: Metres): boolean =>
  Math.max(from[0], to[0]) > least[0] - room &&
  Math.min(from[0], to[0]) < most[0] + room &&
  Math.max(from[1], to[1]) > least[1] - room &&
  Math.min(from[1], to[1]) < most[1] + room
