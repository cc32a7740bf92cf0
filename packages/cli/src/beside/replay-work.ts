import type { ReplayedRun } from '@dawnlift/core/campaign'
import {
  type DoubtShare,
  type DoubtWishes,
  doubtRuns,
  type OpenedJob,
  type StandingPlan,
} from '@dawnlift/formats/job-folder'
import { besideJob } from '../command/job-input.js'
import { standingParts } from './standing-parts.js'
import type { Work } from './work.js'

/** Some of a campaign's replays; whatever they need crosses into the worker as plain data. */
export interface ReplayParcel {
  readonly opened: OpenedJob
  readonly plan: StandingPlan['plan']
  /** The job's own file: others lie beside it. */
  readonly file: string
  readonly wishes: DoubtWishes
  readonly share: DoubtShare
}

export const replayWork: Work<ReplayParcel, readonly ReplayedRun[]> = {
  name: 'replay',
  run: ({ opened, plan, file, wishes, share }, progress) =>
    Promise.resolve(doubtRuns({ opened, plan, read: besideJob(file) }, wishes, share, progress)),
}

/** All replays cut into even parcels, in order. */
export function replayParcels(
  { opened, plan, file }: Omit<ReplayParcel, 'wishes' | 'share'>,
  wishes: DoubtWishes,
  replays: number,
  parcels: number,
): readonly ReplayParcel[] {
  const cut = (index: number) => Math.round((index * replays) / parcels)
  return Array.from({ length: parcels }, (_, index) => ({
    opened,
    plan: standingParts(plan),
    file,
    wishes,
    share: { from: cut(index), until: cut(index + 1) },
  }))
}
