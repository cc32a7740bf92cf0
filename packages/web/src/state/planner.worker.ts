import { initGeometry } from '@dawnlift/core/geometry'
import type { MixFit } from '@dawnlift/core/mix'
import { newPlanCache, type Plan, planJob } from '@dawnlift/core/plan'
import type { Problem } from '@dawnlift/core/result'
import { type Assumed, openJob } from '@dawnlift/formats/job-folder'
import clipperUrl from 'clipper2-wasm/dist/es/clipper2z.wasm?url'
import { expose } from 'comlink'
import type { JobFiles } from './job-files.js'

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

let newest = 0
const cache = newPlanCache()

/** Plans off the main thread. A newer request, or `cancel`, ends the one under way at its next stage. */
const planner = {
  async plan(files: JobFiles, progress: (stage: string, share: number) => void): Promise<Planned> {
    const mine = ++newest
    await initGeometry({ locateFile: () => clipperUrl })
    const opened = openJob({ document: files.document, read: name => files.beside[name] })
    if (!opened.ok) return { kind: 'unreadable', problems: opened.problems }
    const plan = await planJob(opened.value, {
      cache,
      progress: (stage, share) => {
        progress(stage, share)
        // One turn of the event loop, so that a newer edit or a cancel can be heard.
        return new Promise(resume => setTimeout(() => resume(mine === newest), 0))
      },
    })
    if (!plan) return { kind: 'cancelled' }
    const { assumed, mixFit, weatherNotes } = opened.value
    return { kind: 'planned', plan, assumed, problems: [], mixFit, weatherNotes }
  },
  cancel() {
    newest += 1
  },
}

export type Planner = typeof planner
expose(planner)
