import type { JobLeverRow, Way } from '@dawnlift/core/lever'
import type { Result } from '@dawnlift/core/result'
import type { SectionAnswer } from '@dawnlift/core/stand'
import type { Doubt, DoubtedLevers, DoubtWishes } from '@dawnlift/formats/job-folder'
import { proxy, type Remote, transfer, wrap } from 'comlink'
import type { JobFiles } from './job-files.js'
import type { LiftMove } from './moved-lift.js'
import { lendPlan, type Progress } from './planner.js'
import type { Replanner } from './replanner.worker.js'
import { useApp } from './store.js'

/** One question under way, in a worker of its own: an edit is planned at once meanwhile. */
interface Asked {
  readonly worker: Worker
  readonly giveUp: () => void
}

let asked: Asked | undefined

/** Ends the question under way; whoever asked hears that there is no answer. */
export function stopAsking(): void {
  asked?.worker.terminate()
  asked?.giveUp()
  asked = undefined
}

async function ask<T>(
  question: (remote: Remote<Replanner>, files: JobFiles) => Promise<T | undefined>,
): Promise<T | undefined> {
  stopAsking()
  const { files, plan } = useApp.getState()
  if (!files || !plan) return undefined
  const worker = new Worker(new URL('./replanner.worker.ts', import.meta.url), { type: 'module' })
  const given = new Promise<undefined>(resolve => {
    asked = { worker, giveUp: () => resolve(undefined) }
  })
  const mine = asked
  const { port1, port2 } = new MessageChannel()
  const remote = wrap<Replanner>(worker)
  lendPlan(port1)
  try {
    await Promise.race([remote.borrow(transfer(port2, [port2])), given])
    return await Promise.race([question(remote, files), given])
  } finally {
    if (asked === mine) stopAsking()
  }
}

/** What would buy days; each row is heard of as soon as it is planned. */
export const askLevers = (
  progress: Progress,
  hear: (row: JobLeverRow) => void,
): Promise<DoubtedLevers | undefined> =>
  ask((remote, files) => remote.levers(files, proxy(progress), proxy(hear)))

/** What waiting would buy. */
export const askTradeOffs = (progress: Progress): Promise<readonly Way[] | undefined> =>
  ask(remote => remote.tradeOffs(proxy(progress)))

/** What breaks when a lift goes to another day. */
export const askMove = (lift: string, date: string): Promise<LiftMove | undefined> =>
  ask(remote => remote.move(lift, date))

/** How far the whole section of a lift is from buckling, and how it would move. */
export const askShells = (lift: string, progress: Progress): Promise<Result<SectionAnswer> | undefined> =>
  ask(async remote => remote.stand(lift, proxy(progress)))

export const askDoubt = (wishes: DoubtWishes, progress: Progress): Promise<Doubt | undefined> =>
  ask((remote, files) => remote.doubt(files, wishes, proxy(progress)))
