import { existsSync } from 'node:fs'
import { resolve } from 'node:path'
import { failure, type Result, success } from '@dawnlift/core/result'
import type { Screen } from '../screen/terminal.js'

/** The file a picture goes to, if one is asked for; an existing file is left alone. */
export function pictureFile(screen: Screen, asked: string | undefined): Result<string | undefined> {
  if (asked === undefined) return success(undefined)
  const target = resolve(screen.folder, asked)
  if (!existsSync(target)) return success(target)
  const say = `${asked} exists already; choose another name. Nothing was written.`
  return failure([{ code: 'cli/out-exists', at: '--out', say }])
}
