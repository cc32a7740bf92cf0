import { existsSync } from 'node:fs'
import { availableParallelism } from 'node:os'
import { fileURLToPath } from 'node:url'
import { Worker } from 'node:worker_threads'
import type { Screen } from '../screen/terminal.js'
import { doWork } from './do-work.js'
import type { Work } from './work.js'
import type { WorkerOrder, WorkerWord } from './worker.js'

const workerFile = new URL('./worker.js', import.meta.url)

/** More than this many workers wait for memory, not for cores. */
const mostWorkers = 8

/** Into how many parcels work is best cut: one a core, as long as each is worth a worker's start. */
export const parcelCount = (pieces: number, piecesWorthAStart: number): number =>
  Math.max(1, Math.min(mostWorkers, availableParallelism(), Math.floor(pieces / piecesWorthAStart)))

/**
 * Does work in workers, one a parcel, and gives what is done in the parcels' order; `stopped` when the person at the terminal
 * has had enough. Where the program is not built there is no worker to start, and this thread does it, parcel by parcel.
 */
export async function workBeside<Parcel, Done>(
  screen: Screen,
  work: Work<Parcel, Done>,
  parcels: readonly Parcel[],
  line: (stage: string, share: number) => unknown,
): Promise<readonly Done[] | 'stopped'> {
  const shares = parcels.map(() => 0)
  let isStopped = false
  const progress = (index: number) => (stage: string, share: number) => {
    shares[index] = share
    line(stage, shares.reduce((sum, each) => sum + each, 0) / parcels.length)
    return !isStopped
  }
  const stop = screen.stopped().then(() => {
    isStopped = true
    return 'stopped' as const
  })
  if (!existsSync(fileURLToPath(workerFile))) {
    const done: Done[] = []
    for (const [index, parcel] of parcels.entries())
      done.push((await doWork(work.name, parcel, progress(index))) as Done)
    return isStopped ? 'stopped' : done
  }
  const workers = parcels.map(parcel => startWorker({ work: work.name, parcel }))
  try {
    const all = Promise.all(workers.map((worker, index) => heard<Done>(worker, progress(index))))
    return await Promise.race([all, stop])
  } finally {
    await Promise.all(workers.map(worker => worker.terminate()))
  }
}

const startWorker = (order: WorkerOrder): Worker => new Worker(workerFile, { workerData: order })

const heard = <Done>(worker: Worker, progress: (stage: string, share: number) => unknown): Promise<Done> =>
  new Promise((resolve, reject) => {
    worker.on('message', (word: WorkerWord) => {
      if (word.kind === 'progress') progress(word.stage, word.share)
      else resolve(word.done as Done)
    })
    worker.on('error', reject)
    worker.on('exit', code => reject(new Error(`a worker ended with ${code} before its work was done`)))
  })
