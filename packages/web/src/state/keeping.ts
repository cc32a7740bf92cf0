import type { JobFiles } from './job-files.js'
import { useApp } from './store.js'

const slot = 'dawnlift.unsaved'
const quiet = 400
let timer: ReturnType<typeof setTimeout> | undefined

interface Kept {
  readonly document: string
  readonly revision: string | undefined
}

/** Written at every edit, before the server is asked: a killed tab finds its last edit here. */
export function keepLocally(document: string, revision: string | undefined): void {
  try {
    localStorage.setItem(slot, JSON.stringify({ document, revision } satisfies Kept))
  } catch {
    // Storage full or forbidden: the edit still goes to the server; the status line says where it stands.
    useApp.getState().setSaved('local')
  }
}

export function keptDocument(): Kept | undefined {
  try {
    const text = localStorage.getItem(slot)
    return text ? (JSON.parse(text) as Kept) : undefined
  } catch {
    return undefined
  }
}

export const forgetKept = (): void => {
  try {
    localStorage.removeItem(slot)
  } catch {
    // Where nothing can be kept there is nothing to forget.
  }
}

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
  const { files, revision, setSaved, setServed } = useApp.getState()
  if (!files) return
  try {
    const answer = await fetch('/api/job/document', {
      method: 'PUT',
      headers: { 'content-type': 'application/yaml', ...(revision ? { 'if-match': revision } : {}) },
      body: files.document,
    })
    setServed(true)
    if (answer.status === 409) return setSaved('conflict')
    if (!answer.ok) throw new Error(String(answer.status))
    const { revision: newer } = (await answer.json()) as { revision: string }
    setSaved('saved', newer)
    if (useApp.getState().files?.document === files.document) forgetKept()
    else saveDocument()
    refreshShelf()
  } catch {
    setSaved('waiting')
    timer = setTimeout(send, 3000)
  }
}

/** The offline shelf keeps what the server said last: asked once more, so that it holds the text just saved. */
const refreshShelf = () => void fetch('/api/job').catch(() => undefined)

/** Puts a file beside the job: at once in this page, and on disk as soon as the server takes it. */
export async function putFile(name: string, content: Uint8Array): Promise<boolean> {
  useApp.getState().addFile(name, content)
  if (useApp.getState().revision === undefined) return false
  const answer = await fetch(`/api/job/files/${encodeURIComponent(name)}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/octet-stream' },
    body: new Uint8Array(content),
  }).catch(() => undefined)
  if (answer?.ok) void fetch(`/api/job/files/${encodeURIComponent(name)}`).catch(() => undefined)
  return answer?.ok === true
}

export interface ServedJob {
  readonly files: JobFiles
  readonly revision: string
}

/** The job the local server holds: its document and every file beside it. */
export async function fetchJob(): Promise<ServedJob | undefined> {
  const answer = await fetch('/api/job')
  if (!answer.ok) return undefined
  const job = (await answer.json()) as { document: string; revision: string; beside: readonly string[] }
  const beside = await Promise.all(
    job.beside.map(async name => {
      const file = await fetch(`/api/job/files/${encodeURIComponent(name)}`)
      return [name, new Uint8Array(await file.arrayBuffer())] as const
    }),
  )
  return { files: { document: job.document, beside: Object.fromEntries(beside) }, revision: job.revision }
}
