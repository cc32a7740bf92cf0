import type { JobLeverKind, LeverPrices } from '@dawnlift/core/lever'
import {
  type DoubtedLevers,
  type DoubtWishes,
  leversOf,
  type OpenedJob,
  type StandingPlan,
} from '@dawnlift/formats/job-folder'
import { besideJob } from '../command/job-input.js'
import type { Work } from './work.js'

/** A plan whose levers are to be pulled, as plain data. */
export interface LeversParcel {
  readonly opened: OpenedJob
  readonly plan: StandingPlan['plan']
  /** The job's own file: others lie beside it. */
  readonly file: string
  readonly wishes: DoubtWishes
  readonly prices: LeverPrices
  readonly most: 1 | 2 | 3
  readonly without: readonly JobLeverKind[]
}

export const leversWork: Work<LeversParcel, DoubtedLevers | undefined> = {
  name: 'levers',
  run: ({ opened, plan, file, wishes, prices, most, without }, progress) =>
    leversOf({ opened, plan, read: besideJob(file) }, wishes, { prices, most, without, progress }),
}
