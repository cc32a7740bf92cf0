import {
  bulgeThrough,
  offsetPath,
  type Path,
  type Point,
  pathNormal,
  pathPoint,
  plus,
  subPath,
  times,
} from '../geometry/index.js'
import type { PrintRules, WebPattern } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Link, Place, Tie } from './tie-link.js'
import type { Peak } from './tie-peak.js'
import { roundedCrosstie, roundedZigzag } from './tie-round.js'

/** How far a face stands out of its plane at a station, left (+1) or right (−1): a tie follows its wythes. */
export type Swell = (station: Metres, side: 1 | -1) => Metres

/** Straight between two turns of a tie: one bead width, the shortest stretch over which an axis can be told to stand. */
export const tieLeg = ({ beadWidth }: Pick<PrintRules, 'beadWidth'>): Metres => beadWidth

/** What a tie keeps to besides its peaks. */
export interface TieShape {
  readonly swell?: Swell
  /** Corners become the widest arcs that leave this much of each leg straight; missing: corners stay sharp. */
  readonly leg?: Metres
}

/**
 * The tie between two wythes from its first peak to its last, as one unbroken path that starts and ends at a wythe.
 * `reach` is how far it swings to each side. No reach: it runs straight along the middle.
 */
export function tiePath(
  centreline: Path,
  pattern: WebPattern,
  peaks: readonly Peak[],
  reach: Metres,
  { swell = () => 0, leg }: TieShape = {},
): Path {
  if (reach < 1e-4) return subPath(centreline, peaks[0]!.station, peaks.at(-1)!.station)
  const places = peaks.map(({ station, side }): Place => [station, side * reach])
  return drawTie(centreline, tieOf(pattern, places, leg), reach, swell)
}

function tieOf(pattern: WebPattern, places: readonly Place[], leg: Metres | undefined): Tie {
  switch (pattern) {
    case 'wave':
      return wave(places)
    case 'zigzag':
      return leg === undefined ? zigzag(places) : roundedZigzag(places, leg)
    case 'crosstie':
      return leg === undefined ? crosstie(crossings(places)) : roundedCrosstie(crossings(places), leg)
  }
}

const zigzag = (places: readonly Place[]): Tie => ({
  start: places[0]!,
  links: places.slice(1).map(to => ({ to, how: 'straight' })),
})

/** A tie goes across at every peak but the ends, where a jamb or a junction ties already. */
const crossings = (places: readonly Place[]): readonly Place[] =>
  places.length > 2 ? places.slice(1, -1) : [halfWay(places[0]!, places[1]!)]

/** Across at every foot, and along one wythe or the other between. */
function crosstie(feet: readonly Place[]): Tie {
  const across = ([station, away]: Place): Link => ({ to: [station, -away], how: 'straight' })
  const links = feet.flatMap((to, i): Link[] => (i === 0 ? [across(to)] : [{ to, how: 'along' }, across(to)]))
  return { start: feet[0]!, links }
}

const halfWay = (a: Place, b: Place): Place => [(a[0] + b[0]) / 2, a[1]]

/**
 * From peak to peak two arcs that pass into each other half way without a corner. Where the cavity is deeper than the
 * peaks are apart the arcs are quarter circles on a straight leg across.
 */
function wave(places: readonly Place[]): Tie {
  const links = places.slice(1).flatMap((to, i): Link[] => {
    const from = places[i]!
    const middle = (from[0] + to[0]) / 2
    const leg = Math.max(0, Math.abs(to[1]) - (to[0] - from[0]) / 2)
    const [leave, enter] = [Math.sign(from[1]) * leg, Math.sign(to[1]) * leg]
    const down: Link = { to: [middle, leave], via: arcMiddle(from[0], from[1], middle, leave) }
    const up: Link = { to, via: arcMiddle(to[0], to[1], middle, enter) }
    return leg > 0 ? [down, { to: [middle, enter], how: 'straight' }, up] : [down, up]
  })
  return { start: places[0]!, links }
}

/** Half way round the arc, at most a quarter circle, from its peak to one foot. */
function arcMiddle(peak: Metres, top: Metres, foot: Metres, base: Metres): Place {
  const [run, rise] = [Math.abs(foot - peak), Math.abs(top - base)]
  const radius = (run * run + rise * rise) / (2 * rise)
  const angle = Math.asin(Math.min(1, run / radius)) / 2
  const down = radius * (1 - Math.cos(angle))
  return [peak + Math.sign(foot - peak) * radius * Math.sin(angle), top - Math.sign(top - base) * down]
}

function drawTie(centreline: Path, { start, links }: Tie, reach: Metres, swell: Swell): Path {
  const at = ([station, away]: Place): Point => {
    const swollen = away * (1 + swell(station, away < 0 ? -1 : 1) / reach)
    return plus(pathPoint(centreline, station), times(pathNormal(centreline, station), swollen))
  }
  const points: Point[] = [at(start)]
  const bulges: number[] = []
  let place = start
  for (const link of links) {
    if ('via' in link) {
      bulges.push(bulgeThrough(at(place), at(link.via), at(link.to)))
      points.push(at(link.to))
    } else if (link.how === 'along') {
      const run = alongRun(centreline, place, link.to, at, swell)
      bulges.push(...run.bulges)
      points.push(...run.points.slice(1))
    } else {
      bulges.push(0)
      points.push(at(link.to))
    }
    place = link.to
  }
  return { points, bulges, closed: false }
}

/** Along a flat face the run keeps its lines and arcs; along a relief it takes a point every 20 mm. */
function alongRun(
  centreline: Path,
  [from, away]: Place,
  [to]: Place,
  at: (place: Place) => Point,
  swell: Swell,
): { readonly points: readonly Point[]; readonly bulges: readonly number[] } {
  const side = away < 0 ? -1 : 1
  const count = Math.ceil((to - from) / 0.02)
  const stations = Array.from({ length: count + 1 }, (_, k) => from + ((to - from) * k) / count)
  if (stations.every(station => swell(station, side) === 0))
    return offsetPath(subPath(centreline, from, to), away)
  return { points: stations.map(station => at([station, away])), bulges: stations.slice(1).map(() => 0) }
}
