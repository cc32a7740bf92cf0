import type { Path, Point } from '@dawnlift/core/geometry'
import type { IArcEntity, ICircleEntity, IEllipseEntity, IEntity, ILineEntity, IPoint } from 'dxf-parser'
import { type Ellipse, flattenEllipse, flattenSpline, isSpline } from './curve.js'
import { type Group, type GroupedEntity, hasFlag, isGrouped, numbersOf } from './parser-entities.js'

const flat = ({ x, y }: IPoint): Point => [x, y]
/** Coordinates beyond a thousand million units come from damage, not from a drafter. */
const finite = (path: Path): boolean =>
  path.points.every(point => point.every(value => Math.abs(value) <= 1e9)) &&
  path.bulges.every(bulge => Math.abs(bulge) <= 1e6)

/**
 * The entity's path in its own coordinates; `damaged` when its numbers make none; nothing for other entities.
 * `vertices` are the VERTEX entities that follow a POLYLINE.
 */
export function entityPath(
  entity: IEntity,
  tolerance: number,
  vertices: readonly GroupedEntity[] = [],
): Path | 'damaged' | undefined {
  const path = pathOf(entity, tolerance, vertices)
  if (path === undefined || path === 'damaged') return path
  return path.points.length >= 2 && finite(path) ? path : 'damaged'
}

function pathOf(
  entity: IEntity,
  tolerance: number,
  vertices: readonly GroupedEntity[],
): Path | 'damaged' | undefined {
  try {
    switch (entity.type) {
      case 'LINE':
        return open((entity as ILineEntity).vertices.map(flat))
      case 'LWPOLYLINE':
        return isGrouped(entity) ? polyline(lightCorners(entity.groups), hasFlag(entity, 1)) : 'damaged'
      case 'POLYLINE':
        return isGrouped(entity) ? oldPolyline(entity, vertices) : 'damaged'
      case 'ARC':
        return arc(entity as IArcEntity)
      case 'CIRCLE':
        return circle(entity as ICircleEntity)
      case 'ELLIPSE':
        return ellipse(entity as IEllipseEntity, tolerance)
      case 'SPLINE':
        return spline(entity, tolerance)
      default:
        return undefined
    }
  } catch {
    // The parser leaves fields away that the file leaves away; what cannot be put together is damaged, not fatal.
    return 'damaged'
  }
}

const open = (points: readonly Point[]): Path => ({
  points,
  bulges: new Array(Math.max(0, points.length - 1)).fill(0),
  closed: false,
})

interface Corner {
  readonly point: Point
  readonly bulge: number
}

/** Each code 10 begins a corner; its 20 and 42 follow it. */
function lightCorners(groups: readonly Group[]): readonly Corner[] {
  const corners: { point: [number, number]; bulge: number }[] = []
  for (const { code, value } of groups) {
    const last = corners.at(-1)
    if (code === 10) corners.push({ point: [Number(value), Number.NaN], bulge: 0 })
    else if (code === 20 && last) last.point[1] = Number(value)
    else if (code === 42 && last) last.bulge = Number(value)
  }
  return corners
}

function polyline(corners: readonly Corner[], closed: boolean): Path {
  const points = corners.map(corner => corner.point)
  const bulges = corners.map(corner => corner.bulge)
  // Many programs repeat the first corner of a closed polyline.
  const [first, last] = [points[0], points.at(-1)]
  if (closed && first && last && points.length > 2 && first[0] === last[0] && first[1] === last[1])
    return { points: points.slice(0, -1), bulges: bulges.slice(0, -1), closed }
  return { points, bulges: closed ? bulges : bulges.slice(0, -1), closed }
}

/** Flags of POLYLINE and VERTEX: 1 closed, 16 mesh or (of a vertex) frame point of a curve fit, 64 polyface. */
function oldPolyline(entity: GroupedEntity, vertices: readonly GroupedEntity[]): Path | undefined {
  if (hasFlag(entity, 16) || hasFlag(entity, 64)) return undefined
  const corners = vertices
    .filter(vertex => !hasFlag(vertex, 16))
    .map((vertex): Corner => {
      const one = (code: number) => numbersOf(vertex, code)[0]
      return { point: [one(10) ?? Number.NaN, one(20) ?? Number.NaN], bulge: one(42) ?? 0 }
    })
  return polyline(corners, hasFlag(entity, 1))
}

function arc({ center, radius, startAngle, endAngle }: IArcEntity): Path {
  const sweep = positiveTurn(endAngle - startAngle) || 2 * Math.PI
  const at = (angle: number): Point => [
    center.x + radius * Math.cos(angle),
    center.y + radius * Math.sin(angle),
  ]
  const middle = startAngle + sweep / 2
  // Two halves: the bulge of an arc near a whole turn runs off to infinity.
  return {
    points: [at(startAngle), at(middle), at(startAngle + sweep)],
    bulges: [Math.tan(sweep / 8), Math.tan(sweep / 8)],
    closed: false,
  }
}

const circle = ({ center, radius }: ICircleEntity): Path => ({
  points: [
    [center.x - radius, center.y],
    [center.x + radius, center.y],
  ],
  bulges: [1, 1],
  closed: true,
})

function ellipse(entity: IEllipseEntity, tolerance: number): Path {
  const shape: Ellipse = {
    centre: flat(entity.center),
    axis: flat(entity.majorAxisEndPoint),
    ratio: entity.axisRatio,
    start: entity.startAngle ?? 0,
    end: entity.endAngle ?? 2 * Math.PI,
  }
  const whole = Math.abs(positiveTurn(shape.end - shape.start)) < 1e-9
  const points = flattenEllipse(shape, tolerance)
  return whole ? closedRing(points.slice(0, -1)) : open(points)
}

const closedRing = (points: readonly Point[]): Path => ({ points, bulges: points.map(() => 0), closed: true })

function spline(entity: IEntity, tolerance: number): Path | 'damaged' {
  if (!isGrouped(entity)) return 'damaged'
  const ys = numbersOf(entity, 20)
  const points = numbersOf(entity, 10).map((x, i): Point => [x, ys[i] ?? Number.NaN])
  const weights = numbersOf(entity, 41)
  const shape = {
    degree: numbersOf(entity, 71)[0] ?? 3,
    knots: numbersOf(entity, 40),
    points,
    weights: weights.length === points.length ? weights : points.map(() => 1),
  }
  if (isSpline(shape)) return open(flattenSpline(shape, tolerance))
  const fitYs = numbersOf(entity, 21)
  const fit = numbersOf(entity, 11).map((x, i): Point => [x, fitYs[i] ?? Number.NaN])
  // Without control points the curve itself is not in the file, only points on it: not ours to invent.
  return fit.length === 2 ? open(fit) : 'damaged'
}

const positiveTurn = (angle: number): number => {
  const turned = angle % (2 * Math.PI)
  return turned < -1e-12 ? turned + 2 * Math.PI : Math.max(0, turned)
}
