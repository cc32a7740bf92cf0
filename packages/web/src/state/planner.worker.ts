import { initGeometry } from '@dawnlift/core/geometry'
import type { MixFit } from '@dawnlift/core/mix'
import { newPlanCache, type Plan, planJob } from '@dawnlift/core/plan'
import type { Problem } from '@dawnlift/core/result'
import { type Assumed, type OpenedJob, openJob } from '@dawnlift/formats/job-folder'
import clipperUrl from 'clipper2-wasm/dist/es/clipper2z.wasm?url'
import { expose } from 'comlink'
import { type Doubt, type DoubtWishes, doubtOf } from './campaign-doubt.js'
import type { JobFiles } from './job-files.js'
import { type TriedLevers, triedLevers } from './tried-levers.js'

export type Planned =
  | {
      readonly kind: 'planned'
      readonly plan: Plan
      readonly assumed: readonly Assumed[]
      readonly problems: readonly Problem[]
      readonly mixFit: MixFit | undefined
      readonly weatherNotes: readonly Problem[]
    }
  | { readonly kind: 'unreadable'; readonly problems: readonly Problem[] }
  | { readonly kind: 'cancelled' }

type Progress = (stage: string, share: number) => void

let newest = 0
let standing:
  | {
      readonly opened: OpenedJob
      readonly plan: Plan
      readonly read: (name: string) => Uint8Array | undefined
    }
  | undefined
const cache = newPlanCache()

/** One turn of the event loop, so that a newer edit or a cancel can be heard. */
const breath = () => new Promise<void>(resume => setTimeout(resume, 0))

/** True as long as nothing newer has been asked for; gives way to what waits. */
const stillWanted = (mine: number) => async () => {
  await breath()
  return mine === newest
}

/** Plans off the main thread. A newer request, or `cancel`, ends the one under way at its next stage. */
const planner = {
  async plan(files: JobFiles, progress: Progress): Promise<Planned> {
    const mine = ++newest
    const isWanted = stillWanted(mine)
    await initGeometry({ locateFile: () => clipperUrl })
    const read = (name: string) => files.beside[name]
    const opened = openJob({ document: files.document, read })
    if (!opened.ok) return { kind: 'unreadable', problems: opened.problems }
    const plan = await planJob(opened.value, {
      cache,
      progress: (stage, share) => {
        progress(stage, share)
        return isWanted()
      },
    })
    if (!plan) return { kind: 'cancelled' }
    standing = { opened: opened.value, plan, read }
    const { assumed, mixFit, weatherNotes } = opened.value
    return { kind: 'planned', plan, assumed, problems: [], mixFit, weatherNotes }
  },

  /** Every lever planned for real on the plan that stands; undefined when something newer was asked for. */
  async levers(progress: Progress): Promise<TriedLevers | undefined> {
    const mine = ++newest
    return standing && triedLevers(standing.plan, progress, stillWanted(mine))
  },

  /** The plan that stands run through many courses of the weather. */
  async doubt(wishes: DoubtWishes, progress: Progress): Promise<Doubt | undefined> {
    const mine = ++newest
    return standing && doubtOf(standing, wishes, progress, stillWanted(mine))
  },

  cancel() {
    newest += 1
  },
}

export type Planner = typeof planner
expose(planner)
