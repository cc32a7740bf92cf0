import { type Remote, wrap } from 'comlink'
import type { Reader } from './reading.worker.js'

let remote: Remote<Reader> | undefined

/** Reads drawings and documents in a worker of its own: the planner may be busy for seconds. */
export function reading(): Remote<Reader> {
  remote ??= wrap<Reader>(new Worker(new URL('./reading.worker.ts', import.meta.url), { type: 'module' }))
  return remote
}
