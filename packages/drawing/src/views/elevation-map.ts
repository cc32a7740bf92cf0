import type { Point } from '@dawnlift/core/geometry'
import type { PaperPoint, Sheet } from '../paper/index.js'
import { type ElevationOptions, type ElevationParts, viewOf } from './elevation-view.js'

/** The way between a wall’s own measures and the paper of `drawWallElevation`: for taking hold of what is drawn. */
export interface ElevationMap {
  /** Station along the wall and height above the slab [m] → millimetres on paper from its lower left. */
  readonly toPaper: (place: Point) => PaperPoint
  readonly toWall: (paper: PaperPoint) => Point
}

export function elevationMap(
  parts: ElevationParts,
  id: string,
  sheet: Sheet,
  options: ElevationOptions = {},
): ElevationMap {
  const wall = parts.job.walls.find(candidate => candidate.id === id)
  if (!wall) throw new RangeError(`no wall ${id} in ${parts.job.name}`)
  const { toPaper } = viewOf(parts, wall, sheet, options.seenFrom ?? 'right', options).paper
  // Two places one metre apart each way give the scale and the direction of both axes.
  const [foot, far] = [toPaper([0, 0]), toPaper([1, 1])]
  const [perStation, perHeight] = [far[0] - foot[0], far[1] - foot[1]]
  return {
    toPaper,
    toWall: ([x, y]) => [(x - foot[0]) / perStation, (y - foot[1]) / perHeight],
  }
}
