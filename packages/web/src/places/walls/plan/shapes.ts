import { type Path, type Point, pathLength, pathNormal, pathPoint } from '@dawnlift/core/geometry'
import type { Column, Embed, Opening, Wall } from '@dawnlift/core/job'

/** A point beside a wall: station along it, metres to its left. */
export function beside(path: Path, station: number, left: number): Point {
  const on = Math.min(Math.max(0, station), pathLength(path))
  const [x, y] = pathPoint(path, on)
  const [nx, ny] = pathNormal(path, on)
  return [x + nx * left, y + ny * left]
}

/** Outline of a piece of wall between two stations and two distances to the left; curves in steps of 5 cm. */
export function pieceOf(
  { centreline }: Wall,
  [from, to]: readonly [number, number],
  [right, left]: readonly [number, number],
): readonly Point[] {
  const curved = centreline.bulges.some(bulge => bulge !== 0) || centreline.points.length > 2
  const count = curved ? Math.max(1, Math.ceil((to - from) / 0.05)) : 1
  const stations = Array.from({ length: count + 1 }, (_, index) => from + ((to - from) * index) / count)
  // Just inside the piece: at a corner the direction is that of the piece, not of the next wall.
  const inside = (station: number) => Math.min(to - 1e-6, Math.max(from + 1e-6, station))
  return [
    ...stations.map(station => beside(centreline, inside(station), left)),
    ...stations.reverse().map(station => beside(centreline, inside(station), right)),
  ]
}

export const openingPiece = (wall: Wall, { at, width }: Opening): readonly Point[] =>
  pieceOf(wall, [at - width / 2, at + width / 2], [-wall.thickness / 2, wall.thickness / 2])

/** A lintel lies on its bearings on both sides of the opening. */
export const lintelPiece = (wall: Wall, { at, width, lintel }: Opening): readonly Point[] => {
  const half = width / 2 + (lintel?.bearing ?? 0)
  return pieceOf(wall, [at - half, at + half], [-wall.thickness * 0.3, wall.thickness * 0.3])
}

export const embedPiece = (wall: Wall, embed: Embed): readonly Point[] =>
  pieceOf(wall, [embed.at - embed.width / 2, embed.at + embed.width / 2], embedDepth(wall, embed))

export const columnPiece = (wall: Wall, { at, length, thickness }: Column): readonly Point[] =>
  pieceOf(wall, [at - length / 2, at + length / 2], [-thickness / 2, thickness / 2])

/** Where in the thickness an embed lies: metres to the left of the centreline, from right to left. */
function embedDepth({ thickness }: Wall, { face, depth }: Embed): readonly [number, number] {
  const half = thickness / 2
  switch (face) {
    case 'left':
      return [half - depth, half]
    case 'right':
      return [-half, depth - half]
    case 'middle':
      return [-depth / 2, depth / 2]
    case 'through':
      return [-half, half]
  }
}
