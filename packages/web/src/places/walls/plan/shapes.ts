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

/** SVG path data of a ring, in metres with y up. */
export const ringData = (points: readonly Point[]): string =>
  `M${points.map(([x, y]) => `${x.toFixed(4)} ${y.toFixed(4)}`).join('L')}Z`

/** SVG path data of a path, arcs as arcs. In a frame with y up an arc turning left has sweep flag 1. */
export function pathData({ points, bulges, closed }: Path): string {
  const text = ([x, y]: Point) => `${x.toFixed(4)} ${y.toFixed(4)}`
  const links = bulges.map((bulge, index) => {
    const [from, to] = [points[index]!, points[(index + 1) % points.length]!]
    if (Math.abs(bulge) < 2e-7) return `L${text(to)}`
    const radius =
      (Math.hypot(to[0] - from[0], to[1] - from[1]) * (1 + bulge * bulge)) / (4 * Math.abs(bulge))
    return `A${radius.toFixed(4)} ${radius.toFixed(4)} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 1 : 0} ${text(to)}`
  })
  return `M${text(points[0]!)}${links.join('')}${closed ? 'Z' : ''}`
}
