import { proxy, type Remote, wrap } from 'comlink'
import type { JobFiles } from './job-files.js'
import type { Planned, Planner } from './planner.worker.js'

export type Progress = (stage: string, share: number) => void

let remote: Remote<Planner> | undefined

/** Started at the first use: the page shows itself before the core is loaded. */
const planner = () => {
  remote ??= wrap<Planner>(new Worker(new URL('./planner.worker.ts', import.meta.url), { type: 'module' }))
  return remote
}

export const planInWorker = (files: JobFiles, progress: Progress): Promise<Planned> =>
  planner().plan(files, proxy(progress))

export const cancelPlanning = (): void => void planner().cancel()
