import type { Plan } from '@dawnlift/core/plan'
import type { ReactNode } from 'react'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'
import { FirstPicture } from './first-picture.js'
import { ProblemList } from './problem-list.js'

/** A place that needs a plan: shows what keeps it from being made, or the place itself. */
export function WithPlan({ children }: { readonly children: (plan: Plan) => ReactNode }) {
  const plan = useApp(state => state.plan)
  const job = useApp(state => state.job)
  const problems = useApp(state => state.problems)
  return (
    <div className="inner">
      {problems.length > 0 && <ProblemList problems={problems} />}
      {plan
        ? children(plan)
        : problems.length === 0 &&
          (job ? <FirstPicture job={job} /> : <p className="soft">{words.noPlanYet}</p>)}
    </div>
  )
}
