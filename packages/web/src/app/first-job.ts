import { fetchJob, keptDocument, useApp } from '../state/index.js'

/** Opens what the local server holds; an edit that never reached it comes back on top, to be undone or kept. */
export async function openFirstJob(): Promise<void> {
  const job = await fetchJob().catch(() => undefined)
  if (!job) return
  useApp.getState().open(job.files, job.revision)
  const kept = keptDocument()
  if (kept && kept.document !== job.files.document) useApp.getState().edit(kept.document)
}
