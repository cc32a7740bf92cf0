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
import type { WebPattern } from '../job/index.js'
import type { Metres } from '../quantity/index.js'

/** A vertex of a tie: station along the centreline and distance left of it. */
type Place = readonly [Metres, Metres]

/** One link of a tie: straight, along the wall at its distance, or an arc through a place. */
type Link =
  | { readonly to: Place; readonly how: 'straight' | 'along' }
  | { readonly to: Place; readonly via: Place }

interface Tie {
  readonly start: Place
  readonly links: readonly Link[]
}

/** How far a face stands out of its plane at a station, left (+1) or right (−1): a tie follows its wythes. */
export type Swell = (station: Metres, side: 1 | -1) => Metres

/** Half pitches that fit the run: whole, as near the wanted pitch as may be. */
export const halfPitches = (run: Metres, pitch: Metres): number => Math.max(1, Math.round(run / (pitch / 2)))

/**
 * The tie between two wythes from one station to another, as one unbroken path that starts and ends at a wythe. `reach`
 * is how far it swings to each side. No reach: it runs straight along the middle.
 */
export function tiePath(
  centreline: Path,
  pattern: WebPattern,
  from: Metres,
  to: Metres,
  reach: Metres,
  pitch: Metres,
  swell: Swell = () => 0,
): Path {
  if (reach < 1e-4) return subPath(centreline, from, to)
  const count = halfPitches(to - from, pitch)
  const half = (to - from) / count
  const build = { zigzag, crosstie, wave }[pattern]
  return drawTie(centreline, build(from, half, count, reach), reach, swell)
}

const side = (k: number, reach: Metres): Metres => (k % 2 === 0 ? -reach : reach)

function zigzag(from: Metres, half: Metres, count: number, reach: Metres): Tie {
  const links = Array.from({ length: count }, (_, k): Link => {
    return { to: [from + (k + 1) * half, side(k + 1, reach)], how: 'straight' }
  })
  return { start: [from, -reach], links }
}

/** Across, along one wythe, across, along the other. */
function crosstie(from: Metres, half: Metres, count: number, reach: Metres): Tie {
  const across = (k: number): Link => ({ to: [from + k * half, side(k + 1, reach)], how: 'straight' })
  const links: Link[] = [across(0)]
  for (let k = 1; k <= count; k++) {
    links.push({ to: [from + k * half, side(k, reach)], how: 'along' }, across(k))
  }
  return { start: [from, -reach], links }
}

/**
 * Arcs that pass into each other on the centreline without a corner. Where the cavity is deeper than half a half pitch
 * the arcs are half circles on straight legs.
 */
function wave(from: Metres, half: Metres, count: number, reach: Metres): Tie {
  const radius = Math.min(reach, half / 2) === reach ? 0 : half / 2
  const leg = radius > 0 ? reach - radius : 0
  const links: Link[] = []
  for (let k = 0; k <= count; k++) {
    const [peak, y] = [from + k * half, side(k, reach)]
    const foot = y < 0 ? -leg : leg
    const [enter, leave] = [peak - half / 2, peak + half / 2]
    if (k > 0 && leg > 0) links.push({ to: [enter, foot], how: 'straight' })
    if (k === 0) links.push({ to: [leave, foot], via: arcMiddle(peak, y, leave, foot) })
    else if (k === count) links.push({ to: [peak, y], via: arcMiddle(peak, y, enter, foot) })
    else links.push({ to: [leave, foot], via: [peak, y] })
    if (k < count && leg > 0) links.push({ to: [leave, 0], how: 'straight' })
  }
  return { start: [from, -reach], links }
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
