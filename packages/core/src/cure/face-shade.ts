import type { Lift } from '../campaign/index.js'
import type { Point } from '../geometry/index.js'
import type { Job, Site } from '../job/index.js'
import type { Instant, Metres, Radians, Share } from '../quantity/index.js'
import type { Section } from '../section/index.js'
import { type Neighbour, openSky, type SunPosition, solarPosition, sunlitShare } from '../weather/index.js'
import { type Facing, piecesOf, type WallPiece } from './facings.js'
import type { WallPlace } from './wall-weather.js'

type Side = 'left' | 'right'

/** What of the sun's beam (by the hour of the day) and of the sky reaches the two faces of one place. */
interface Shade {
  readonly lit: Readonly<Record<Side, Float64Array>>
  readonly sky: Readonly<Record<Side, Share>>
  /** Sun a day on both faces, as a share of its beam: places are ranked by it. */
  readonly dose: number
}

/** Tops are taken to a quarter of a metre: a layer more or less next door changes nothing. */
const STEP: Metres = 0.25

/** The walls that stand when a lift ends, as high as they are by then. */
export function standingWalls(
  job: Pick<Job, 'walls' | 'print'>,
  sections: readonly Section[],
  lifts: readonly Lift[],
  at: Instant,
): readonly Neighbour[] {
  return sections.flatMap(section => {
    const layers = lifts.reduce(
      (most, lift) => (lift.section === section.id && lift.end <= at ? Math.max(most, lift.lastLayer) : most),
      0,
    )
    const height = Math.round((layers * job.print.layerHeight) / STEP) * STEP
    if (height === 0) return []
    return section.stretches.flatMap(stretch => {
      const wall = job.walls.find(each => each.id === stretch.wall)
      return wall
        ? piecesOf(wall, stretch).map(({ from, to }) => ({ from, to, top: wall.base + height }))
        : []
    })
  })
}

/** What a facing's shade is asked for. */
export interface ShadeCase {
  readonly site: Pick<Site, 'latitude' | 'longitude' | 'yAxisBearing'>
  readonly facing: Facing
  readonly neighbours: readonly Neighbour[]
  /** Bottom and top of the lift. */
  readonly heights: readonly [bottom: Metres, top: Metres]
  /** Start of an hour of weather: shade is worked out for the day from it on and repeated. */
  readonly from: Instant
}

/**
 * The sunniest and the most shaded place of the faces that look one way; one only where they get the same sun within a tenth. Which
 * dries fastest and which matures last is between them.
 *
 * Places are the quarters of each straight piece. Assumes that walls still to be printed cast no shade, openings none less than the wall,
 * and that the sun's way on the second day holds for the cure: declination moves by at most 0.4° a day.
 */
export function facePlaces(input: ShadeCase): readonly WallPlace[] {
  const sun = Array.from({ length: 24 }, (_, hour) =>
    solarPosition(input.from + hour * 3600 + 1800, input.site.latitude, input.site.longitude),
  )
  const shades = input.facing.pieces.flatMap(piece =>
    [0.25, 0.75].map(share => shadeAt(input, sun, piece, share)),
  )
  const sunniest = shades.reduce((a, b) => (b.dose > a.dose ? b : a))
  const darkest = shades.reduce((a, b) => (b.dose < a.dose ? b : a))
  const kinds = darkest.dose > 0.9 * sunniest.dose ? [sunniest] : [sunniest, darkest]
  const { facing, heights, from } = input
  return kinds.map(({ lit, sky }) => ({
    leftBearing: facing.leftBearing,
    height: heights[1],
    skyView: sky,
    sunlit: (at, side) => lit[side][((Math.floor((at - from) / 3600) % 24) + 24) % 24]!,
  }))
}

function shadeAt(
  { site, facing, neighbours, heights }: ShadeCase,
  sun: readonly SunPosition[],
  piece: WallPiece,
  share: Share,
): Shade {
  const face = (side: Side) => {
    const point = facePoint(piece, share, side, facing.build.thickness)
    const bearing: Radians = facing.leftBearing + (side === 'left' ? 0 : Math.PI)
    const facingSun = sun.map(place =>
      place.altitude > 0 ? Math.cos(place.altitude) * Math.cos(place.azimuth - bearing) : 0,
    )
    const lit = Float64Array.from(sun, (place, hour) =>
      facingSun[hour]! > 0 ? sunlitShare(point, heights, place, site.yAxisBearing, neighbours) : 0,
    )
    const sky = openSky(point, (heights[0] + heights[1]) / 2, bearing, site.yAxisBearing, neighbours)
    // The sky of a clear day gives a face about what the beam gives it in an hour.
    const dose = facingSun.reduce((sum, cosine, hour) => sum + Math.max(0, cosine) * lit[hour]!, sky)
    return { lit, sky, dose }
  }
  const [left, right] = [face('left'), face('right')]
  return {
    lit: { left: left.lit, right: right.lit },
    sky: { left: left.sky, right: right.sky },
    dose: left.dose + right.dose,
  }
}

/** A point on a face, a centimetre before it. */
function facePoint({ from, to, length }: WallPiece, share: Share, side: Side, thickness: Metres): Point {
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length]
  const out = (thickness / 2 + 0.01) * (side === 'left' ? 1 : -1)
  return [from[0] + ux * length * share - uy * out, from[1] + uy * length * share + ux * out]
}
