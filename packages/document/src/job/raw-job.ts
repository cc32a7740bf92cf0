import type { Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import { readYaml } from './yaml-source.js'

/** A job as its author wrote it: keys and texts, nothing filled in, nothing converted. For finding the path of an edit. */
export type RawJob = Readonly<Record<string, unknown>>

/** The document as plain data without checking it against the schema; paths into it are paths for `editJob`. */
export function rawJob(text: string, fileName = 'job.yaml'): Result<RawJob> {
  const read = readYaml(text, fileName)
  if (!read.ok) return read
  const { raw } = read.value
  if (typeof raw === 'object' && raw !== null && !Array.isArray(raw)) return success(raw as RawJob)
  return failure([
    {
      code: 'job/not-a-job',
      at: fileName,
      say: 'This is not a job document: it must be a block of keys that begins with “dawnlift: 1”.',
    },
  ])
}
