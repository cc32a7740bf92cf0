import type { Problem, Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import type { Document } from 'yaml'
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

/** YAML text → migrated, schema-checked document. Every problem at once, with its line. */
export function readDocument(text: string, fileName: string): Result<ReadDocument> {
  const read = readYaml(text, fileName)
  if (!read.ok) return read
  const { raw } = read.value
  if (!isBlock(raw))
    return one(
      'job/not-a-job',
      fileName,
      'This is not a job document: it must be a block of keys that begins with “dawnlift: 1”.',
    )
  const version = raw.dawnlift
  const fault = versionFault(version, read.value.place(['dawnlift']))
  if (fault) return failure([fault])
  if (version === documentVersion) return checked(read.value, raw, [])
  const { text: newText, says } = migrate(read.value.document, Number(version))
  const again = readYaml(newText, fileName)
  if (!again.ok) return again
  return isBlock(again.value.raw)
    ? checked(again.value, again.value.raw, says)
    : one('job/not-a-job', fileName, 'Nothing is left after migration.')
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

function versionFault(version: unknown, at: string): Problem | undefined {
  if (version === undefined)
    return {
      code: 'job/no-version',
      at,
      say: `The document does not say its version; write “dawnlift: ${documentVersion}” as its first line.`,
    }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0)
    return {
      code: 'job/version',
      at,
      say: `“dawnlift: ${String(version)}” is not a version; write “dawnlift: ${documentVersion}”.`,
    }
  if (version > documentVersion)
    return {
      code: 'job/newer-version',
      at,
      say: `This job was saved as version ${version}; this program reads up to ${documentVersion}. Update the program.`,
    }
  return undefined
}

/** The document's text brought up to the present version, comments kept, and what changed. */
export function migrate(
  document: Document,
  version: number,
): { readonly text: string; readonly says: readonly string[] } {
  const steps = migrations.filter(step => step.from >= version)
  for (const step of steps) {
    step.change(document)
    document.set('dawnlift', step.to)
  }
  return { text: document.toString({ lineWidth: 0 }), says: steps.map(step => step.says) }
}
