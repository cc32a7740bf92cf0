import type { PrintRules } from '@dawnlift/core/job'
import type { Units } from '@dawnlift/core/limit'
import type { Machine } from '@dawnlift/core/machine'
import type { MixModel } from '@dawnlift/core/mix'
import type { KilogramsPerCubicMetre } from '@dawnlift/core/quantity'

/** What the trials were run with. */
export interface TriedWith {
  readonly machine: Machine
  readonly density: KilogramsPerCubicMetre
  /** What the trial files are printed with. */
  readonly mix: MixModel
  readonly print: Pick<PrintRules, 'beadWidth' | 'layerHeight' | 'speed'>
  readonly units: Units
  /** Where both come from, in words. */
  readonly from: string
}
