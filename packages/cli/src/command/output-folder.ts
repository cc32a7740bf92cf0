import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { dirname, join } from 'node:path'
import type { Problem } from '@dawnlift/core/result'
import type { Output } from '@dawnlift/formats/outputs'

/** Sub-folders a plan fills; whatever else lies in a folder is not ours to replace. */
const ours = ['calendars', 'drawings', 'machine', 'sheets', 'tables']

/** Why this folder cannot be filled with the files of a plan; nothing when it can. Asked before anything is computed. */
export function folderProblem(folder: string, asked: string): Problem | undefined {
  if (!existsSync(folder)) return undefined
  if (!statSync(folder).isDirectory())
    return {
      code: 'cli/out-is-file',
      at: asked,
      say: `${asked} is a file; a folder is needed. Choose another name.`,
    }
  const others = readdirSync(folder).filter(name => !ours.includes(name))
  if (others.length === 0) return undefined
  return {
    code: 'cli/out-not-ours',
    at: asked,
    say: `${asked} holds other things (${others.slice(0, 3).join(', ')}${others.length > 3 ? ', …' : ''}) and would be replaced whole. Choose an empty or new folder, or one that an earlier plan has filled.`,
  }
}

/** Everything into a folder aside first, then put in its place: a stop half-way leaves what was there. */
export async function fillFolder(
  folder: string,
  outputs: readonly Output[],
  tell: (done: number, name: string) => void,
): Promise<void> {
  mkdirSync(dirname(folder), { recursive: true })
  const aside = mkdtempSync(`${folder}.part-`)
  try {
    for (const [index, output] of outputs.entries()) {
      const file = join(aside, output.name)
      mkdirSync(dirname(file), { recursive: true })
      writeFileSync(file, await output.make())
      tell(index + 1, output.name)
    }
    putInPlace(aside, folder)
  } catch (error) {
    rmSync(aside, { recursive: true, force: true })
    throw error
  }
}

/** The old folder steps aside before the new one takes its name, and is removed only then. */
function putInPlace(aside: string, folder: string): void {
  if (!existsSync(folder)) {
    renameSync(aside, folder)
    return
  }
  const old = `${aside}-old`
  renameSync(folder, old)
  try {
    renameSync(aside, folder)
  } catch (error) {
    renameSync(old, folder)
    throw error
  }
  rmSync(old, { recursive: true, force: true })
}
