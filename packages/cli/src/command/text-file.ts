import { existsSync, readFileSync, statSync } from 'node:fs'
import { resolve } from 'node:path'
import { failure, type Result, success } from '@dawnlift/core/result'
import type { Screen } from '../screen/terminal.js'

const largest = 200 * 1024 * 1024

/** Text of a file somebody named on the command line. `usual` says what its size is like. */
export function readTextFile(name: string, screen: Screen, usual: string): Result<string> {
  const path = resolve(screen.folder, name)
  if (!existsSync(path) || !statSync(path).isFile())
    return failure([
      {
        code: 'cli/file',
        at: name,
        say: `There is no file ${name}. Check the name and the folder you are in.`,
      },
    ])
  if (statSync(path).size > largest)
    return failure([
      { code: 'cli/file', at: name, say: `${name} is larger than 200 MB; ${usual}. Is it the right file?` },
    ])
  return success(readFileSync(path, 'utf8'))
}
