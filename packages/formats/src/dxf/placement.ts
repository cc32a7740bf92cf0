import { flattenPath, type Path, type Point } from '@dawnlift/core/geometry'

/** An affine map of the plane: x' = a·x + c·y + e, y' = b·x + d·y + f. */
export interface Placement {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
}

export const inPlace: Placement = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }
/** Entities drawn with the z axis pointing down are seen from below: x is mirrored (the format's arbitrary-axis rule). */
export const mirrored: Placement = { ...inPlace, a: -1 }

/** First `inner`, then `outer`. */
export const within = (outer: Placement, inner: Placement): Placement => ({
  a: outer.a * inner.a + outer.c * inner.b,
  b: outer.b * inner.a + outer.d * inner.b,
  c: outer.a * inner.c + outer.c * inner.d,
  d: outer.b * inner.c + outer.d * inner.d,
  e: outer.a * inner.e + outer.c * inner.f + outer.e,
  f: outer.b * inner.e + outer.d * inner.f + outer.f,
})

export const placePoint = (p: Placement, [x, y]: Point): Point => [
  p.a * x + p.c * y + p.e,
  p.b * x + p.d * y + p.f,
]

const turns = (p: Placement): number => p.a * p.d - p.b * p.c
/** Whether circles stay circles. */
const keepsCircles = ({ a, b, c, d }: Placement): boolean => {
  const size = a * a + b * b + c * c + d * d
  return Math.abs(a * c + b * d) <= 1e-9 * size && Math.abs(a * a + b * b - c * c - d * d) <= 1e-9 * size
}

/** The path where it stands. Arcs that would become elliptic are flattened to within the tolerance first. */
export function placePath(placement: Placement, path: Path, tolerance: number): Path {
  const map = (points: readonly Point[]) => points.map(point => placePoint(placement, point))
  if (path.bulges.every(bulge => bulge === 0) || keepsCircles(placement)) {
    const sign = Math.sign(turns(placement))
    return {
      ...path,
      points: map(path.points),
      bulges: path.bulges.map(bulge => (bulge === 0 ? 0 : bulge * sign)),
    }
  }
  const scale = Math.max(Math.hypot(placement.a, placement.b), Math.hypot(placement.c, placement.d))
  // A millionth of its size is as fine as any plan needs, whatever scale a damaged file asks for.
  const points = map(flattenPath(path, Math.max(tolerance / scale, 1e-6 * extent(path))))
  return { points, bulges: new Array(points.length - (path.closed ? 0 : 1)).fill(0), closed: path.closed }
}

function extent({ points }: Path): number {
  const [xs, ys] = [points.map(point => point[0]), points.map(point => point[1])]
  return Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys), Number.MIN_VALUE)
}

/** Whether the numbers of a placement are of this world: no stretch or shift beyond a thousand million units. */
export const isSound = (placement: Placement): boolean =>
  Object.values(placement).every(value => Math.abs(value) <= 1e9)
