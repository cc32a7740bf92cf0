/** Files beside the job that the server does not have yet; `undefined` is one it has to take away. */
export type Unsent = ReadonlyMap<string, Uint8Array | undefined>

const shelf = 'dawnlift-unsent'
const address = (job: string, name: string): string => `/unsent/${job}/${encodeURIComponent(name)}`

/** On this device until the server has it: a dropped file outlives a killed tab. */
export async function keepFile(job: string, name: string, content: Uint8Array): Promise<void> {
  await (await caches.open(shelf)).put(address(job, name), new Response(new Uint8Array(content)))
}

export async function forgetFile(job: string, name: string): Promise<void> {
  await (await caches.open(shelf)).delete(address(job, name))
}

export async function keptFiles(job: string): Promise<Unsent> {
  const kept = await caches.open(shelf)
  const files = new Map<string, Uint8Array>()
  for (const request of await kept.keys()) {
    const { pathname } = new URL(request.url)
    const found = await kept.match(request)
    if (!found || !pathname.startsWith(`/unsent/${job}/`)) continue
    files.set(
      decodeURIComponent(pathname.slice(`/unsent/${job}/`.length)),
      new Uint8Array(await found.arrayBuffer()),
    )
  }
  return files
}

/** What has to go to the server, or from it, for one set of files to become the other. */
export function changedFiles(
  before: Readonly<Record<string, Uint8Array>>,
  after: Readonly<Record<string, Uint8Array>>,
): Unsent {
  const changed = new Map<string, Uint8Array | undefined>()
  for (const name of Object.keys(before)) if (!(name in after)) changed.set(name, undefined)
  for (const [name, content] of Object.entries(after))
    if (before[name] !== content) changed.set(name, content)
  return changed
}
