import type { Path, Point } from '@dawnlift/core/geometry'
import type { DrawingMapping, WallType } from '@dawnlift/document/job'

const double = (thickness: number): WallType => ({
  makeUp: { kind: 'double', web: 'zigzag', webPitch: 0.4 },
  thickness,
  base: 0,
  top: 2.8,
})

/** What each layer of an invented drawing is, for tests. */
export const mapping = (
  layers: DrawingMapping['layers'],
  thickness = 0.2,
  joinWithin = 0.005,
): DrawingMapping => ({
  file: 'plan.dxf',
  origin: [0, 0],
  joinWithin,
  curveWithin: 0.001,
  layers,
  wallTypes: { wall: double(thickness), other: double(thickness) },
  openingTypes: {
    window: { kind: 'window', width: 1.2, sill: 0.9, head: 2.1 },
    door: { kind: 'door', sill: 0 },
  },
  embedTypes: {
    box: { kind: 'box', trade: 'electrical', method: 'cut', width: 0.07, height: 0.07, depth: 0.05 },
  },
  columnTypes: { cast: { length: 0.3, cover: 0.04 } },
})

export const straight = (...points: readonly Point[]): Path => ({
  points,
  bulges: points.slice(1).map(() => 0),
  closed: false,
})
