import type { Problem, Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import { type Document, parseDocument } from 'yaml'
import { spliced } from './splice-yaml.js'
import { readYaml } from './yaml-source.js'

/** One change of the document: a value to set at a path, or the path to remove. */
export type JobEdit =
  | { readonly kind: 'set'; readonly path: readonly (string | number)[]; readonly value: unknown }
  | { readonly kind: 'remove'; readonly path: readonly (string | number)[] }

/** The text with the edits in it. Comments, order, blanks and every line that is not edited stay as they were. */
export function editJob(text: string, edits: readonly JobEdit[], fileName = 'job.yaml'): Result<string> {
  const problems: Problem[] = []
  let now = text
  for (const edit of edits) {
    const read = readYaml(now, fileName)
    if (!read.ok) return read
    const { document, place } = read.value
    if (edit.path.length === 0 || !fits(document, edit))
      problems.push({
        code: 'job/edit',
        at: place(edit.path),
        say: `There is no place “${edit.path.join('.')}” in the document to ${edit.kind === 'set' ? 'write to' : 'remove'}.`,
      })
    else now = edited(now, document, edit)
  }
  return problems.length > 0 ? failure(problems) : success(now)
}

/** A path fits when blocks or lists lead to it; to remove something, it must be there. */
function fits(document: Document, { kind, path }: JobEdit): boolean {
  for (let depth = 1; depth < path.length; depth++) {
    const inner: unknown = document.getIn(path.slice(0, depth), true)
    if (inner === undefined) return kind === 'set'
    if (typeof inner !== 'object' || inner === null || !('items' in inner)) return false
  }
  return kind === 'set' || document.hasIn(path)
}

/**
 * Cuts the edit into the text where that says exactly what the library's own edit says;
 * otherwise lets the library write the document anew, which keeps comments but not every blank.
 */
function edited(text: string, document: Document, edit: JobEdit): string {
  const cut = spliced(text, document, edit)
  if (edit.kind === 'set') document.setIn(edit.path, document.createNode(edit.value))
  else document.deleteIn(edit.path)
  const wanted = JSON.stringify(document.toJS())
  if (cut !== undefined) {
    const again = parseDocument(cut)
    if (again.errors.length === 0 && JSON.stringify(again.toJS()) === wanted) return cut
  }
  return document.toString({ lineWidth: 0 })
}
