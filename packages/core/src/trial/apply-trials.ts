import type { Machine } from '../machine/index.js'
import type { Lags } from './lag-trial.js'
import type { PumpCurve } from './pump-trial.js'

/** What trials have measured of a machine so far. */
export interface Measured {
  readonly pump?: PumpCurve
  readonly lags?: Lags
}

/**
 * The machine with what was measured in place of what was assumed. A pump that idles below a setting keeps the slope of
 * its curve only where the machine file can add the idle setting; here the setting per flow is matched at mid range.
 */
export function applyTrials(machine: Machine, { pump, lags }: Measured): Machine {
  const { flowLeast, flowMost } = machine.pump
  const middle = (flowLeast + flowMost) / 2
  return {
    ...machine,
    pump: {
      ...machine.pump,
      ...(pump ? { settingPerFlow: pump.settingPerFlow + pump.idle / middle } : {}),
      ...(lags?.start ? { startLag: lags.start.seconds } : {}),
      ...(lags?.stop ? { stopLag: lags.stop.seconds } : {}),
    },
  }
}
