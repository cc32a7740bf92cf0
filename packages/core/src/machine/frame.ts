import type { Point } from '../geometry/index.js'
import type { Metres, Radians } from '../quantity/index.js'

/** Where the building's origin lies in the machine frame [m], and how the building is turned in it [rad]. */
export interface MachineOrigin {
  readonly x: Metres
  readonly y: Metres
  readonly z: Metres
  readonly turn: Radians
}

export const sameFrame: MachineOrigin = { x: 0, y: 0, z: 0, turn: 0 }

/** Where points of the building frame lie in the machine frame. */
export interface MachineFrame {
  readonly x: (point: Point) => Metres
  readonly y: (point: Point) => Metres
}

export function machineFrame(origin: MachineOrigin): MachineFrame {
  const cos = Math.cos(origin.turn)
  const sin = Math.sin(origin.turn)
  return {
    x: point => origin.x + point[0] * cos - point[1] * sin,
    y: point => origin.y + point[0] * sin + point[1] * cos,
  }
}

export function machinePoint(origin: MachineOrigin, point: Point): Point {
  const { x, y } = machineFrame(origin)
  return [x(point), y(point)]
}
