/** Lines of the site log that go to the server as one, until it has them. */
export interface UnsentEntry {
  readonly key: string
  readonly lines: readonly string[]
  /** Taken back before it was sent: it is sent all the same, and then struck, as on paper. */
  readonly isStruck?: boolean
}

/** The log of the served job, as the server last told it. */
export const servedLog = { job: '', text: '' }

const prefix = (job: string): string => `dawnlift.log.${job}.`
/** Where this device keeps nothing they live as long as the page. */
const held = new Map<string, UnsentEntry>()
let count = 0

/** Written at the tap, before the server is asked. False where nothing can be kept. */
export function keepEntry(job: string, lines: readonly string[]): boolean {
  // Two pages may write within one millisecond; the order within a page is that of the taps.
  const own = String(Math.random()).slice(2, 8)
  const key = `${prefix(job)}${Date.now()}.${String(++count).padStart(4, '0')}.${own}`
  return put({ key, lines })
}

export const strikeEntry = (entry: UnsentEntry): boolean => put({ ...entry, isStruck: true })

export function forgetEntry(key: string): void {
  held.delete(key)
  try {
    localStorage.removeItem(key)
  } catch {
    // Where nothing can be kept there is nothing to forget.
  }
}

/** What of this job waits for the server, whichever page wrote it, in the order it was written. */
export function unsentEntries(job: string): readonly UnsentEntry[] {
  const kept = keptKeys(job).flatMap(key => readEntry(key) ?? [])
  const own = [...held.values()].filter(({ key }) => key.startsWith(prefix(job)))
  return [...kept, ...own].sort((a, b) => (a.key < b.key ? -1 : 1))
}

function put(entry: UnsentEntry): boolean {
  try {
    localStorage.setItem(entry.key, JSON.stringify(entry))
    return true
  } catch {
    held.set(entry.key, entry)
    return false
  }
}

function keptKeys(job: string): readonly string[] {
  try {
    return Object.keys(localStorage).filter(key => key.startsWith(prefix(job)) && !held.has(key))
  } catch {
    return []
  }
}

function readEntry(key: string): UnsentEntry | undefined {
  try {
    return JSON.parse(localStorage.getItem(key) ?? '') as UnsentEntry
  } catch {
    return undefined
  }
}
