import type { Laying, Machine } from '../machine/index.js'
import type { BeadModel } from './bead-trial.js'
import type { CornerModel } from './corner-trial.js'
import type { Lags } from './lag-trial.js'
import type { PumpCurve } from './pump-trial.js'

/** What trials have measured of a machine so far. */
export interface Measured {
  readonly pump?: Pick<PumpCurve, 'settingPerFlow' | 'idle'>
  readonly lags?: Lags
  readonly bead?: Pick<BeadModel, 'fill'>
  readonly corner?: Pick<CornerModel, 'swelling'>
}

/**
 * The machine with what was measured in place of what was assumed. Flows of a plan are of the bead as it shall lie: where
 * beads come out thin the pump is set to more, and gives less bead. A machine that has such trials in it already is measured
 * anew, not once more on top.
 */
export function applyTrials(machine: Machine, { pump, lags, bead, corner }: Measured): Machine {
  const before = machine.laying?.fill ?? 1
  const fill = bead?.fill ?? before
  const settingPerFlow = pump?.settingPerFlow ?? machine.pump.settingPerFlow * before
  const laying: Laying = {
    ...machine.laying,
    ...(bead ? { fill } : {}),
    ...(corner ? { swelling: corner.swelling } : {}),
    ...(lags?.start && lags.stop ? { lags: true } : {}),
  }
  return {
    ...machine,
    pump: {
      ...machine.pump,
      flowLeast: (machine.pump.flowLeast / before) * fill,
      flowMost: (machine.pump.flowMost / before) * fill,
      settingPerFlow: settingPerFlow / fill,
      ...(pump ? { settingIdle: pump.idle } : {}),
      ...(lags?.start ? { startLag: lags.start.seconds } : {}),
      ...(lags?.stop ? { stopLag: lags.stop.seconds } : {}),
    },
    ...(Object.keys(laying).length > 0 ? { laying } : {}),
  }
}
