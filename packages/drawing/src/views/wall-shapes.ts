import type { Point } from '@dawnlift/core/geometry'
import type { Embed, Job, Opening, Wall } from '@dawnlift/core/job'
import type { Section } from '@dawnlift/core/section'
import { placeAt } from '@dawnlift/core/trade'
import { type Fill, sectionFill } from '../paper/index.js'

/** A point beside a wall: station along it, metres to its left. */
export function beside(wall: Wall, station: number, left: number): Point {
  const { point, heading } = placeAt(wall.centreline, station)
  return [point[0] - left * Math.sin(heading), point[1] + left * Math.cos(heading)]
}

/** Outline in plan of a piece of wall between two stations and two distances to the left. */
export function pieceOf(
  wall: Wall,
  along: readonly [number, number],
  left: readonly [number, number],
): Point[] {
  const steps = Math.max(1, Math.ceil((along[1] - along[0]) / 0.25))
  const straight = wall.centreline.bulges.every(bulge => bulge === 0) && wall.centreline.points.length === 2
  const count = straight ? 1 : steps
  const stations = Array.from({ length: count + 1 }, (_, i) => along[0] + ((along[1] - along[0]) * i) / count)
  return [
    ...stations.map(s => beside(wall, s, left[0])),
    ...stations.reverse().map(s => beside(wall, s, left[1])),
  ]
}

export const openingPiece = (wall: Wall, opening: Opening): Point[] =>
  pieceOf(
    wall,
    [opening.at - opening.width / 2, opening.at + opening.width / 2],
    [-wall.thickness / 2, wall.thickness / 2],
  )

/** Where in the thickness an embed lies: metres to the left of the centreline. */
export function embedDepth(wall: Wall, embed: Embed): readonly [number, number] {
  const half = wall.thickness / 2
  switch (embed.face) {
    case 'left':
      return [half - embed.depth, half]
    case 'right':
      return [-half, -half + embed.depth]
    case 'middle':
      return [-embed.depth / 2, embed.depth / 2]
    case 'through':
      return [-half, half]
  }
}

export const embedPiece = (wall: Wall, embed: Embed): Point[] =>
  pieceOf(wall, [embed.at - embed.width / 2, embed.at + embed.width / 2], embedDepth(wall, embed))

export const wallById = (job: Job, id: string): Wall | undefined => job.walls.find(wall => wall.id === id)

/** Sections keep their fill by their place in the plan. */
export function fillOf(sections: readonly Section[], id: string): Fill {
  const index = sections.findIndex(section => section.id === id)
  return index < 0 ? 'bead' : sectionFill(index)
}
