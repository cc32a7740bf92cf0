import type { Job } from '@dawnlift/core/job'
import type { MixFit } from '@dawnlift/core/mix'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import type { Problem } from '@dawnlift/core/result'
import type { Assumed } from '@dawnlift/formats/job-folder'
import { logFile, toldFile } from '@dawnlift/formats/site-log'
import { create } from 'zustand'
import type { JobFiles } from './job-files.js'
import { keepLocally, saveDocument } from './keeping.js'
import { cancelPlanning, planInWorker } from './planner.js'
import type { Planned } from './planner.worker.js'

export type Saved = 'saved' | 'saving' | 'waiting' | 'conflict' | 'local'

export interface AppState {
  readonly files: JobFiles | undefined
  /** Revision of the document on the server that our text rests on. */
  readonly revision: string | undefined
  readonly past: readonly JobFiles[]
  readonly future: readonly JobFiles[]
  readonly planning: { readonly stage: string; readonly share: number } | undefined
  readonly plan: Plan | undefined
  /** The plan that stood when the last edit was made. */
  readonly before: Plan | undefined
  /**
   * How the days of the plan came about, where they are those from before the edit: better ones are looked for, there are
   * none, or they were not looked for because somebody stopped it.
   */
  readonly heldDays: 'searching' | 'confirmed' | 'unsearched' | undefined
  /** The job as it was read last: there long before its plan. */
  readonly job: Job | undefined
  readonly assumed: readonly Assumed[]
  readonly problems: readonly Problem[]
  /** How the mix was fitted, where the job has tests of its own. */
  readonly mixFit: MixFit | undefined
  /** Oddities of the weather file that do not stop it from being used. */
  readonly weatherNotes: readonly Problem[]
  readonly saved: Saved
  /** Whether the local server answers. Without it everything goes on, but nothing leaves this page. */
  readonly served: boolean
  /** Why the server, which is there, does not take what was sent. */
  readonly refused: readonly Problem[]
  /** Whether this device keeps edits until the server has them; not where its storage is full or forbidden. */
  readonly keeps: boolean
  /** Entries of the site log that only this device has. */
  readonly unsentLog: number
  /** The campaign's clock: what the whole app shows is what stands at this moment. */
  readonly moment: Instant
  readonly units: 'metric' | 'imperial'
  readonly selection:
    | {
        readonly kind: 'wall' | 'embed' | 'opening' | 'lintel' | 'column' | 'lift' | 'section'
        readonly id: string
      }
    | undefined
}

export interface AppActions {
  /** A job from the server or dropped on the page. */
  readonly open: (files: JobFiles, revision?: string) => void
  /** Replaces the document's text, and puts files beside it; what was before can be brought back without limit. */
  readonly edit: (document: string, added?: JobFiles['beside']) => void
  /** The document as somebody else has left it; ours can be brought back by undo. */
  readonly reload: (files: JobFiles, revision: string) => void
  readonly undo: () => void
  readonly redo: () => void
  readonly cancel: () => void
  /** The site log as it stands now. It only ever grows: no undo brings an older one back. */
  readonly setLog: (log: Uint8Array, unsent: number) => void
  /** The days everybody was told, as somebody else has left them. */
  readonly setTold: (told: Uint8Array) => void
  readonly setMoment: (moment: Instant) => void
  readonly setUnits: (units: 'metric' | 'imperial') => void
  readonly select: (selection: AppState['selection']) => void
  readonly setSaved: (saved: Saved, revision?: string) => void
  readonly setServed: (served: boolean) => void
  readonly setRefused: (refused: readonly Problem[]) => void
  readonly setKeeps: (keeps: boolean) => void
}

export const useApp = create<AppState & AppActions>((set, get) => {
  const replan = async () => {
    const { files, plan: before, heldDays } = get()
    if (!files) return
    // A search that this edit ends has not told whether there were better days.
    const unsearched = heldDays === 'searching' ? 'unsearched' : heldDays
    set({ planning: { stage: 'reading', share: 0 }, before, heldDays: unsearched })
    const planned = await planInWorker(files, before !== undefined, {
      job: job => set({ job, ...(get().plan ? {} : { units: job.units }) }),
      progress: (stage, share) => {
        if (files === get().files) set({ planning: { stage, share } })
      },
      held: early => {
        if (files === get().files) set({ ...shown(early, get()), heldDays: 'searching' })
      },
    })
    if (files !== get().files) return
    // A stage told just before the cancel must not stand there for good.
    set({ planning: undefined, ...shown(planned, get()), heldDays: settled(planned, get()) })
  }
  const putBeside = (name: string, content: Uint8Array) => {
    const files = get().files
    const known = files?.beside[name] ?? new Uint8Array()
    if (!files || sameBytes(known, content)) return
    set({ files: { ...files, beside: { ...files.beside, [name]: content } } })
    void replan()
  }
  const show = (wanted: JobFiles, past: readonly JobFiles[], future: readonly JobFiles[]) => {
    const before = get().files
    if (!before) return
    const after = withLogOf(wanted, before)
    set({ files: after, past, future })
    // A job of this tab alone must not come back on top of the server's.
    if (get().revision !== undefined) keepLocally(before, after, get().revision)
    saveDocument()
    void replan()
  }
  return {
    files: undefined,
    revision: undefined,
    past: [],
    future: [],
    planning: undefined,
    plan: undefined,
    before: undefined,
    heldDays: undefined,
    job: undefined,
    assumed: [],
    problems: [],
    mixFit: undefined,
    weatherNotes: [],
    saved: 'saved',
    served: true,
    refused: [],
    keeps: true,
    unsentLog: 0,
    moment: 0,
    units: 'metric',
    selection: undefined,
    open: (files, revision) => {
      set({
        files,
        revision,
        past: [],
        future: [],
        plan: undefined,
        heldDays: undefined,
        job: undefined,
        problems: [],
        saved: revision === undefined ? 'local' : 'saved',
      })
      void replan()
    },
    edit: (document, added = {}) => {
      const now = get().files
      if (isNewer(get().problems)) return
      if (!now || (now.document === document && Object.keys(added).length === 0)) return
      show({ document, beside: { ...now.beside, ...added } }, [...get().past, now], [])
    },
    reload: (files, revision) => {
      const mine = get().files
      const past = !mine || mine.document === files.document ? get().past : [...get().past, mine]
      set({ files, revision, past, future: [], saved: 'saved' })
      void replan()
    },
    undo: () => {
      const { past, future, files } = get()
      const last = past.at(-1)
      if (last !== undefined && files) show(last, past.slice(0, -1), [files, ...future])
    },
    redo: () => {
      const { past, future, files } = get()
      const next = future[0]
      if (next !== undefined && files) show(next, [...past, files], future.slice(1))
    },
    cancel: () => {
      cancelPlanning()
      set({ planning: undefined })
    },
    setLog: (log, unsentLog) => {
      set({ unsentLog })
      putBeside(logFile, log)
    },
    setTold: told => putBeside(toldFile, told),
    setMoment: moment => set({ moment }),
    setUnits: units => set({ units }),
    select: selection => set({ selection }),
    setSaved: (saved, revision) => set(revision === undefined ? { saved } : { saved, revision }),
    setServed: served => set({ served }),
    setRefused: refused => set({ refused }),
    setKeeps: keeps => set({ keeps }),
  }
})

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, index) => byte === b[index])

/** What happened on site is not undone with an edit of the job. */
function withLogOf(wanted: JobFiles, now: JobFiles): JobFiles {
  const log = now.beside[logFile]
  return log === undefined || log === wanted.beside[logFile]
    ? wanted
    : { ...wanted, beside: { ...wanted.beside, [logFile]: log } }
}

/** What of a plan just made is shown; what it could not be made of where there is none. */
function shown(planned: Planned<Plan>, now: AppState): Partial<AppState> {
  if (planned.kind === 'unreadable') return { problems: planned.problems }
  if (planned.kind !== 'planned') return {}
  const { plan, assumed, problems, mixFit, weatherNotes } = planned
  const first = now.plan ? {} : { moment: firstMoment(plan), units: plan.job.units }
  return { plan, assumed, problems, mixFit, weatherNotes, ...first }
}

function settled({ kind }: Planned<Plan>, { heldDays }: AppState): AppState['heldDays'] {
  if (kind === 'planned') return undefined
  if (kind === 'confirmed') return 'confirmed'
  return heldDays === 'searching' ? 'unsearched' : heldDays
}

/** A job of a newer program is only looked at: what this one would write might spoil it. */
export const isNewer = (problems: readonly Problem[]): boolean =>
  problems.some(({ code }) => code === 'job/newer-version')

const firstMoment = (plan: Plan): Instant =>
  plan.campaign.days[0]?.start ?? plan.campaign.hours[0]?.start ?? 0
