import { initGeometry } from '@dawnlift/core/geometry'
import type { Job } from '@dawnlift/core/job'
import type { MixFit } from '@dawnlift/core/mix'
import type { Plan } from '@dawnlift/core/plan'
import type { Problem } from '@dawnlift/core/result'
import { type Assumed, type OpenedJob, openJob } from '@dawnlift/formats/job-folder'
import clipperUrl from 'clipper2-wasm/dist/es/clipper2z.wasm?url'
import { expose } from 'comlink'
import { type BandPost, bandPoster } from './band-post.js'
import type { JobFiles } from './job-files.js'
import { type PackedPlan, type Parcel, planPacker } from './plan-parcels.js'

export type Planned<P> =
  | {
      readonly kind: 'planned'
      readonly plan: P
      readonly assumed: readonly Assumed[]
      readonly problems: readonly Problem[]
      readonly mixFit: MixFit | undefined
      readonly weatherNotes: readonly Problem[]
    }
  | { readonly kind: 'unreadable'; readonly problems: readonly Problem[] }
  | { readonly kind: 'cancelled' }

/** What the planner tells on its way. */
export type Told =
  | { readonly kind: 'job'; readonly job: Job }
  | { readonly kind: 'stage'; readonly stage: string; readonly share: number }
  | { readonly kind: 'parcels'; readonly parcels: readonly Parcel[] }

let newest = 0
let planning: ReturnType<typeof loadPlanning> | undefined
let standing: Plan | undefined
const pack = planPacker()
let follower: ((plan: Plan) => void) | undefined

/** The pipeline is large; a job is read and shown while it is still on its way here. */
async function loadPlanning() {
  const [{ planWithCache }] = await Promise.all([
    import('./planning.js'),
    initGeometry({ locateFile: () => clipperUrl }),
  ])
  return planWithCache
}

/** Plans off the main thread. A newer request, or `cancel`, ends the one under way at its next stage. */
const planner = {
  async plan(files: JobFiles, tell: (told: Told) => unknown): Promise<Planned<PackedPlan>> {
    const mine = ++newest
    const opened = openJob({ document: files.document, read: name => files.beside[name] })
    if (!opened.ok) return { kind: 'unreadable', problems: opened.problems }
    tell({ kind: 'job', job: opened.value.job })
    planning ??= loadPlanning()
    const plan = await (await planning)(opened.value, (stage, share) => {
      tell({ kind: 'stage', stage, share })
      // One turn of the event loop, so that a newer edit or a cancel can be heard.
      return new Promise(resume => setTimeout(() => resume(mine === newest), 0))
    })
    if (!plan) return { kind: 'cancelled' }
    standing = plan
    follower?.(plan)
    return deliver(plan, opened.value, tell)
  },
  cancel() {
    newest += 1
  },
  /** Posts the bands of the plan that stands, and of every one after it, to whoever draws them. */
  followBands(port: MessagePort) {
    const bandsOf = bandPoster()
    follower = plan => port.postMessage(bandsOf(plan) satisfies BandPost)
    if (standing) follower(standing)
  },
  /** Hands the plan that stands to another worker, past the page. */
  lend(port: MessagePort) {
    port.postMessage(standing)
    port.close()
  },
}

async function deliver(
  plan: Plan,
  { assumed, mixFit, weatherNotes }: OpenedJob,
  tell: (told: Told) => unknown,
): Promise<Planned<PackedPlan>> {
  const { packed, messages } = pack(plan)
  await Promise.all(messages.map(parcels => tell({ kind: 'parcels', parcels })))
  return { kind: 'planned', plan: packed, assumed, problems: [], mixFit, weatherNotes }
}

export type Planner = typeof planner
expose(planner)
