import { dot, minus, nearestOnPath, type Point, pathNormal } from '@dawnlift/core/geometry'
import type { Wall } from '@dawnlift/core/job'
import { type Metres, parseQuantity } from '@dawnlift/core/quantity'
import { closestName, type Problem } from '@dawnlift/core/result'
import type { DrawnBlock } from './drawing.js'
import { sayMillimetres, sayPlace } from './say-place.js'

export interface OnWall {
  readonly wall: Wall
  readonly station: Metres
  /** Distance from the centreline, positive to the left. */
  readonly offset: Metres
}

/** The wall a drawn thing stands in; a problem when none is near. */
export function onWall(
  point: Point,
  what: string,
  walls: readonly Wall[],
  slack: Metres,
  problems: Problem[],
): OnWall | undefined {
  let best:
    | { readonly wall: Wall; readonly away: Metres; readonly station: Metres; readonly foot: Point }
    | undefined
  for (const wall of walls) {
    const { station, distance, point: foot } = nearestOnPath(wall.centreline, point)
    if (!best || distance < best.away) best = { wall, away: distance, station, foot }
  }
  if (best && best.away <= best.wall.thickness / 2 + slack) {
    const offset = dot(minus(point, best.foot), pathNormal(best.wall.centreline, best.station))
    return { wall: best.wall, station: best.station, offset }
  }
  const near = best ? `; the nearest, ${best.wall.id}, is ${sayMillimetres(best.away)} away` : ''
  problems.push({
    code: 'dxf/off-wall',
    at: sayPlace(point),
    say: `${what} at ${sayPlace(point)} stands in no wall${near}. Move it onto the wall it belongs to.`,
  })
  return undefined
}

/** A length from an attribute such as `WIDTH`, written with its unit. */
export function attributeLength(block: DrawnBlock, tag: string, problems: Problem[]): Metres | undefined {
  const text = block.attributes[tag]
  if (text === undefined || text === '') return undefined
  const read = parseQuantity(text, 'length')
  if (read.ok) return read.value
  problems.push({
    code: 'dxf/attribute',
    at: sayPlace(block.point),
    say: `Attribute ${tag} of block “${block.name}” at ${sayPlace(block.point)}: ${read.problems[0]?.say ?? ''}`,
  })
  return undefined
}

/** The type a block names in its attribute TYPE, or else its layer's. */
export function typeOf<T>(
  block: DrawnBlock,
  fallback: string | undefined,
  types: Readonly<Record<string, T>>,
  problems: Problem[],
): T | undefined {
  const name = block.attributes.TYPE || fallback
  const place = sayPlace(block.point)
  if (name !== undefined && Object.hasOwn(types, name)) return types[name]
  const near = name === undefined ? undefined : closestName(name, Object.keys(types))
  const hint = near ? `did you mean “${near}”?` : `known: ${Object.keys(types).join(', ') || 'none'}`
  const say =
    name === undefined
      ? `Block “${block.name}” at ${place} has no attribute TYPE and its layer has no type in the job; ${hint}`
      : `Block “${block.name}” at ${place} is of type “${name}”, which the job does not have; ${hint}`
  problems.push({ code: 'dxf/unknown-type', at: place, say })
  return undefined
}

/** Ids: the attribute MARK, or the next free number after a letter. */
export function markOf(
  block: Pick<DrawnBlock, 'attributes'> | undefined,
  letter: string,
  used: Set<string>,
): string {
  const mark = block?.attributes.MARK?.trim()
  if (mark) {
    used.add(mark)
    return mark
  }
  let number = 1
  while (used.has(`${letter}${number}`)) number += 1
  used.add(`${letter}${number}`)
  return `${letter}${number}`
}
