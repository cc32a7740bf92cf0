import type { Problem } from '@dawnlift/core/result'
import type { JobEdit, RawJob } from '@dawnlift/document/job'
import { reading } from '../../../import/index.js'
import { useApp } from '../../../state/index.js'
import { words } from '../../../words/index.js'

/** Writes edits into the document, if the job can still be built with them; else says why not and changes nothing. */
export async function applyEdits(make: (raw: RawJob) => readonly JobEdit[]): Promise<readonly Problem[]> {
  const { files, edit } = useApp.getState()
  if (!files) return []
  const raw = await reading().raw(files.document)
  if (!raw.ok) return raw.problems
  const edits = make(raw.value)
  if (edits.length === 0) return []
  const next = await reading().edited(files, edits)
  if (!next.ok) return next.problems
  if (useApp.getState().files?.document !== files.document)
    return [{ code: 'edit/overtaken', at: 'job.yaml', say: words.walls.overtaken }]
  edit(next.value)
  return []
}
