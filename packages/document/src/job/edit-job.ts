import type { Problem, Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import { readYaml } from './yaml-source.js'

/** One change of the document: a value to set at a path, or the path to remove. */
export type JobEdit =
  | { readonly kind: 'set'; readonly path: readonly (string | number)[]; readonly value: unknown }
  | { readonly kind: 'remove'; readonly path: readonly (string | number)[] }

/** The text with the edits in it; comments, order and everything not edited stay as they were. */
export function editJob(text: string, edits: readonly JobEdit[], fileName = 'job.yaml'): Result<string> {
  const read = readYaml(text, fileName)
  if (!read.ok) return read
  const { document, place } = read.value
  const problems: Problem[] = []
  for (const edit of edits) {
    if (edit.path.length === 0 || !fits(document, edit.path))
      problems.push({
        code: 'job/edit',
        at: place(edit.path),
        say: `There is no place “${edit.path.join('.')}” in the document to change.`,
      })
    else if (edit.kind === 'set') document.setIn(edit.path, keptNode(document, edit))
    else document.deleteIn(edit.path)
  }
  return problems.length > 0 ? failure(problems) : success(document.toString({ lineWidth: 0 }))
}

type Yaml = Extract<ReturnType<typeof readYaml>, { ok: true }>['value']['document']

/** A path fits when no scalar stands where a block is needed. */
function fits(document: Yaml, path: readonly (string | number)[]): boolean {
  for (let depth = 1; depth < path.length; depth++) {
    const inner = document.getIn(path.slice(0, depth), true)
    if (inner === undefined) return true
    if (typeof inner !== 'object' || inner === null || !('items' in inner)) return false
  }
  return true
}

/** A scalar keeps its node, and with it the comment on its line. */
function keptNode(document: Yaml, edit: Extract<JobEdit, { kind: 'set' }>): unknown {
  const node = document.getIn(edit.path, true)
  const isScalar = typeof node === 'object' && node !== null && 'value' in node && !('items' in node)
  const plain = typeof edit.value !== 'object' || edit.value === null
  if (!isScalar || !plain) return document.createNode(edit.value)
  node.value = edit.value
  return node
}
