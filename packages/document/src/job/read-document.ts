import type { Result } from '@dawnlift/core/result'
import { assert, failure, success } from '@dawnlift/core/result'
import { editJob } from './edit-job.js'
import { documentVersion, type JobDocument, jobSchema } from './job-schema.js'
import { migrations } from './migrations.js'
import { schemaProblems } from './schema-problems.js'
import { readYaml, type YamlSource } from './yaml-source.js'

export interface ReadDocument {
  readonly document: JobDocument
  readonly source: YamlSource
  readonly raw: Readonly<Record<string, unknown>>
  /** What migrations changed on the way, one sentence each. */
  readonly migrated: readonly string[]
}

let last:
  | { readonly text: string; readonly fileName: string; readonly read: Result<ReadDocument> }
  | undefined

/**
 * YAML text → migrated, schema-checked document. Every problem at once, with its line. The last one is kept: a job is read
 * for the files it names, and then again with them.
 */
export function readDocument(text: string, fileName: string): Result<ReadDocument> {
  if (last?.text === text && last.fileName === fileName) return last.read
  const read = readAfresh(text, fileName)
  last = { text, fileName, read }
  return read
}

function readAfresh(text: string, fileName: string): Result<ReadDocument> {
  const read = readYaml(text, fileName)
  if (!read.ok) return read
  const { raw } = read.value
  if (!isBlock(raw))
    return one(
      'job/not-a-job',
      fileName,
      'This is not a job document: it must be a block of keys that begins with “dawnlift: 1”.',
    )
  const version = versionOf(raw.dawnlift, read.value.place(['dawnlift']))
  if (!version.ok) return version
  if (version.value === documentVersion) return checked(read.value, raw, [])
  const { text: newText, says } = migrate(text, version.value)
  const again = readYaml(newText, fileName)
  if (!again.ok) return again
  return isBlock(again.value.raw)
    ? checked(again.value, again.value.raw, says)
    : one(
        'job/not-a-job',
        fileName,
        'This job has nothing left in it once it is brought up to this version. Begin with a new one: dawnlift new NAME',
      )
}

const isBlock = (raw: unknown): raw is Record<string, unknown> =>
  typeof raw === 'object' && raw !== null && !Array.isArray(raw)

const one = (code: string, at: string, say: string): Result<never> => failure([{ code, at, say }])

function checked(
  source: YamlSource,
  raw: Record<string, unknown>,
  migrated: readonly string[],
): Result<ReadDocument> {
  const parsed = jobSchema.safeParse(raw)
  if (!parsed.success) return failure(schemaProblems(parsed.error.issues, jobSchema, source))
  return success({ document: parsed.data, source, raw, migrated })
}

function versionOf(found: unknown, at: string): Result<number> {
  const write = `write “dawnlift: ${documentVersion}”`
  if (found === undefined)
    return one('job/no-version', at, `The document does not say its version; ${write} as its first line.`)
  if (typeof found !== 'number' || !Number.isInteger(found) || found < 0)
    return one('job/version', at, `“dawnlift: ${String(found)}” is not a version; ${write}.`)
  if (found <= documentVersion) return success(found)
  const say = `This job was saved as version ${found}; this program reads up to ${documentVersion}. Update the program.`
  return one('job/newer-version', at, say)
}

/** The text brought up to the present version, comments kept, and what changed. */
export function migrate(
  text: string,
  version: number,
): { readonly text: string; readonly says: readonly string[] } {
  const steps = migrations.filter(step => step.from >= version)
  const moved = steps.reduce((now, step) => {
    const numbered = editJob(step.change(now), [{ kind: 'set', path: ['dawnlift'], value: step.to }])
    assert(numbered.ok, `the document is still YAML after migration to ${step.to}`)
    return numbered.value
  }, text)
  return { text: moved, says: steps.map(step => step.says) }
}
