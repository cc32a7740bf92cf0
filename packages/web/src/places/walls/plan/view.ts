import type { Bounds, Point } from '@dawnlift/core/geometry'

/** What the window shows: the building point in its middle, and pixels to the metre. y is up in the building. */
export interface View {
  readonly middle: Point
  readonly scale: number
}

export interface WindowSize {
  readonly width: number
  readonly height: number
}

const leastScale = 4
const mostScale = 4000
const margin = 44

/** All of it, with room for names round it. */
export function fitView({ least, most }: Bounds, { width, height }: WindowSize): View {
  const wide = Math.max(0.1, most[0] - least[0])
  const high = Math.max(0.1, most[1] - least[1])
  const scale = Math.min(Math.max(1, width - 2 * margin) / wide, Math.max(1, height - 2 * margin) / high)
  return { middle: [(least[0] + most[0]) / 2, (least[1] + most[1]) / 2], scale: within(scale) }
}

export const toScreen = ({ middle, scale }: View, { width, height }: WindowSize, [x, y]: Point): Point => [
  width / 2 + (x - middle[0]) * scale,
  height / 2 - (y - middle[1]) * scale,
]

export const toBuilding = ({ middle, scale }: View, { width, height }: WindowSize, [x, y]: Point): Point => [
  middle[0] + (x - width / 2) / scale,
  middle[1] - (y - height / 2) / scale,
]

/** Larger by a factor; what lies under `at` stays there. */
export function zoomed(view: View, size: WindowSize, factor: number, at?: Point): View {
  const pin = at ?? [size.width / 2, size.height / 2]
  const under = toBuilding(view, size, pin)
  const scale = within(view.scale * factor)
  return {
    middle: [under[0] - (pin[0] - size.width / 2) / scale, under[1] + (pin[1] - size.height / 2) / scale],
    scale,
  }
}

/** Moved with the hand: pixels to the right and down. */
export const panned = ({ middle, scale }: View, right: number, down: number): View => ({
  middle: [middle[0] - right / scale, middle[1] + down / scale],
  scale,
})

/** Two fingers: what lay under each stays under it. */
export function pinched(
  view: View,
  size: WindowSize,
  before: readonly [Point, Point],
  after: readonly [Point, Point],
): View {
  const apart = ([a, b]: readonly [Point, Point]) => Math.max(1, Math.hypot(a[0] - b[0], a[1] - b[1]))
  const centre = ([a, b]: readonly [Point, Point]): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  const [from, to] = [centre(before), centre(after)]
  return panned(zoomed(view, size, apart(after) / apart(before), from), to[0] - from[0], to[1] - from[1])
}

const within = (scale: number): number => Math.min(mostScale, Math.max(leastScale, scale))
