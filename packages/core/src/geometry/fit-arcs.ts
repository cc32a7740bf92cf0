import type { Metres, Radians } from '../quantity/index.js'
import { chordTolerance } from './flatten.js'
import type { Path, Point } from './path.js'
import { cross, dot, minus, turnBetween } from './point.js'

/** Largest distance between a fitted arc and the points it replaces. */
export const fitTolerance: Metres = 2e-5
/** Largest rise of a fitted arc over the chords it replaces: offsetting outward makes chords longer. */
const mostRise: Metres = 2 * chordTolerance
/** Chords of one arc turn less than this into each other; a sharper turn is a corner. */
const mostTurn: Radians = 0.4
const fewestChords = 3

/**
 * Finds runs of short chords that lie on a circle and makes each run one arc: what the polygon engine flattened is an
 * arc again. Straight edges and corners stay exactly where they are.
 */
export function fitArcs(points: readonly Point[], closed: boolean, tolerance: Metres = fitTolerance): Path {
  const line = closed ? fromCorner(points) : points
  const last = line.length - 1
  const kept: Point[] = [line[0]!]
  const bulges: number[] = []
  for (let i = 0; i < last; ) {
    const end = longestRun(line, i, tolerance)
    bulges.push(end > i + 1 ? runBulge(line, i, end) : 0)
    kept.push(line[end]!)
    i = end
  }
  if (closed) kept.pop()
  return { points: kept, bulges, closed }
}

/** A closed ring written from its sharpest corner, first point repeated at the end. */
function fromCorner(ring: readonly Point[]): readonly Point[] {
  let [best, sharpest] = [0, -1]
  ring.forEach((point, i) => {
    const before = minus(point, ring.at(i - 1)!)
    const after = minus(ring[(i + 1) % ring.length]!, point)
    const turn = Math.abs(turnBetween(before, after))
    if (turn > sharpest + 1e-6) [best, sharpest] = [i, turn]
  })
  return [...ring.slice(best), ...ring.slice(0, best + 1)]
}

/** Index of the last point that one arc from `start` can reach; `start + 1` when there is none. Galloping search. */
function longestRun(line: readonly Point[], start: number, tolerance: Metres): number {
  const fits = (end: number) => end < line.length && fitsArc(line, start, end, tolerance)
  let good = start + fewestChords
  if (!fits(good)) return start + 1
  let step = 1
  while (fits(good + step)) {
    good += step
    step *= 2
  }
  for (; step >= 1; step = Math.floor(step / 2)) if (fits(good + step)) good += step
  return good
}

function fitsArc(line: readonly Point[], start: number, end: number, tolerance: Metres): boolean {
  const circle = circleThrough(line[start]!, line[(start + end) >> 1]!, line[end]!)
  if (!circle) return false
  const { centre, radius } = circle
  let total = 0
  // Asked of every point of every ring many times over: plain numbers.
  let [x, y] = [line[start]![0] - centre[0], line[start]![1] - centre[1]]
  for (let i = start; i < end; i++) {
    const next = line[i + 1]!
    const [u, v] = [next[0] - centre[0], next[1] - centre[1]]
    const step = Math.atan2(x * v - y * u, x * u + y * v)
    if (Math.abs(step) > mostTurn || step * total < 0) return false
    if (Math.abs(Math.sqrt(x * x + y * y) - radius) > tolerance) return false
    // The rise of a chord over its arc.
    if (radius * (1 - Math.cos(step / 2)) > mostRise) return false
    total += step
    x = u
    y = v
  }
  return Math.abs(total) < 1.75 * Math.PI
}

function runBulge(line: readonly Point[], start: number, end: number): number {
  const [a, m, b] = [line[start]!, line[(start + end) >> 1]!, line[end]!]
  return bulgeThrough(a, m, b)
}

/** Bulge of the arc from a to b that passes through m. */
export function bulgeThrough(a: Point, m: Point, b: Point): number {
  // The inscribed angle at m is half the arc outside m, so the turn from a→m to m→b is half the sweep.
  return Math.tan(turnBetween(minus(m, a), minus(b, m)) / 2)
}

export function circleThrough(a: Point, b: Point, c: Point): { centre: Point; radius: Metres } | undefined {
  const [u, v] = [minus(b, a), minus(c, a)]
  const slant = 2 * cross(u, v)
  if (Math.abs(slant) < 1e-14) return undefined
  const [uu, vv] = [dot(u, u), dot(v, v)]
  const x = (v[1] * uu - u[1] * vv) / slant
  const y = (u[0] * vv - v[0] * uu) / slant
  return { centre: [a[0] + x, a[1] + y], radius: Math.hypot(x, y) }
}
