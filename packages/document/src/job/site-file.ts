import type { Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import { z } from 'zod'
import { block, file, identifier, quantity, words } from './field.js'
import { schemaProblems } from './schema-problems.js'
import { readYaml } from './yaml-source.js'

/** Several jobs of one site that share machine and crew. */
export interface SiteFile {
  readonly name: string
  readonly buildings: readonly { readonly name: string; readonly job: string }[]
  /** From the end of wash-out at one building to the beginning of set-up at another [s]. */
  readonly move: number
}

const siteFileSchema = block({
  dawnliftSite: z.literal(1, {
    error: issue => `“${String(issue.input)}” is not a version of this document; write “dawnliftSite: 1”`,
  }),
  name: words(),
  buildings: z
    .array(
      block({
        name: identifier(),
        job: file().meta({ description: 'A job folder beside this file' }),
      }),
      { error: 'Give the buildings as a list of name and job' },
    )
    .min(2, 'Give two buildings or more: one alone is a job')
    .max(6, 'At most six buildings are shared out; divide the site'),
  move: quantity('time', { least: 0, most: 12 * 3600 }).meta({
    description: 'From the end of wash-out at one building to the beginning of set-up at another',
  }),
}).meta({ title: 'Buildings of one site that share machine and crew' })

/** `site.yaml` → the site; or all its problems, each with its line. */
export function parseSiteFile(text: string, fileName = 'site.yaml'): Result<SiteFile> {
  const read = readYaml(text, fileName)
  if (!read.ok) return read
  const parsed = siteFileSchema.safeParse(read.value.raw)
  if (!parsed.success) return failure(schemaProblems(parsed.error.issues, siteFileSchema, read.value))
  const { name, buildings, move } = parsed.data
  const twice = (key: 'name' | 'job') =>
    buildings.flatMap((building, i) =>
      buildings.findIndex(other => other[key] === building[key]) < i
        ? [
            {
              code: 'site/twice',
              at: read.value.place(['buildings', i, key]),
              say: `“${building[key]}” stands here a second time; give each building a name and a job of its own.`,
            },
          ]
        : [],
    )
  const problems = [...twice('name'), ...twice('job')]
  return problems.length > 0 ? failure(problems) : success({ name, buildings, move })
}

/** For editors that complete and check while one types. */
export const siteFileJsonSchema = () => z.toJSONSchema(siteFileSchema, { io: 'input' })
