import type { Path, Point } from '@dawnlift/core/geometry'

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
