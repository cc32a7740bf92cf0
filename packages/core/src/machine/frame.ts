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

/** A point of the building frame in the machine frame. */
export function machinePoint(origin: MachineOrigin, [x, y]: Point): Point {
  const cos = Math.cos(origin.turn)
  const sin = Math.sin(origin.turn)
  return [origin.x + x * cos - y * sin, origin.y + x * sin + y * cos]
}
