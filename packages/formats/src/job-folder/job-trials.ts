import type { Units } from '@dawnlift/core/limit'
import type { Machine } from '@dawnlift/core/machine'
import type { KilogramsPerCubicMetre } from '@dawnlift/core/quantity'
import { failure, type Result, success } from '@dawnlift/core/result'
import { applyTrials } from '@dawnlift/core/trial'
import { fitTrials, readTrials } from '../mix-tests/index.js'

/** The machine with what the job's own trials measured: pump words, lags and flows follow them. */
export function machineFromTrials(
  name: string | undefined,
  read: (name: string) => Uint8Array | undefined,
  machine: Machine,
  density: KilogramsPerCubicMetre,
  units: Units = 'metric',
): Result<Machine> {
  if (name === undefined) return success(machine)
  const content = read(name)
  if (!content)
    return failure([
      {
        code: 'job/no-file',
        at: name,
        say: `The job names the trials ${name}, but there is no such file beside it (or it is larger than 100 MB). Put it there or correct the name.`,
      },
    ])
  const trials = readTrials(new TextDecoder().decode(content), name)
  if (!trials.ok) return trials
  const fits = fitTrials(trials.value, density, units)
  return fits.ok ? success(applyTrials(machine, fits.value)) : fits
}
