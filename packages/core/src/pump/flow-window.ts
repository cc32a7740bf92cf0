import type { Machine } from '../machine/index.js'
import type { CubicMetresPerSecond, Metres, MetresPerSecond } from '../quantity/index.js'
import { beadArea } from '../wall/index.js'

/** The speeds at which a machine can lay a bead, and what bounds them. */
export interface SpeedWindow {
  readonly least: MetresPerSecond
  readonly most: MetresPerSecond
  readonly flowLeast: CubicMetresPerSecond
  readonly flowMost: CubicMetresPerSecond
  readonly mostBy: 'pump' | 'machine'
}

/**
 * Speeds between which pump and machine lay a bead of this width and height: Q = A·v with A of the bead's section.
 * `least > most` means that the pump cannot go slow enough for this bead: none at all.
 *
 * Source   closed form.
 * Range    width ≥ height.
 * Assumes  the bead keeps its section; a squashed one takes up to w·h, weigh a metre to know.
 */
export function speedWindow(machine: Machine, width: Metres, height: Metres): SpeedWindow | undefined {
  const area = beadArea(width, height)
  const least = machine.pump.flowLeast / area
  const byPump = machine.pump.flowMost / area
  const most = Math.min(byPump, machine.printSpeedMost)
  if (least > most) return undefined
  return {
    least,
    most,
    flowLeast: least * area,
    flowMost: most * area,
    mostBy: byPump <= machine.printSpeedMost ? 'pump' : 'machine',
  }
}
