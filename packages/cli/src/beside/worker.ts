import { parentPort, workerData } from 'node:worker_threads'
import { doWork } from './do-work.js'

/** What a worker is given, and what it says. */
export interface WorkerOrder {
  readonly work: string
  readonly parcel: unknown
}

export type WorkerWord =
  | { readonly kind: 'progress'; readonly stage: string; readonly share: number }
  | { readonly kind: 'done'; readonly done: unknown }

const say = (word: WorkerWord) => parentPort?.postMessage(word)
const { work, parcel } = workerData as WorkerOrder
const done = await doWork(work, parcel, (stage, share) => {
  say({ kind: 'progress', stage, share })
  return true
})
say({ kind: 'done', done })
