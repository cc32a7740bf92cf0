import type { Machine } from '../machine/index.js'
import type { BeadModel } from './bead-trial.js'
import type { Lags } from './lag-trial.js'
import type { PumpCurve } from './pump-trial.js'

/** What trials have measured of a machine so far. */
export interface Measured {
  readonly pump?: PumpCurve
  readonly lags?: Lags
  readonly bead?: Pick<BeadModel, 'fill'>
}

/**
 * The machine with what was measured in place of what was assumed. A pump that idles below a setting keeps the slope of
 * its curve only where the machine file can add the idle setting; here the setting per flow is matched at mid range.
 * Flows of a plan are of the bead as it shall lie: where beads come out thin the pump is set to more, and gives less bead.
 */
export function applyTrials(machine: Machine, { pump, lags, bead }: Measured): Machine {
  const { flowLeast, flowMost } = machine.pump
  const middle = (flowLeast + flowMost) / 2
  const fill = bead?.fill ?? 1
  const settingPerFlow = pump ? pump.settingPerFlow + pump.idle / middle : machine.pump.settingPerFlow
  return {
    ...machine,
    pump: {
      ...machine.pump,
      flowLeast: flowLeast * fill,
      flowMost: flowMost * fill,
      settingPerFlow: settingPerFlow / fill,
      ...(lags?.start ? { startLag: lags.start.seconds } : {}),
      ...(lags?.stop ? { stopLag: lags.stop.seconds } : {}),
    },
  }
}
