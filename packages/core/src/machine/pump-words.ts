import type { CubicMetresPerSecond } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Machine } from './machine.js'

/** What of a machine its pump words depend on. */
interface Curve {
  readonly pump: Pick<Machine['pump'], 'settingPerFlow' | 'settingIdle'>
}

/**
 * S word that makes the pump give a flow.
 *
 *   S = S₀ + k·Q
 *
 * @param machine  its `pump.settingPerFlow` k [S per m³/s] and `pump.settingIdle` S₀, 0 unless measured
 * @param flow     Q [m³/s]; no flow is S 0
 *
 * Source   closed form: a straight line from the machine profile; k and S₀ are measured on site by catching the flow of a minute in a bucket.
 * Range    `pump.flowLeast` to `pump.flowMost`; `checkFlow` reports outside.
 * Assumes  flow in proportion to the setting beyond S₀ (positive displacement, slip that does not change).
 */
export function pumpSetting({ pump }: Curve, flow: CubicMetresPerSecond): number {
  assert(Number.isFinite(flow) && flow >= 0, 'a flow is a finite number, not negative')
  return flow === 0 ? 0 : Math.max(0, (pump.settingIdle ?? 0) + flow * pump.settingPerFlow)
}

/** The flow an S word stands for. */
export const pumpFlow = ({ pump }: Curve, setting: number): CubicMetresPerSecond =>
  setting === 0 ? 0 : Math.max(0, (setting - (pump.settingIdle ?? 0)) / pump.settingPerFlow)

/** The words that start the pump at a flow, in the order the controller expects: `S120.5 M3`. */
export const pumpOnWords = (machine: Machine, settingText: string): string =>
  `S${settingText} ${machine.words.pumpOn}`

/** RS-274 stops either direction of the spindle, here the pump, with the same word. */
export const pumpOffWord = 'M5'
