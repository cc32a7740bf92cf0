import type { DrawnBand } from '../../../state/band-post.js'
import type { Standing } from './look.js'

/** Layers of a band that are drawn as one. */
export interface Course {
  readonly toLayer: number
  readonly layers: number
  readonly share: number
}

/** Shades told apart where layers are drawn together. */
const shades = 24

/** What stands of a band: each layer by itself, or those of one shade together, which is far less to draw. */
export function coursesOf(
  { fromLayer, toLayer }: Pick<DrawnBand, 'fromLayer' | 'toLayer'>,
  { layers, shares }: Standing[string],
  together: boolean,
): readonly Course[] {
  const courses: Course[] = []
  for (let layer = fromLayer; layer <= Math.min(toLayer, layers); layer++) {
    const exact = shares[layer - 1] ?? 0
    const share = together ? Math.round(exact * shades) / shades : exact
    const below = courses.at(-1)
    if (together && below?.share === share)
      courses[courses.length - 1] = { toLayer: layer, layers: below.layers + 1, share }
    else courses.push({ toLayer: layer, layers: 1, share })
  }
  return courses
}
