import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { ExitCode } from './command/command-context.js'
import { runDawnlift } from './run-dawnlift.js'

export const root = fileURLToPath(new URL('../../../', import.meta.url))
export const gardenWall = join(root, 'fixtures/jobs/garden-wall')

/** What a command left behind, on both streams. */
export interface Said {
  readonly code: ExitCode
  readonly out: string
  readonly err: string
}

/** Runs a command as the terminal would, in `folder`; `heard` is told of every line on the error stream. */
export async function run(
  words: readonly string[],
  folder: string,
  heard: (text: string, stop: () => void) => void = () => {},
): Promise<Said> {
  const out: string[] = []
  const err: string[] = []
  let stop = () => {}
  const stopped = new Promise<void>(done => {
    stop = done
  })
  const code = await runDawnlift(words, {
    out: text => void out.push(text),
    err: text => {
      err.push(text)
      heard(text, stop)
    },
    live: false,
    folder,
    stopped: () => stopped,
  })
  return { code, out: out.join('\n'), err: err.join('\n') }
}

/** An empty folder of its own, and how to be rid of it. */
export function emptyFolder(): { readonly folder: string; readonly remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'dawnlift-cli-'))
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) }
}
