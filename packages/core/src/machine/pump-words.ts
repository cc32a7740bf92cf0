import type { CubicMetresPerSecond } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Machine } from './machine.js'

/**
 * S word that makes the pump give a flow.
 *
 *   S = k·Q
 *
 * @param machine  its `pump.settingPerFlow` k [S per m³/s]
 * @param flow     Q [m³/s]
 *
 * Source   the machine profile; k is measured on site by catching the flow of a minute in a bucket.
 * Range    `pump.flowLeast` to `pump.flowMost`; `checkFlow` reports outside.
 * Assumes  flow in proportion to the setting (positive displacement, no slip).
 */
export function pumpSetting(machine: Machine, flow: CubicMetresPerSecond): number {
  assert(Number.isFinite(flow) && flow >= 0, 'a flow is a finite number, not negative')
  return flow * machine.pump.settingPerFlow
}

/** The flow an S word stands for. */
export const pumpFlow = (machine: Machine, setting: number): CubicMetresPerSecond =>
  setting / machine.pump.settingPerFlow

/** The words that start the pump at a flow, in the order the controller expects: `S120.5 M3`. */
export const pumpOnWords = (machine: Machine, settingText: string): string =>
  `S${settingText} ${machine.words.pumpOn}`

/** RS-274 stops either direction of the spindle, here the pump, with the same word. */
export const pumpOffWord = 'M5'
