import { nearestOnPath, pathLength, pointStations } from '../geometry/index.js'
import type { Embed, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { placeAt } from './station.js'

export type Face = 'left' | 'right'

/** Where a tape is hooked: a corner of one face of a wall, as a station along that wall's centreline. */
export interface FaceCorner {
  readonly name: string
  readonly face: Face
  readonly station: Metres
  /** 1: measured onwards from here, −1: measured back. */
  readonly towards: 1 | -1
}

/** Turns sharper than this are corners a tape can be hooked on [rad]. */
const corner = (20 * Math.PI) / 180

/** Dozens of embeds ask for the corners of one wall; walls never change, and the answer goes with them. */
const knownCorners = new WeakMap<readonly Wall[], Map<Wall, readonly FaceCorner[]>>()

/** Every corner of a wall's two faces: its ends, its own bends, and the walls that run into it. */
export function cornersOf(wall: Wall, walls: readonly Wall[]): readonly FaceCorner[] {
  const known = knownCorners.get(walls) ?? new Map<Wall, readonly FaceCorner[]>()
  knownCorners.set(walls, known)
  const corners = known.get(wall) ?? [
    ...endCorners(wall, walls, 'start'),
    ...endCorners(wall, walls, 'end'),
    ...bends(wall),
    ...tees(wall, walls),
  ]
  known.set(wall, corners)
  return corners
}

/** The corner of that face nearest to a station, with the tape distance to it. */
export function nearestCorner(
  corners: readonly FaceCorner[],
  face: Face,
  at: Metres,
): { readonly corner: FaceCorner; readonly along: Metres } | undefined {
  let best: { corner: FaceCorner; along: Metres } | undefined
  for (const candidate of corners) {
    const along = (at - candidate.station) * candidate.towards
    if (candidate.face !== face || along < 0) continue
    if (!best || along < best.along - 1e-9) best = { corner: candidate, along }
  }
  return best
}

/** The face a tape runs along to reach an embed. */
export const tapeFace = (face: Embed['face']): Face => (face === 'right' ? 'right' : 'left')

type Vector = readonly [number, number]
const cross = (a: Vector, b: Vector): number => a[0] * b[1] - a[1] * b[0]
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1]
const unit = (heading: number): Vector => [Math.cos(heading), Math.sin(heading)]
const leftOf = (a: Vector): Vector => [-a[1], a[0]]
const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k]

/** How far into the wall its face's corner lies: where two face lines cross, measured along the wall from the vertex. */
function inset(
  into: Vector,
  side: Vector,
  half: Metres,
  other: Vector,
  otherSide: Vector,
  otherHalf: Metres,
): Metres {
  const apart: Vector = [otherSide[0] * otherHalf - side[0] * half, otherSide[1] * otherHalf - side[1] * half]
  return cross(apart, other) / cross(into, other)
}

function endCorners(wall: Wall, walls: readonly Wall[], end: 'start' | 'end'): FaceCorner[] {
  const length = pathLength(wall.centreline)
  const vertex = end === 'start' ? 0 : length
  const towards = end === 'start' ? 1 : -1
  const here = placeAt(wall.centreline, vertex)
  const along = unit(here.heading)
  const into = times(along, towards)
  const meeting = meetingWall(wall, walls, here.point)
  return (['left', 'right'] as const).map(face => {
    const side = times(leftOf(along), face === 'left' ? 1 : -1)
    if (!meeting) return { name: `${end} of ${wall.name}`, face, station: vertex, towards }
    const { other, run, through } = meeting
    // On the inside of an L the faces that look at each other meet; on its outside, the backs. A T has only insides.
    const inside = through || dot(side, run) > 0
    const otherSide = times(leftOf(run), Math.sign(dot(leftOf(run), into)) * (inside ? 1 : -1))
    const into1 = inset(into, side, wall.thickness / 2, run, otherSide, other.thickness / 2)
    return { name: cornerName(wall, other), face, station: vertex + towards * into1, towards }
  })
}

/** The wall met at a point, with the direction it leaves the point in, unless it only carries on straight. */
function meetingWall(wall: Wall, walls: readonly Wall[], point: readonly [number, number]) {
  const own = unit(placeAt(wall.centreline, nearestOnPath(wall.centreline, point).station).heading)
  for (const other of walls) {
    if (other.id === wall.id) continue
    const near = nearestOnPath(other.centreline, point)
    if (near.distance > (wall.thickness + other.thickness) / 2) continue
    const length = pathLength(other.centreline)
    const heading = unit(placeAt(other.centreline, near.station).heading)
    if (Math.abs(cross(own, heading)) < Math.sin(corner)) continue
    const reach = other.thickness
    const through = near.station > reach && near.station < length - reach
    return { other, through, run: times(heading, near.station > length / 2 && !through ? -1 : 1) }
  }
  return undefined
}

function bends(wall: Wall): FaceCorner[] {
  const stations = pointStations(wall.centreline)
  return stations.slice(1, -1).flatMap((station, index) => {
    const before = unit(placeAt(wall.centreline, station - 1e-6).heading)
    const after = unit(placeAt(wall.centreline, station + 1e-6).heading)
    const turn = Math.atan2(cross(before, after), dot(before, after))
    if (Math.abs(turn) < corner) return []
    const into = (wall.thickness / 2) * Math.tan(turn / 2)
    const name = `bend ${index + 1} of ${wall.name}`
    return [
      { name, face: 'left' as const, station: station + into, towards: 1 as const },
      { name, face: 'left' as const, station: station - into, towards: -1 as const },
      { name, face: 'right' as const, station: station - into, towards: 1 as const },
      { name, face: 'right' as const, station: station + into, towards: -1 as const },
    ]
  })
}

/** Walls that end against this one make two inside corners on the face they come to. */
function tees(wall: Wall, walls: readonly Wall[]): FaceCorner[] {
  const length = pathLength(wall.centreline)
  return walls.flatMap(other => {
    if (other.id === wall.id) return []
    const otherLength = pathLength(other.centreline)
    return [0, otherLength].flatMap(end => {
      const tip = placeAt(other.centreline, end)
      const near = nearestOnPath(wall.centreline, tip.point)
      const reach = (wall.thickness + other.thickness) / 2
      if (near.distance > reach || near.station < wall.thickness || near.station > length - wall.thickness)
        return []
      const along = unit(placeAt(wall.centreline, near.station).heading)
      const away = times(unit(tip.heading), end === 0 ? 1 : -1)
      const sine = Math.abs(cross(along, away))
      if (sine < Math.sin(corner)) return []
      const face: Face = cross(along, away) > 0 ? 'left' : 'right'
      const slant = ((wall.thickness / 2) * dot(along, away)) / sine
      const half = other.thickness / 2 / sine
      const name = cornerName(wall, other)
      return [
        { name, face, station: near.station + slant + half, towards: 1 as const },
        { name, face, station: near.station + slant - half, towards: -1 as const },
      ]
    })
  })
}

const cornerName = (a: Wall, b: Wall): string => `corner of ${a.name} and ${b.name}`
