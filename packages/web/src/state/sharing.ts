import { fetchJob, forgetKept, saveDocument, sendWaiting } from './keeping.js'
import { useApp } from './store.js'
import { servedLog, unsentEntries } from './unsent-log.js'

/** Reading and writing a log is fetched when there is one. */
const siteLog = () => import('../site-log/index.js')

/** Listens to the local server: is it there, and has somebody else changed the document? The browser reconnects by itself. */
export function watchServer(): () => void {
  const events = new EventSource('/api/events')
  events.addEventListener('open', () => {
    useApp.getState().setServed(true)
    sendWaiting()
    if (unsentEntries(servedLog.job).length > 0) void siteLog().then(log => log.sendLog())
  })
  events.addEventListener('error', () => useApp.getState().setServed(false))
  events.addEventListener('revision', event => void hear(String((event as MessageEvent).data)))
  events.addEventListener('log', () => void siteLog().then(log => log.hearLog()))
  return () => events.close()
}

/**
 * Another text stands on disk. With nothing of ours under way it is taken at once; while ours is being sent, the server's
 * own check of revisions tells whether the two collide.
 */
async function hear(revision: string): Promise<void> {
  const { saved, revision: ours } = useApp.getState()
  if (saved !== 'saved' || ours === undefined || revision === ours) return
  const job = await fetchJob().catch(() => undefined)
  const now = useApp.getState()
  if (!job || now.revision === job.revision) return
  if (now.saved === 'saved') now.reload(job.files, job.revision)
}

/** Ours over theirs: their text stays among the kept revisions on disk. */
export async function keepMine(): Promise<void> {
  const job = await fetchJob().catch(() => undefined)
  if (!job) return
  useApp.getState().setSaved('saved', job.revision)
  saveDocument()
}

/** Theirs over ours; ours comes back with undo. */
export async function takeTheirs(): Promise<void> {
  const job = await fetchJob().catch(() => undefined)
  if (!job) return
  useApp.getState().reload(job.files, job.revision)
  forgetKept()
}
