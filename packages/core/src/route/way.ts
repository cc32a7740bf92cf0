import type { Path, Point } from '../geometry/index.js'
import type { Bead } from '../wall/index.js'
import type { RouteRules } from './options.js'
import { nearestPlace, type Place } from './path-edit.js'
import { distance, pointAt, segmentsOf } from './segment.js'

/** One way to run a bead: an open one from either end, a closed one from one of its places. */
export interface Way {
  /** Index into the band's beads. */
  readonly bead: number
  readonly enter: Point
  readonly leave: Point
  /** Open beads: from the far end. Closed beads get their direction later, it costs no travel. */
  readonly backwards: boolean
  /** Closed beads: where the loop is opened. */
  readonly place?: Place
  /** Metres of travel worth avoiding this way: a start in sight, or above the last layer's start. */
  readonly dislike: number
}

/** Places tried on one loop. */
const mostPlaces = 8

/** All ways to run each bead that are worth trying. */
export function waysOf(beads: readonly Bead[], rules: RouteRules): Way[][] {
  const touching = touchingPlaces(beads, rules)
  return beads.map((bead, i) =>
    bead.path.closed ? waysAround(bead.path, i, touching[i]!, rules) : waysAlong(bead.path, i),
  )
}

function waysAlong(path: Path, bead: number): Way[] {
  const [first, last] = [path.points[0]!, path.points.at(-1)!]
  return [
    { bead, enter: first, leave: last, backwards: false, dislike: 0 },
    { bead, enter: last, leave: first, backwards: true, dislike: 0 },
  ]
}

/** A hidden place wins over every saving of travel, never over a saved start. */
function waysAround(path: Path, bead: number, touching: readonly Place[], rules: RouteRules): Way[] {
  const hidden = rules.start.kind === 'hidden' ? rules.start.near : undefined
  const wished = hidden ? [nearestPlace(path, hidden)] : someCorners(path, mostPlaces - touching.length)
  return distinct([...touching, ...wished]).map(place => ({
    bead,
    enter: place.point,
    leave: place.point,
    backwards: false,
    place,
    dislike: hidden ? 10 * distance(place.point, hidden) : 0,
  }))
}

/** Corners spread evenly over the loop, at least two so that starts can be staggered. */
function someCorners(path: Path, most: number): Place[] {
  const count = Math.min(path.points.length, Math.max(2, most))
  return Array.from({ length: count }, (_, k) => {
    const segment = Math.floor((k * path.points.length) / count)
    return { segment, share: 0, point: path.points[segment]! }
  })
}

/** For every loop, the places where another bead begins, ends or comes by within the joining gap. */
function touchingPlaces(beads: readonly Bead[], rules: RouteRules): Place[][] {
  const found: Place[][] = beads.map(() => [])
  const loops = [...beads.keys()].filter(i => beads[i]!.path.closed)
  const note = (loop: number, other: number, place: NearPlace) => {
    const known = found[loop]!
    if (place.distance <= joiningGap(beads[loop]!, beads[other]!, rules) && known.length < mostPlaces)
      found[loop] = distinct([...known, place])
  }
  const others = (loop: number) => [...beads.keys()].filter(i => i !== loop)
  for (const i of loops)
    for (const j of others(i))
      for (const place of meetingPlaces(beads[j]!.path, beads[i]!.path)) note(i, j, place)
  // a place passed on from loop to loop lets nested loops follow one another: inwards, then outwards
  for (const i of [...loops, ...[...loops].reverse()])
    for (const j of others(i))
      for (const { point } of found[j]!) note(i, j, nearestPlace(beads[i]!.path, point))
  return found
}

type NearPlace = ReturnType<typeof nearestPlace>

/** The same two beads lie beside each other in band after band. */
const meetings = new WeakMap<Path, WeakMap<Path, readonly NearPlace[]>>()

/** Where a bead may meet a loop, as places on the loop. */
function meetingPlaces(path: Path, loop: Path): readonly NearPlace[] {
  const known = meetings.get(loop) ?? new WeakMap<Path, readonly NearPlace[]>()
  const places = known.get(path) ?? meetingPoints(path, loop).map(point => nearestPlace(loop, point))
  meetings.set(loop, known.set(path, places))
  return places
}

/** A bead's ends, or of another loop the middle of its longest side and its nearest corner. */
function meetingPoints(path: Path, loop: Path): Point[] {
  if (!path.closed) return [path.points[0]!, path.points.at(-1)!]
  const longest = segmentsOf(path).reduce((a, b) => (b.length > a.length + 1e-9 ? b : a))
  return [pointAt(longest, 0.5), nearestCorner(path, loop)]
}

/** Widest gap between two bead ends that is printed across rather than stopped at. */
export const joiningGap = (a: Bead, b: Bead, rules: RouteRules): number =>
  rules.joinGap * Math.min(a.width, b.width) + 1e-6

function nearestCorner(of: Path, to: Path): Point {
  let best = of.points[0]!
  let least = Number.POSITIVE_INFINITY
  for (const point of of.points) {
    const away = nearestPlace(to, point).distance
    if (away < least - 1e-12) [least, best] = [away, point]
  }
  return best
}

function distinct(places: readonly Place[]): Place[] {
  const kept: Place[] = []
  for (const place of places)
    if (!kept.some(other => distance(other.point, place.point) < 1e-3)) kept.push(place)
  return kept
}
