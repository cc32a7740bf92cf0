import type { Point } from '@dawnlift/core/geometry'
import type { PaperPoint } from './drawing.js'
import type { Room } from './sheet.js'

export interface Bounds {
  readonly x: readonly [number, number]
  readonly y: readonly [number, number]
}

/** Building metres on paper at a standard scale. */
export interface PaperMap {
  /** 50 for 1:50. */
  readonly scale: number
  readonly scaleText: string
  readonly toPaper: (point: Point) => PaperPoint
  /** Millimetres on paper for metres in the building. */
  readonly length: (metres: number) => number
}

/** ISO 5455 series for metric jobs; quarter-inch and relatives for imperial ones. */
const metricScales = [5, 10, 20, 25, 50, 100, 200, 500, 1000, 2000, 5000]
const imperialScales: readonly (readonly [number, string])[] = [
  [12, `1" = 1'-0"`],
  [24, `1/2" = 1'-0"`],
  [48, `1/4" = 1'-0"`],
  [96, `1/8" = 1'-0"`],
  [192, `1/16" = 1'-0"`],
  [384, `1/32" = 1'-0"`],
  [1200, `1" = 100'`],
  [6000, `1" = 500'`],
]

export interface FitOptions {
  /** Turned over, left to right. */
  readonly mirror?: boolean
  /** As large as it goes instead of a standard scale: for figures that are not measured from. */
  readonly loose?: boolean
}

/** Largest standard scale at which the bounds fit the room, centred in it. */
export function fitTo(
  bounds: Bounds,
  room: Room,
  units: 'metric' | 'imperial',
  options: FitOptions = {},
): PaperMap {
  const wide = Math.max(bounds.x[1] - bounds.x[0], 0.01)
  const high = Math.max(bounds.y[1] - bounds.y[0], 0.01)
  const least = Math.max((wide * 1000) / room.width, (high * 1000) / room.height)
  const [scale, scaleText] = options.loose ? ([least, 'not to scale'] as const) : standardScale(least, units)
  const perMetre = 1000 / scale
  const left = room.x + (room.width - wide * perMetre) / 2
  const foot = room.y + (room.height - high * perMetre) / 2
  const across = options.mirror ? (x: number) => bounds.x[1] - x : (x: number) => x - bounds.x[0]
  return {
    scale,
    scaleText,
    toPaper: ([x, y]) => [left + across(x) * perMetre, foot + (y - bounds.y[0]) * perMetre],
    length: metres => metres * perMetre,
  }
}

function standardScale(least: number, units: 'metric' | 'imperial'): readonly [number, string] {
  if (units === 'metric') {
    const scale = metricScales.find(candidate => candidate >= least - 1e-9) ?? Math.ceil(least / 1000) * 1000
    return [scale, `1:${scale}`]
  }
  const found = imperialScales.find(([candidate]) => candidate >= least - 1e-9)
  return found ?? [Math.ceil(least), `1:${Math.ceil(least)}`]
}

export function boundsOf(points: readonly Point[], margin = 0): Bounds {
  const xs = points.map(point => point[0])
  const ys = points.map(point => point[1])
  return {
    x: [Math.min(...xs) - margin, Math.max(...xs) + margin],
    y: [Math.min(...ys) - margin, Math.max(...ys) + margin],
  }
}
