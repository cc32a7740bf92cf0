/** An edit that the server does not have yet, as this device keeps it. */
export interface KeptEdit {
  readonly document: string
  /** The text on the server that it rests on. */
  readonly revision: string | undefined
  /** When it was made [ms]. */
  readonly at: number
}

const prefix = (job: string): string => `dawnlift.unsaved.${job}.`
/** This page among those open on the same job; gone with it. */
const page = globalThis.crypto?.randomUUID?.() ?? String(Math.random())
const lockOf = (name: string): string => `dawnlift.page.${name}`

/** Held as long as the page lives: an edit whose page is gone belongs to nobody and is offered to the next. */
if (globalThis.navigator?.locks) void navigator.locks.request(lockOf(page), () => new Promise(() => {}))

/** Written at every edit, before the server is asked: a killed tab finds its last edit here. False where nothing can be kept. */
export function keepEdit(job: string, document: string, revision: string | undefined): boolean {
  try {
    const edit: KeptEdit = { document, revision, at: Date.now() }
    localStorage.setItem(prefix(job) + page, JSON.stringify(edit))
    return true
  } catch {
    return false
  }
}

export function forgetEdit(job: string, name: string = page): void {
  try {
    localStorage.removeItem(prefix(job) + name)
  } catch {
    // Where nothing can be kept there is nothing to forget.
  }
}

/** The newest edit of this job whose page is gone. It now belongs to this page. */
export async function orphanedEdit(job: string): Promise<KeptEdit | undefined> {
  const living = await livingPages()
  const orphans = keptNames(job)
    .filter(name => !living.has(lockOf(name)))
    .flatMap(name => {
      const edit = readEdit(job, name)
      return edit ? [{ name, edit }] : []
    })
    .sort((a, b) => b.edit.at - a.edit.at)
  const newest = orphans[0]
  if (!newest) return undefined
  forgetEdit(job, newest.name)
  return newest.edit
}

async function livingPages(): Promise<ReadonlySet<string>> {
  const locks = await globalThis.navigator?.locks?.query()
  return new Set(locks?.held?.flatMap(({ name }) => name ?? []) ?? [])
}

function keptNames(job: string): readonly string[] {
  try {
    return Object.keys(localStorage)
      .filter(key => key.startsWith(prefix(job)))
      .map(key => key.slice(prefix(job).length))
  } catch {
    return []
  }
}

function readEdit(job: string, name: string): KeptEdit | undefined {
  try {
    return JSON.parse(localStorage.getItem(prefix(job) + name) ?? '') as KeptEdit
  } catch {
    return undefined
  }
}
