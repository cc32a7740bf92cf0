import type { Problem } from '@dawnlift/core/result'
import { editJob, type JobEdit, type RawJob, rawJob } from '@dawnlift/document/job'
import { reading } from '../../../import/index.js'
import { useApp } from '../../../state/index.js'
import { words } from '../../../words/index.js'

/**
 * Writes edits into the document, if the job can still be built with them; else says why not and changes nothing.
 * Problems the document had before do not stand in the way: mending goes step by step.
 */
export async function applyEdits(make: (raw: RawJob) => readonly JobEdit[]): Promise<readonly Problem[]> {
  const { files, edit } = useApp.getState()
  if (!files) return []
  const raw = rawJob(files.document)
  if (!raw.ok) return raw.problems
  const edits = make(raw.value)
  const next = edits.length > 0 ? editJob(files.document, edits) : undefined
  if (!next) return []
  if (!next.ok) return next.problems
  const read = await reading().job({ ...files, document: next.value })
  if (!read.ok) {
    const before = await reading().job(files)
    const known = new Set(before.ok ? [] : before.problems.map(each => each.say))
    const fresh = read.problems.filter(each => !known.has(each.say))
    if (fresh.length > 0) return fresh
  }
  if (useApp.getState().files?.document !== files.document)
    return [{ code: 'edit/overtaken', at: 'job.yaml', say: words.walls.overtaken }]
  edit(next.value)
  return []
}
