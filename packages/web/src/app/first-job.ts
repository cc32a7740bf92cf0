import { fetchJob, keptFiles, orphanedEdit, sendLater, useApp, watchServer } from '../state/index.js'

/**
 * Opens what the local server holds; an edit that never reached it comes back on top, to be undone or kept.
 * If the text on disk has moved on meanwhile, both stand and the lead chooses.
 */
export async function openFirstJob(): Promise<void> {
  const job = await fetchJob().catch(() => undefined)
  if (!job) {
    useApp.getState().setServed(false)
    return
  }
  const kept = await orphanedEdit(job.id)
  const { open, edit, setSaved } = useApp.getState()
  if (!kept || kept.document === job.files.document) open(job.files, job.revision)
  else {
    const files = await keptFiles(job.id).catch(() => new Map<string, Uint8Array>())
    sendLater(files)
    const added = Object.fromEntries(
      [...files].flatMap(([name, content]) => (content ? [[name, content]] : [])),
    )
    if (kept.revision === job.revision) {
      open(job.files, job.revision)
      edit(kept.document, added)
    } else {
      open({ document: kept.document, beside: { ...job.files.beside, ...added } }, kept.revision)
      setSaved('conflict')
    }
  }
  watchServer()
}
