import type { Plan } from '@dawnlift/core/plan'
import { type ReactNode, useDeferredValue, useMemo } from 'react'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'
import { FirstPicture } from './first-picture.js'
import { ProblemList } from './problem-list.js'

/**
 * A place that needs a plan: shows what keeps it from being made, or the place itself. A new plan is drawn piece by piece
 * behind the old one, so that the hand is never kept waiting for it.
 */
export function WithPlan({ children }: { readonly children: (plan: Plan) => ReactNode }) {
  const made = useApp(state => state.plan)
  const job = useApp(state => state.job)
  const problems = useApp(state => state.problems)
  const plan = useDeferredValue(made, undefined)
  const place = useMemo(() => plan && children(plan), [plan, children])
  return (
    <div className="inner">
      {problems.length > 0 && <ProblemList problems={problems} />}
      {place ??
        (problems.length === 0 &&
          (job ? <FirstPicture job={job} /> : <p className="soft">{words.noPlanYet}</p>))}
    </div>
  )
}
