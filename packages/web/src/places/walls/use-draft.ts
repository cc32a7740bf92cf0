import type { Plan } from '@dawnlift/core/plan'
import type { Problem } from '@dawnlift/core/result'
import { useEffect, useState } from 'react'
import { reading } from '../../import/index.js'
import { useApp } from '../../state/index.js'
import type { Draft } from './draft.js'

export interface Drafted {
  readonly draft: Draft
  /** Ids of the drawing’s own parts. */
  readonly drawn: ReadonlySet<string>
  /** What keeps the document from being a job; the draft is then the last that was one. */
  readonly problems: readonly Problem[]
}

/** The parts as the document has them this moment: an edit shows at once, its plan when it is made. */
export function useDraft(plan: Plan): Drafted {
  const files = useApp(state => state.files)
  const [drafted, setDrafted] = useState<Drafted>({ draft: plan.job, drawn: new Set(), problems: [] })
  useEffect(() => {
    let stale = false
    if (files)
      void reading()
        .job(files)
        .then(read => {
          if (stale) return
          setDrafted(last =>
            read.ok
              ? { draft: read.value.job, drawn: new Set(read.value.drawn), problems: [] }
              : { ...last, problems: read.problems },
          )
        })
    return () => {
      stale = true
    }
  }, [files])
  return drafted
}
