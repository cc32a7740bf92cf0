import type { Job } from '@dawnlift/core/job'
import type { Plan } from '@dawnlift/core/plan'
import { proxy, type Remote, transfer, wrap } from 'comlink'
import type { JobFiles } from './job-files.js'
import { type PackedPlan, planUnpacker } from './plan-parcels.js'
import type { Planned, Planner, Told } from './planner.worker.js'

export type Progress = (stage: string, share: number) => void

export interface Listener {
  /** The job as read, long before its plan is made. */
  readonly job: (job: Job) => void
  readonly progress: Progress
  /** The plan with the days held that stood before the edit, while better ones are looked for. */
  readonly held: (planned: Planned<Plan>) => void
}

let remote: Remote<Planner> | undefined
const unpacker = planUnpacker()

/** Started at the first use: the page shows itself before the core is loaded. */
const planner = () => {
  remote ??= wrap<Planner>(new Worker(new URL('./planner.worker.ts', import.meta.url), { type: 'module' }))
  return remote
}

/** `hold`: the plan made last is of the same job, so that its days may be held. */
export async function planInWorker(
  files: JobFiles,
  hold: boolean,
  { job, progress, held }: Listener,
): Promise<Planned<Plan>> {
  const hear = (told: Told) => {
    if (told.kind === 'job') job(told.job)
    else if (told.kind === 'stage') progress(told.stage, told.share)
    else if (told.kind === 'held') held(unpacked(told.planned))
    else unpacker.take(told.parcels)
  }
  return unpacked(await planner().plan(files, hold, proxy(hear)))
}

const unpacked = (planned: Planned<PackedPlan>): Planned<Plan> =>
  planned.kind === 'planned' ? { ...planned, plan: unpacker.plan(planned.plan) } : planned

export const cancelPlanning = (): void => void planner().cancel()

/** From now on the bands of each plan go to whoever holds the other end, without a stop in this thread. One at a time. */
export const followBands = (port: MessagePort): void => void planner().followBands(transfer(port, [port]))

/** Sends the plan that stands to whoever holds the other end, without a stop in this thread. */
export const lendPlan = (port: MessagePort): void => void planner().lend(transfer(port, [port]))
