import type { Machine } from '@dawnlift/core/machine'
import type { KilogramsPerCubicMetre } from '@dawnlift/core/quantity'

/** What the trials were run with. */
export interface TriedWith {
  readonly machine: Machine
  readonly density: KilogramsPerCubicMetre
  /** Where both come from, in words. */
  readonly from: string
}
