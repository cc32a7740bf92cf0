import {
  cross,
  distance,
  meetingPoint,
  minus,
  nearestOnPath,
  type Path,
  type Point,
  pathBounds,
  pathLength,
  pathTangent,
} from '@dawnlift/core/geometry'
import type { Metres } from '@dawnlift/core/quantity'
import type { DrawingNote } from '@dawnlift/document/job'
import { boxesOf, nearestLine } from './nearest-line.js'
import { sayMillimetres, sayPlace } from './say-place.js'
import type { WallLine, WallLines } from './wall-line.js'

type EndName = 'start' | 'end'
const endNames: readonly EndName[] = ['start', 'end']

export const endOf = (path: Path, end: EndName): Point =>
  end === 'start' ? path.points[0]! : path.points.at(-1)!

function withEnd(path: Path, end: EndName, point: Point): Path {
  const points = [...path.points]
  points[end === 'start' ? 0 : points.length - 1] = point
  return { ...path, points }
}

/**
 * Ends within the tolerance of each other become one point, the first of them, unless a wall would move sideways onto
 * one beside it.
 * Ends that stop at the face of another wall, or run a little past its centreline, are brought onto that centreline.
 */
export function joinEnds(lines: readonly WallLine[], within: Metres): WallLines {
  const notes: DrawingNote[] = []
  const joined = joinedEnds(lines, within, notes)
  return { lines: reachedWalls(joined, within, notes), notes }
}

/** An end of a line that others may be joined to. */
interface KnownEnd {
  readonly point: Point
  readonly along: Point
  readonly thickness: Metres
}

function joinedEnds(lines: readonly WallLine[], within: Metres, notes: DrawingNote[]): readonly WallLine[] {
  const slack = Math.max(within, 1e-7)
  const cells = new Map<string, KnownEnd[]>()
  const cell = ([x, y]: Point, dx = 0, dy = 0) =>
    `${Math.floor(x / slack) + dx},${Math.floor(y / slack) + dy}`
  const near = (point: Point): readonly KnownEnd[] =>
    [-1, 0, 1]
      .flatMap(dx => [-1, 0, 1].flatMap(dy => cells.get(cell(point, dx, dy)) ?? []))
      .filter(known => distance(known.point, point) <= slack)
  const keep = (known: KnownEnd) =>
    cells.set(cell(known.point), [...(cells.get(cell(known.point)) ?? []), known])
  return lines.map(line => {
    if (line.path.closed) return line
    let path = line.path
    for (const end of endNames) {
      const own = knownEnd(path, end, line.type.thickness)
      const found = near(own.point)
      const joined = found.find(known => mayJoin(own, known))
      if (!joined) {
        keep(own)
        if (found[0]) notes.push(apartNote(own, found[0]))
        continue
      }
      const gap = distance(own.point, joined.point)
      if (gap > 1e-6) notes.push(joinNote(gap, joined.point))
      if (gap > 0) path = withEnd(path, end, joined.point)
    }
    return { ...line, path }
  })
}

const knownEnd = (path: Path, end: EndName, thickness: Metres): KnownEnd => ({
  point: endOf(path, end),
  along: pathTangent(path, end === 'start' ? 0 : pathLength(path)),
  thickness,
})

/**
 * Walls do not stand nearer to each other than their thicknesses allow: an end that would move sideways by as much belongs to
 * a wall beside the other. Where two walls meet at an angle each may end at the far face of the other.
 */
function mayJoin(own: KnownEnd, other: KnownEnd): boolean {
  const sideways = Math.abs(cross(own.along, minus(other.point, own.point)))
  const isBeside = Math.abs(cross(own.along, other.along)) < BESIDE
  return sideways < (own.thickness + other.thickness) / 2 + (isBeside ? -1e-6 : 1e-6)
}

/** Lines within 15° of each other run beside each other. */
const BESIDE = Math.sin(Math.PI / 12)

const joinNote = (gap: Metres, point: Point): DrawingNote => ({
  code: 'dxf/joined',
  point,
  say: `Two ends ${sayMillimetres(gap)} apart at ${sayPlace(point)} were joined.`,
})

const apartNote = (own: KnownEnd, other: KnownEnd): DrawingNote => ({
  code: 'dxf/not-joined',
  point: own.point,
  say: `Two ends ${sayMillimetres(distance(own.point, other.point))} apart at ${sayPlace(own.point)} were not joined, though joinWithin is more: a wall ${sayMillimetres(own.thickness)} thick would move sideways by as much as it takes to stand beside the other. Draw them together if they should meet, or lower joinWithin.`,
})

/** One name for a point, to a tenth of a micrometre. */
export const pointKey = ([x, y]: Point): string => `${x.toFixed(7)},${y.toFixed(7)}`

function reachedWalls(lines: readonly WallLine[], within: Metres, notes: DrawingNote[]): readonly WallLine[] {
  const moved = [...lines]
  const paths = moved.map(line => line.path)
  const boxes = boxesOf(paths)
  const ends = new Map<string, number>()
  const count = (point: Point, by: number) => ends.set(pointKey(point), (ends.get(pointKey(point)) ?? 0) + by)
  for (const path of paths) if (!path.closed) for (const end of endNames) count(endOf(path, end), 1)
  for (const index of moved.keys())
    for (const end of endNames) {
      const line = moved[index]!
      const point = endOf(line.path, end)
      if (line.path.closed || (ends.get(pointKey(point)) ?? 0) > 1) continue
      const best = nearestLine(paths, boxes, point, index)
      const target = best && reachOf(line, end, moved[best.index]!, best.away, within, notes)
      if (!target) continue
      count(point, -1)
      count(target, 1)
      moved[index] = { ...line, path: withEnd(line.path, end, target) }
      paths[index] = moved[index]!.path
      boxes[index] = pathBounds(paths[index]!)
    }
  return moved
}

/** Where a free end should stand, if the nearest wall is within its half thickness and the tolerance. */
function reachOf(
  line: WallLine,
  end: EndName,
  other: WallLine,
  away: Metres,
  within: Metres,
  notes: DrawingNote[],
): Point | undefined {
  const point = endOf(line.path, end)
  if (away < 1e-9) return undefined
  const [reach, own] = [other.type.thickness / 2 + within, line.type.thickness / 2 + within]
  const target = meetingOf(line.path, end, other.path, reach)
  // At a corner both walls may stop at each other's face: then the meeting point lies beyond the other's end too.
  const meets =
    target &&
    distance(point, target) <= reach + 1e-9 &&
    nearestOnPath(other.path, target).distance <= own + 1e-9
  if (!target || !meets) {
    if (away > other.type.thickness / 2 && away <= 3 * reach) notes.push(looseEnd(point, away))
    return undefined
  }
  const shift = distance(point, target)
  if (shift < 1e-9) return undefined
  notes.push({
    code: 'dxf/reached',
    point: target,
    say: `The wall end at ${sayPlace(point)} was moved by ${sayMillimetres(shift)} to the centreline of the wall it stops at.`,
  })
  return target
}

const looseEnd = (point: Point, away: Metres): DrawingNote => ({
  code: 'dxf/loose-end',
  point,
  say: `The wall end at ${sayPlace(point)} stops ${sayMillimetres(away)} from the next wall’s centreline; if they should meet, draw it on.`,
})

/** Along its own direction if that meets the other wall near by; walls that run on in line are left alone. */
function meetingOf(path: Path, end: EndName, other: Path, reach: Metres): Point | undefined {
  const point = endOf(path, end)
  const straight = (end === 'start' ? path.bulges[0] : path.bulges.at(-1)) === 0
  const nearest = nearestOnPath(other, point)
  if (!straight) return nearest.point
  const inner = end === 'start' ? path.points[1]! : path.points.at(-2)!
  const along: Point = [point[0] - inner[0], point[1] - inner[1]]
  const meeting = meetingPoint(point, along, nearest.point, pathTangent(other, nearest.station))
  if (!meeting || distance(meeting, point) > 2 * reach) return undefined
  const onOther = nearestOnPath(other, meeting)
  // On a curve the tangent only points the way; settle on the curve itself.
  return onOther.distance < reach && onOther.distance > 1e-9 && other.bulges.some(bulge => bulge !== 0)
    ? onOther.point
    : meeting
}
