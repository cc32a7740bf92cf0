import type { Problem } from '@dawnlift/core/result'
import { closestName } from '@dawnlift/core/result'
import { z } from 'zod'
import type { YamlSource } from './yaml-source.js'

type Issue = z.core.$ZodIssue

/** Every issue of the schema as a problem in our words, with line and path. */
export const schemaProblems = (
  issues: readonly Issue[],
  schema: z.ZodType,
  source: YamlSource,
): readonly Problem[] => issues.flatMap(issue => issueProblems(issue, [], schema, source))

function issueProblems(
  issue: Issue,
  above: readonly PropertyKey[],
  schema: z.ZodType,
  source: YamlSource,
): readonly Problem[] {
  const path = [...above, ...issue.path]
  if (issue.code === 'unrecognized_keys')
    return issue.keys.map(key => unknownKey(key, path, keysAt(schema, path), source))
  if (issue.code === 'invalid_union' && issue.errors.length > 0)
    return nearestBranch(issue.errors).flatMap(each => issueProblems(each, path, schema, source))
  return [{ code: problemCode(issue), at: source.place(path), say: sentence(issue.message, path) }]
}

/** Of several readings the one that got furthest is the one that was meant. */
function nearestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  const depth = (issues: readonly Issue[]) => Math.max(...issues.map(issue => issue.path.length), 0)
  return [...branches].sort((a, b) => depth(b) - depth(a) || a.length - b.length)[0] ?? []
}

function unknownKey(
  key: string,
  path: readonly PropertyKey[],
  known: readonly string[],
  source: YamlSource,
): Problem {
  const near = closestName(key, known)
  const hint = near ? `did you mean “${near}”?` : `known here: ${known.join(', ')}`
  return {
    code: 'job/unknown-key',
    at: source.placeKey([...path, key]),
    say: `The key “${key}” is not known here; ${hint}`,
    values: { key, ...(near ? { meant: near } : {}) },
  }
}

function problemCode(issue: Issue): string {
  if (issue.code === 'custom') return String(issue.params?.problem ?? 'job/value')
  if (issue.code === 'invalid_type' && issue.message.startsWith('is missing')) return 'job/missing'
  if (issue.message.includes('has no unit')) return 'quantity/no-unit'
  return `job/${issue.code.replaceAll('_', '-')}`
}

function sentence(message: string, path: readonly PropertyKey[]): string {
  const key = path.at(-1)
  const subject =
    typeof key === 'number' ? `Entry ${key + 1}` : key === undefined ? 'The document' : `“${String(key)}”`
  return message.startsWith('is ') || message.startsWith('contains ')
    ? `${subject} ${message}`
    : `${subject}: ${message}`
}

/** The keys a block of the schema knows, whatever wraps it. */
function keysAt(schema: z.core.$ZodType, path: readonly PropertyKey[]): readonly string[] {
  const inner = unwrapped(schema)
  const [key, ...rest] = path
  if (inner instanceof z.ZodUnion) return inner.options.flatMap(option => keysAt(option, path))
  if (inner instanceof z.ZodObject) {
    if (key === undefined) return Object.keys(inner.shape)
    const next: z.core.$ZodType | undefined = inner.shape[String(key)]
    return next ? keysAt(next, rest) : []
  }
  if (key === undefined) return []
  if (inner instanceof z.ZodArray) return keysAt(inner.element, rest)
  if (inner instanceof z.ZodRecord) return keysAt(inner.valueType, rest)
  return []
}

function unwrapped(schema: z.core.$ZodType): z.core.$ZodType {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodPrefault) return unwrapped(schema.unwrap())
  return schema
}
