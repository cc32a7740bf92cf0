import { existsSync, readFileSync, realpathSync, statSync } from 'node:fs'
import { dirname, isAbsolute, join, relative, resolve, sep } from 'node:path'
import { initGeometry } from '@dawnlift/core/geometry'
import { type Plan, planJob, stageWords } from '@dawnlift/core/plan'
import { assert, failure, type Result, success } from '@dawnlift/core/result'
import { type OpenedJob, openJob } from '@dawnlift/formats/job-folder'
import { progressLine } from '../screen/progress.js'
import type { Screen } from '../screen/terminal.js'

const largestFile = 100 * 1024 * 1024

/** Reads a job folder (or its `job.yaml`) with the files beside it. */
export async function readJob(path: string, screen: Screen): Promise<Result<OpenedJob>> {
  const file = jobFile(path, screen)
  if (!existsSync(file) || !statSync(file).isFile()) {
    return failure([
      {
        code: 'job/not-found',
        at: path,
        say: `There is no job at ${path}: a folder with a job.yaml is needed. Make one with: dawnlift new NAME`,
      },
    ])
  }
  if (statSync(file).size > largestFile) {
    return failure([
      {
        code: 'job/too-large',
        at: path,
        say: `${path} is larger than 100 MB; a job is a text of some kilobytes. Is it a job.yaml?`,
      },
    ])
  }
  await initGeometry()
  return openJob({ document: readFileSync(file, 'utf8'), read: besideJob(file) })
}

export function jobFile(path: string, screen: Screen): string {
  const given = resolve(screen.folder, path)
  return existsSync(given) && statSync(given).isDirectory() ? join(given, 'job.yaml') : given
}

/** Reads files beside a job's own. */
export const besideJob =
  (file: string) =>
  (name: string): Uint8Array | undefined =>
    readBeside(dirname(file), name)

/** A file within the job folder; one outside it, or behind a link that leaves it, is not there. */
function readBeside(folder: string, name: string): Uint8Array | undefined {
  const path = join(folder, name)
  if (!existsSync(path)) return undefined
  const way = relative(realpathSync(folder), realpathSync(path))
  if (isAbsolute(way) || way.split(sep)[0] === '..') return undefined
  const facts = statSync(path)
  return facts.isFile() && facts.size <= largestFile ? readFileSync(path) : undefined
}

export interface PlannedFolder {
  readonly opened: OpenedJob
  readonly plan: Plan
  /** The job's own file. */
  readonly file: string
  readonly read: (name: string) => Uint8Array | undefined
}

export async function planFolder(path: string, screen: Screen): Promise<Result<PlannedFolder>> {
  const opened = await readJob(path, screen)
  if (!opened.ok) return opened
  const line = progressLine(screen, stageWords)
  const plan = await planJob(opened.value, {
    progress: (stage, share) => Promise.resolve(line(stage, share)),
  })
  assert(plan, 'a plan that nobody cancels is made')
  const file = jobFile(path, screen)
  return success({ opened: opened.value, plan, file, read: besideJob(file) })
}
