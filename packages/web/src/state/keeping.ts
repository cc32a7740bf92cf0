import type { Problem } from '@dawnlift/core/result'
import { logFile } from '@dawnlift/formats/site-log'
import type { JobFiles } from './job-files.js'
import { forgetEdit, keepEdit } from './kept-edits.js'
import { useApp } from './store.js'
import { changedFiles, forgetFile, keepFile, type Unsent } from './unsent-files.js'
import { servedLog, unsentEntries } from './unsent-log.js'

const quiet = 400
const again = 3000
let timer: ReturnType<typeof setTimeout> | undefined
/** The job on the server by its place, so that what one job left unsaved is never taken for another’s. */
let job = ''
const unsent = new Map<string, Uint8Array | undefined>()

/** Written at every edit, before the server is asked. */
export function keepLocally(before: JobFiles, after: JobFiles, revision: string | undefined): void {
  for (const [name, content] of changedFiles(before.beside, after.beside)) waitToSend(name, content)
  useApp.getState().setKeeps(keepEdit(job, after.document, revision))
}

function waitToSend(name: string, content: Uint8Array | undefined): void {
  unsent.set(name, content)
  const kept = content ? keepFile(job, name, content) : forgetFile(job, name)
  void kept.catch(() => useApp.getState().setKeeps(false))
}

/** Files that an earlier page could not send any more go with the next edit. */
export function sendLater(files: Unsent): void {
  for (const [name, content] of files) unsent.set(name, content)
}

export const forgetKept = (): void => forgetEdit(job)

/** Sends the newest text a moment after the last key, with the revision it rests on; retries while the server is away. */
export function saveDocument(): void {
  clearTimeout(timer)
  const { saved, revision } = useApp.getState()
  if ((saved === 'local' && revision === undefined) || saved === 'conflict') return
  useApp.getState().setSaved('saving')
  timer = setTimeout(send, quiet)
}

/** Sends at once what waits for the server. */
export function sendWaiting(): void {
  if (useApp.getState().saved !== 'waiting') return
  clearTimeout(timer)
  void send()
}

async function send(): Promise<void> {
  const { files, revision, setSaved, setServed, setRefused } = useApp.getState()
  if (!files) return
  try {
    // New files go before the document that names them, old ones after it has stopped naming them.
    for (const [name, content] of [...unsent]) if (content) await sendFile(name, content)
    const answer = await fetch('/api/job/document', {
      method: 'PUT',
      headers: { 'content-type': 'application/yaml', ...(revision ? { 'if-match': revision } : {}) },
      body: files.document,
    })
    setServed(true)
    if (answer.status === 409) return setSaved('conflict')
    if (!answer.ok) throw new Refusal(await problemsOf(answer))
    const { revision: newer } = (await answer.json()) as { revision: string }
    for (const [name, content] of [...unsent]) if (!content) await sendFile(name, content)
    setRefused([])
    setSaved('saved', newer)
    if (useApp.getState().files?.document === files.document) forgetKept()
    else saveDocument()
    refreshShelf()
  } catch (error) {
    setRefused(error instanceof Refusal ? error.problems : [])
    setSaved('waiting')
    timer = setTimeout(send, again)
  }
}

async function sendFile(name: string, content: Uint8Array | undefined): Promise<void> {
  const answer = await putOnServer(name, content)
  // Of a file that was never there there is nothing to take away.
  if (!answer.ok && !(content === undefined && answer.status === 404))
    throw new Refusal(await problemsOf(answer))
  if (unsent.get(name) === content) unsent.delete(name)
  await forgetFile(job, name).catch(() => undefined)
}

const putOnServer = (name: string, content: Uint8Array | undefined): Promise<Response> =>
  fetch(
    `/api/job/files/${encodeURIComponent(name)}`,
    content
      ? {
          method: 'PUT',
          headers: { 'content-type': 'application/octet-stream' },
          body: new Blob([new Uint8Array(content)]),
        }
      : { method: 'DELETE' },
  )

/** The server is there and says no; it is asked again, since a full disk may be cleared. */
class Refusal extends Error {
  constructor(readonly problems: readonly Problem[]) {
    super(problems.map(each => each.say).join(' '))
  }
}

async function problemsOf(answer: Response): Promise<readonly Problem[]> {
  const body = (await answer.json().catch(() => ({}))) as { readonly problems?: readonly Problem[] }
  return (
    body.problems ?? [{ code: 'server/status', at: answer.url, say: `The server says ${answer.status}.` }]
  )
}

/** The offline shelf keeps what the server said last: asked once more, so that it holds the text just saved. */
const refreshShelf = () => void fetch('/api/job').catch(() => undefined)

export interface ServedJob {
  readonly files: JobFiles
  readonly revision: string
  /** Names the job by its place on the server’s disk. */
  readonly id: string
}

/** The job the local server holds: its document and every file beside it. */
export async function fetchJob(): Promise<ServedJob | undefined> {
  const answer = await fetch('/api/job')
  if (!answer.ok) return undefined
  const served = (await answer.json()) as {
    document: string
    revision: string
    id?: string
    beside: readonly string[]
  }
  const beside = await Promise.all(
    served.beside.map(async name => {
      const file = await fetch(`/api/job/files/${encodeURIComponent(name)}`)
      return [name, new Uint8Array(await file.arrayBuffer())] as const
    }),
  )
  job = served.id ?? ''
  return {
    files: { document: served.document, beside: await withLog(job, Object.fromEntries(beside)) },
    revision: served.revision,
    id: job,
  }
}

/** What was logged while the server was away stands at the end of the log it gives. */
async function withLog(id: string, beside: JobFiles['beside']): Promise<JobFiles['beside']> {
  servedLog.job = id
  servedLog.text = new TextDecoder().decode(beside[logFile] ?? new Uint8Array())
  if (unsentEntries(id).length === 0) return beside
  return (await import('../site-log/index.js')).withUnsentLog(beside)
}
