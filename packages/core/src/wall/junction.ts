import {
  distance,
  meetingPoint,
  nearestOnPath,
  type Path,
  type Point,
  pathCrossings,
  pathLength,
  pathPoint,
  pathTangent,
  times,
} from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'

/** One way out of a junction along a wall. */
export interface Arm {
  readonly wall: Wall
  readonly station: Metres
  /** Unit vector out of the junction. */
  readonly out: Point
  /** +1: stations grow going out; −1: they fall. */
  readonly sense: 1 | -1
}

/** Where centrelines meet. `corner`: ends only; `tee`: ends on a wall that goes on; `cross`: walls that both go on. */
export interface Junction {
  readonly point: Point
  readonly kind: 'corner' | 'tee' | 'cross'
  readonly arms: readonly Arm[]
}

interface Member {
  readonly wall: Wall
  readonly station: Metres
}

/** Ends closer than this are the same point [m]: drawings snap to a millimetre. */
export const junctionTolerance: Metres = 1e-3

/**
 * All junctions of a plan. A wall's end meets another wall when it lies within the other's half thickness and the
 * tolerance, so stems may be drawn to the face or to the centreline.
 */
export function findJunctions(
  walls: readonly Wall[],
  tolerance: Metres = junctionTolerance,
): readonly Junction[] {
  const nodes: { point: Point; members: Member[] }[] = []
  const join = (point: Point, members: readonly Member[]) => {
    const node = nodes.find(other => distance(other.point, point) <= 2 * tolerance)
    if (!node) nodes.push({ point, members: [...members] })
    else for (const member of members) if (!knows(node.members, member, tolerance)) node.members.push(member)
  }
  walls.forEach((wall, i) => {
    for (const other of walls) if (other !== wall) endMeetings(wall, other, tolerance, join)
    for (const other of walls.slice(i + 1)) crossingsInside(wall, other, tolerance, join)
  })
  return nodes.map(({ point, members }) => junction(point, members, tolerance))
}

type Join = (point: Point, members: readonly Member[]) => void

function endMeetings(wall: Wall, other: Wall, tolerance: Metres, join: Join): void {
  if (wall.centreline.closed) return
  for (const station of [0, pathLength(wall.centreline)]) {
    const end = pathPoint(wall.centreline, station)
    const near = nearestOnPath(other.centreline, end)
    const length = pathLength(other.centreline)
    const atEnd =
      !other.centreline.closed && (near.station <= tolerance || near.station >= length - tolerance)
    if (near.distance > (atEnd ? tolerance : other.thickness / 2 + tolerance)) continue
    const point =
      near.distance <= tolerance ? near.point : landing(wall, station, other.centreline, near.station)
    const reached = atEnd
      ? snapEnd(near.station, length, tolerance)
      : nearestOnPath(other.centreline, point).station
    join(point, [
      { wall, station },
      { wall: other, station: reached },
    ])
  }
}

/** Where a stem drawn short of a centreline would meet it, going straight on. */
function landing(stem: Wall, station: Metres, main: Path, near: Metres): Point {
  const end = pathPoint(stem.centreline, station)
  const foot = pathPoint(main, near)
  const met = meetingPoint(end, pathTangent(stem.centreline, station), foot, pathTangent(main, near))
  return met && distance(met, foot) < stem.thickness ? met : foot
}

function crossingsInside(wall: Wall, other: Wall, tolerance: Metres, join: Join): void {
  for (const { point, stations } of pathCrossings(wall.centreline, other.centreline)) {
    const inside = [wall, other].every(({ centreline }, k) => {
      const [station, length] = [stations[k]!, pathLength(centreline)]
      return centreline.closed || (station > tolerance && station < length - tolerance)
    })
    if (!inside) continue
    join(point, [
      { wall, station: stations[0] },
      { wall: other, station: stations[1] },
    ])
  }
}

function junction(point: Point, members: readonly Member[], tolerance: Metres): Junction {
  const arms = members.flatMap(member => armsOf(member, tolerance))
  const through = members.filter(member => armsOf(member, tolerance).length === 2).length
  return { point, kind: through === 0 ? 'corner' : through === members.length ? 'cross' : 'tee', arms }
}

export function armsOf({ wall, station }: Member, tolerance: Metres): readonly Arm[] {
  const length = pathLength(wall.centreline)
  const forward = wall.centreline.closed || station < length - tolerance
  const backward = wall.centreline.closed || station > tolerance
  const arms: Arm[] = []
  if (forward) arms.push({ wall, station, out: pathTangent(wall.centreline, station), sense: 1 })
  if (backward) {
    const before = station > 0 ? station - Math.min(1e-9, station / 2) : length - 1e-9
    arms.push({ wall, station, out: times(pathTangent(wall.centreline, before), -1), sense: -1 })
  }
  return arms
}

const snapEnd = (station: Metres, length: Metres, tolerance: Metres): Metres =>
  station <= tolerance ? 0 : station >= length - tolerance ? length : station

const knows = (members: readonly Member[], { wall, station }: Member, tolerance: Metres): boolean =>
  members.some(member => member.wall === wall && Math.abs(member.station - station) <= 2 * tolerance)
