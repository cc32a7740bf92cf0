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
  /** The days held meanwhile are those the search came to. */
  | { readonly kind: 'confirmed' }
  | { readonly kind: 'unreadable'; readonly problems: readonly Problem[] }
  | { readonly kind: 'cancelled' }

/** What the planner tells on its way. */
export type Told =
  | { readonly kind: 'job'; readonly job: Job }
  | { readonly kind: 'held'; readonly planned: Planned<PackedPlan> }
  | { readonly kind: 'stage'; readonly stage: string; readonly share: number }
  | { readonly kind: 'parcels'; readonly parcels: readonly Parcel[] }

let newest = 0
let planning: ReturnType<typeof loadPlanning> | undefined
let standing: Plan | undefined
const pack = planPacker()
let follower: ((plan: Plan) => void) | undefined

/** The pipeline is large; a job is read and shown while it is still on its way here. */
async function loadPlanning() {
  const [pipeline] = await Promise.all([
    import('./planning.js'),
    initGeometry({ locateFile: () => clipperUrl }),
  ])
  return pipeline
}

async function planAnew(
  files: JobFiles,
  hold: boolean,
  tell: (told: Told) => unknown,
): Promise<Planned<PackedPlan>> {
  const mine = ++newest
  const opened = openJob({ document: files.document, read: name => files.beside[name] })
  if (!opened.ok) return { kind: 'unreadable', problems: opened.problems }
  tell({ kind: 'job', job: opened.value.job })
  planning ??= loadPlanning()
  const { planWithCache, isConfirmed } = await planning
  const progress = (stage: string, share: number) => {
    tell({ kind: 'stage', stage, share })
    // One turn of the event loop, so that a newer edit or a cancel can be heard.
    return new Promise<boolean>(resume => setTimeout(() => resume(mine === newest), 0))
  }
  const told = hold ? standing?.campaign : undefined
  const held = told && (await planWithCache(opened.value, progress, told))
  if (held) {
    const planned = await deliver(held, opened.value, tell)
    if (!held.held) return planned
    tell({ kind: 'held', planned })
  }
  const plan = mine === newest ? await planWithCache(opened.value, progress) : undefined
  if (!plan) return { kind: 'cancelled' }
  if (held && isConfirmed(held, plan)) return { kind: 'confirmed' }
  return deliver(plan, opened.value, tell)
}

/**
 * Plans off the main thread. After an edit the days of the plan that stands are told first, held on the job as it is now;
 * better ones are then looked for. A newer request, or `cancel`, ends the one under way at its next stage.
 */
const planner = {
  async plan(files: JobFiles, hold: boolean, tell: (told: Told) => unknown): Promise<Planned<PackedPlan>> {
    let heard: unknown
    const planned = await planAnew(files, hold, told => {
      heard = tell(told)
      return heard
    })
    // What is told goes another way than the answer, and in its own order: none of it may come after the answer.
    await heard
    return planned
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

/** The plan stands from now on; its pieces go ahead of it. */
async function deliver(
  plan: Plan,
  { assumed, mixFit, weatherNotes }: OpenedJob,
  tell: (told: Told) => unknown,
): Promise<Planned<PackedPlan>> {
  standing = plan
  follower?.(plan)
  const { packed, messages } = pack(plan)
  await Promise.all(messages.map(parcels => tell({ kind: 'parcels', parcels })))
  return { kind: 'planned', plan: packed, assumed, problems: [], mixFit, weatherNotes }
}

export type Planner = typeof planner
expose(planner)
