import type { Point } from '../geometry/index.js'
import type { Job, Wall } from '../job/index.js'
import type { Metres, Radians } from '../quantity/index.js'
import type { Section, Stretch } from '../section/index.js'
import { faceBearing } from '../weather/index.js'
import type { WallBuild } from './wall-cells.js'

/** A straight piece of a wall; an arc counts as its chord. */
export interface WallPiece {
  readonly from: Point
  readonly to: Point
  readonly length: Metres
}

/** The pieces of a section whose faces look one way. */
export interface Facing {
  readonly build: WallBuild
  readonly leftBearing: Radians
  readonly length: Metres
  readonly pieces: readonly WallPiece[]
}

/** Ways nearer than this look the same to the sun: 22.5°. */
const WAY: Radians = Math.PI / 8

/** The ways a section's walls look, opposite ones together: a wall has both faces anyway. */
export function facingsOf(job: Pick<Job, 'walls' | 'site' | 'print'>, section: Section): readonly Facing[] {
  const ways = new Map<string, Facing>()
  for (const stretch of section.stretches) {
    const wall = job.walls.find(each => each.id === stretch.wall)
    if (!wall) continue
    const { kind } = wall.makeUp
    const build = { kind, beadWidth: job.print.beadWidth, thickness: wall.thickness }
    for (const piece of piecesOf(wall, stretch)) {
      const bearing = faceBearing(piece.from, piece.to, 'left', job.site.yAxisBearing) % Math.PI
      const way = Math.round(bearing / WAY) % Math.round(Math.PI / WAY)
      const key = `${kind} ${wall.thickness} ${way}`
      const known = ways.get(key)
      ways.set(key, {
        build,
        leftBearing: way * WAY,
        length: (known?.length ?? 0) + piece.length,
        pieces: [...(known?.pieces ?? []), piece],
      })
    }
  }
  return [...ways.values()]
}

/** The straight lines of a wall between two stations. */
export function piecesOf(
  { centreline: { points, closed } }: Pick<Wall, 'centreline'>,
  { from, to }: Pick<Stretch, 'from' | 'to'>,
): readonly WallPiece[] {
  const corners = closed ? [...points, points[0]!] : points
  let station = 0
  return corners.slice(1).flatMap((end, index) => {
    const start = corners[index]!
    const whole = Math.hypot(end[0] - start[0], end[1] - start[1])
    const [a, b] = [Math.max(from, station) - station, Math.min(to, station + whole) - station]
    station += whole
    const along = (at: Metres): Point => [
      start[0] + ((end[0] - start[0]) * at) / whole,
      start[1] + ((end[1] - start[1]) * at) / whole,
    ]
    return b - a > 1e-6 ? [{ from: along(a), to: along(b), length: b - a }] : []
  })
}
