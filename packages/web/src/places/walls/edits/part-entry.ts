import type { Path } from '@dawnlift/core/geometry'
import type { Column, Embed, Opening, Wall } from '@dawnlift/core/job'
import { lengthText, type Units } from './length-text.js'
import type { Entry } from './part-edits.js'

/** Everything about an opening, written out: what stands in for a drawn one. */
export const openingEntry = (opening: Opening, units: Units): Entry => ({
  id: opening.id,
  wall: opening.wall,
  kind: opening.kind,
  at: lengthText(opening.at, units),
  width: lengthText(opening.width, units),
  sill: lengthText(opening.sill, units),
  head: lengthText(opening.head, units),
  ...(opening.lintel
    ? {
        lintel: {
          kind: opening.lintel.kind,
          height: lengthText(opening.lintel.height, units),
          bearing: lengthText(opening.lintel.bearing, units),
        },
      }
    : {}),
})

export const embedEntry = (embed: Embed, units: Units): Entry => ({
  id: embed.id,
  wall: embed.wall,
  kind: embed.kind,
  trade: embed.trade,
  face: embed.face,
  at: lengthText(embed.at, units),
  bottom: lengthText(embed.bottom, units),
  width: lengthText(embed.width, units),
  height: lengthText(embed.height, units),
  depth: lengthText(embed.depth, units),
  ...(embed.head ? { head: embed.head } : {}),
  method: embed.method,
})

export const columnEntry = (column: Column, units: Units): Entry => ({
  id: column.id,
  wall: column.wall,
  at: lengthText(column.at, units),
  length: lengthText(column.length, units),
  thickness: lengthText(column.thickness, units),
  cover: lengthText(column.cover, units),
})

export const wallEntry = (wall: Wall, units: Units): Entry => ({
  id: wall.id,
  ...(wall.name === wall.id ? {} : { name: wall.name }),
  path: pathEntry(wall.centreline, units),
  makeUp: wall.makeUp.kind,
  thickness: lengthText(wall.thickness, units),
  height: lengthText(wall.top - wall.base, units),
  ...(wall.base === 0 ? {} : { base: lengthText(wall.base, units) }),
  ...(wall.makeUp.kind === 'double'
    ? { web: wall.makeUp.web, webPitch: lengthText(wall.makeUp.webPitch, units) }
    : {}),
  ...(wall.relief ? { relief: reliefEntry(wall.relief, units) } : {}),
})

const reliefEntry = (relief: NonNullable<Wall['relief']>, units: Units): Entry => ({
  face: relief.face,
  pattern: relief.pattern,
  depth: lengthText(relief.depth, units),
  pitch: lengthText(relief.pitch, units),
  rise: lengthText(relief.rise, units),
  ...(relief.ramp ? { ramp: relief.ramp.map(each => lengthText(each, units)) } : {}),
})

/** Corners of a centreline; an arc says where it goes and its bulge. A closed one ends where it starts. */
export function pathEntry({ points, bulges, closed }: Path, units: Units): readonly unknown[] {
  const corner = (index: number) => points[index % points.length]!.map(each => lengthText(each, units))
  const last = closed ? points.length : points.length - 1
  return Array.from({ length: last + 1 }, (_, index) => {
    const bulge = index === 0 ? 0 : (bulges[index - 1] ?? 0)
    return bulge === 0 ? corner(index) : { to: corner(index), bulge: Number(bulge.toFixed(9)) }
  })
}
