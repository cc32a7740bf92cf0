import { newPlanCache, type Plan, type PlanCache, planJob } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import { assert, type Result, success } from '@dawnlift/core/result'
import { openJob } from '@dawnlift/formats/job-folder'
import { type Output, outputsOf } from '@dawnlift/formats/outputs'
import type { FolderStore } from '../store/index.js'

export interface Kept {
  readonly plan: Plan
  readonly outputs: readonly Output[]
}

/** Plans the job as it stands on disk, once for each state of its folder. */
export interface PlanKeeper {
  readonly current: () => Promise<Result<Kept>>
}

/** `clock`: the moment now [s since 1970 UTC], printed on what is made. */
export function planKeeper(store: FolderStore, clock: () => Instant): PlanKeeper {
  let known: { readonly state: string; readonly answer: Promise<Result<Kept>> } | undefined
  const cache = newPlanCache()
  return {
    current: () => {
      const { text } = store.read()
      const state = store.stamp()
      if (known?.state !== state) known = { state, answer: planText(text, store, cache, clock) }
      return known.answer
    },
  }
}

async function planText(
  document: string,
  store: FolderStore,
  cache: PlanCache,
  clock: () => Instant,
): Promise<Result<Kept>> {
  const opened = openJob({ document, read: store.readBeside })
  if (!opened.ok) return opened
  const plan = await planJob(opened.value, { cache })
  assert(plan, 'a plan that nobody cancels is made')
  const { mixFit } = opened.value
  return success({
    plan,
    outputs: outputsOf(plan, { at: clock(), sequence: 0, ...(mixFit ? { mixFit } : {}) }),
  })
}
