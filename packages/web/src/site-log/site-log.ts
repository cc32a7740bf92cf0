import type { Problem } from '@dawnlift/core/result'
import { addedLines, logFile, logRows, toldFile, writeStrike } from '@dawnlift/formats/site-log'
import {
  forgetEntry,
  type JobFiles,
  keepEntry,
  servedLog,
  strikeEntry,
  type UnsentEntry,
  unsentEntries,
  useApp,
} from '../state/index.js'

const again = 3000
let timer: ReturnType<typeof setTimeout> | undefined
/** What is said to the server and heard from it about the log never overlaps. */
let turn: Promise<void> = Promise.resolve()

/** The files beside a job with what the server does not have yet at the end of its log. */
export const withUnsentLog = (beside: JobFiles['beside']): JobFiles['beside'] => ({
  ...beside,
  [logFile]: new TextEncoder().encode(wholeLog()),
})

function wholeLog(): string {
  const lines = unsentEntries(servedLog.job).flatMap(({ lines, isStruck }) => (isStruck ? [] : lines))
  return servedLog.text + addedLines(servedLog.text, lines)
}

/** Writes lines down: kept on this device at once, on disk as soon as the server answers. */
export function logLines(lines: readonly string[]): void {
  if (!keepEntry(servedLog.job, lines)) useApp.getState().setKeeps(false)
  show()
  sendLog()
}

/** Takes a line back by striking it. The log itself only ever grows. */
export function strikeLine(line: number): void {
  const waiting = waitingEntry(line)
  if (waiting) strikeEntry(waiting)
  else keepEntry(servedLog.job, [writeStrike(line)])
  show()
  sendLog()
}

/** The entry a line of the shown log waits in; none where the server has it. */
export function waitingEntry(line: number): UnsentEntry | undefined {
  const text = wholeLog().split('\n')[line - 1]
  if (text === undefined || line <= linesOf(servedLog.text)) return undefined
  return unsentEntries(servedLog.job).find(entry => !entry.isStruck && entry.lines.includes(text))
}

const linesOf = (text: string): number =>
  text.split('\n').length - (text.endsWith('\n') || text === '' ? 1 : 0)

function show(): void {
  const { revision, setLog } = useApp.getState()
  // A job that was dropped on the page has no log of the server's.
  if (revision !== undefined)
    setLog(new TextEncoder().encode(wholeLog()), unsentEntries(servedLog.job).length)
}

/** Sends what waits, in order; tried again while the server is away. */
export function sendLog(): void {
  clearTimeout(timer)
  turn = turn.then(sendAll)
}

async function sendAll(): Promise<void> {
  const { setServed, setRefused } = useApp.getState()
  try {
    for (const entry of unsentEntries(servedLog.job)) {
      const refused = await send(entry.lines)
      if (refused) return setRefused(refused)
      const strike = entry.isStruck ? lastLines(entry.lines) : []
      if (strike.length > 0) await send(strike.map(writeStrike))
      forgetEntry(entry.key)
      setServed(true)
      show()
    }
  } catch {
    setServed(false)
    timer = setTimeout(sendLog, again)
  }
}

/** Problems where the server does not take them; throws where it does not answer. */
async function send(lines: readonly string[]): Promise<readonly Problem[] | undefined> {
  const answer = await fetch('/api/job/log', {
    method: 'POST',
    headers: { 'content-type': 'text/plain' },
    body: lines.join('\n'),
  })
  const body = (await answer.json()) as { readonly log?: string; readonly problems?: readonly Problem[] }
  if (answer.ok && body.log !== undefined) servedLog.text = body.log
  return answer.ok ? undefined : (body.problems ?? [])
}

/** Where these lines stand in the log, not struck yet. */
function lastLines(lines: readonly string[]): readonly number[] {
  const text = servedLog.text.split('\n')
  const standing = logRows(servedLog.text, 'UTC').filter(row => !row.isStruck)
  return standing.filter(row => lines.includes(text[row.line - 1] ?? '')).map(row => row.line)
}

/** Somebody has logged something, or told everybody: read anew. */
export function hearLog(): void {
  turn = turn.then(async () => {
    const [log, told] = await Promise.all([logFile, toldFile].map(fileOnServer)).catch(() => [])
    if (log) servedLog.text = new TextDecoder().decode(log)
    show()
    if (told && useApp.getState().revision !== undefined) useApp.getState().setTold(told)
  })
}

async function fileOnServer(name: string): Promise<Uint8Array | undefined> {
  const answer = await fetch(`/api/job/files/${name}`)
  return answer.ok ? new Uint8Array(await answer.arrayBuffer()) : undefined
}
