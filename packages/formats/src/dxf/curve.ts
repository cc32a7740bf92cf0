import type { Point } from '@dawnlift/core/geometry'

/** Halvings of one stretch: enough for 4 m at a micrometre, and a stop for curves that never settle. */
const DEEPEST = 14

/**
 * Points along a curve so that the chords stay within the tolerance of it.
 * Each stretch is halved until the curve at a quarter, a half and three quarters lies that near to its chord.
 */
export function flattenCurve(
  curve: (share: number) => Point,
  starts: readonly number[],
  tolerance: number,
): readonly Point[] {
  const points: Point[] = [curve(starts[0] ?? 0)]
  for (let i = 1; i < starts.length; i++) halve(curve, starts[i - 1]!, starts[i]!, tolerance, points, 0)
  return points
}

function halve(
  curve: (share: number) => Point,
  from: number,
  to: number,
  tolerance: number,
  points: Point[],
  depth: number,
): void {
  const [a, b] = [curve(from), curve(to)]
  const near = [0.25, 0.5, 0.75].every(
    share => offChord(curve(from + (to - from) * share), a, b) <= tolerance,
  )
  if (depth >= DEEPEST || (near && depth > 0)) {
    points.push(b)
    return
  }
  const middle = (from + to) / 2
  halve(curve, from, middle, tolerance, points, depth + 1)
  halve(curve, middle, to, tolerance, points, depth + 1)
}

function offChord(p: Point, a: Point, b: Point): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const squared = dx * dx + dy * dy
  const share =
    squared > 0 ? Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / squared)) : 0
  return Math.hypot(p[0] - a[0] - share * dx, p[1] - a[1] - share * dy)
}

export interface Ellipse {
  readonly centre: Point
  /** From the centre to the end of the long axis. */
  readonly axis: Point
  readonly ratio: number
  /** Parameters, not angles; the curve runs from start up to end. */
  readonly start: number
  readonly end: number
}

/** c + axis·cos t + ratio·axis⊥·sin t */
export function flattenEllipse(
  { centre, axis, ratio, start, end }: Ellipse,
  tolerance: number,
): readonly Point[] {
  const sweep = end > start ? end - start : end - start + 2 * Math.PI
  const at = (t: number): Point => [
    centre[0] + axis[0] * Math.cos(t) - ratio * axis[1] * Math.sin(t),
    centre[1] + axis[1] * Math.cos(t) + ratio * axis[0] * Math.sin(t),
  ]
  const quarters = Math.max(1, Math.ceil(sweep / (Math.PI / 2) - 1e-9))
  return flattenCurve(
    at,
    Array.from({ length: quarters + 1 }, (_, i) => start + (sweep * i) / quarters),
    tolerance,
  )
}

export interface Spline {
  readonly degree: number
  readonly knots: readonly number[]
  readonly points: readonly Point[]
  /** One a control point; all 1 for a plain B-spline. */
  readonly weights: readonly number[]
}

/** Whether knots, points and degree belong together, so that the curve is defined. */
export const isSpline = ({ degree, knots, points, weights }: Spline): boolean =>
  degree >= 1 &&
  degree <= 15 &&
  points.length > degree &&
  knots.length === points.length + degree + 1 &&
  weights.length === points.length &&
  weights.every(weight => weight > 0) &&
  knots.every((knot, i) => Number.isFinite(knot) && (i === 0 || knot >= knots[i - 1]!)) &&
  knots[points.length]! > knots[degree]!

/** Every knot span is flattened by itself, since the curve may kink at a knot. */
export function flattenSpline(spline: Spline, tolerance: number): readonly Point[] {
  const { degree, knots, points } = spline
  const spans = [...new Set(knots.slice(degree, points.length + 1))]
  return flattenCurve(t => splinePoint(spline, t), spans, tolerance)
}

/** de Boor's algorithm in homogeneous coordinates. */
export function splinePoint({ degree, knots, points, weights }: Spline, t: number): Point {
  let span = degree
  while (span < points.length - 1 && t >= knots[span + 1]!) span += 1
  const d = Array.from({ length: degree + 1 }, (_, j) => {
    const i = j + span - degree
    const weight = weights[i]!
    return [points[i]![0] * weight, points[i]![1] * weight, weight] as [number, number, number]
  })
  for (let r = 1; r <= degree; r++)
    for (let j = degree; j >= r; j--) {
      const [low, high] = [knots[j + span - degree]!, knots[j + 1 + span - r]!]
      const share = high > low ? (t - low) / (high - low) : 0
      for (const k of [0, 1, 2] as const) d[j]![k] = (1 - share) * d[j - 1]![k] + share * d[j]![k]
    }
  const [x, y, w] = d[degree]!
  return [x / w, y / w]
}
