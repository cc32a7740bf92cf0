import type { Problem } from '@dawnlift/core/result'
import { useState } from 'react'
import { isNewer } from '../state/index.js'
import { words } from '../words/index.js'
import { MendDocument } from './mend-document.js'

/** Everything that keeps a plan from being made: where, what, and what to do. A place in the job’s text can be gone to. */
export function ProblemList({ problems }: { readonly problems: readonly Problem[] }) {
  const [line, setLine] = useState<number>()
  const mayMend = !isNewer(problems)
  return (
    <section className="sheet problems" aria-label={words.problemList}>
      <h2 className="limit">{words.problems(problems.length)}</h2>
      <ul>
        {problems.map(problem => {
          const found = mayMend ? lineOf(problem) : undefined
          return (
            <li key={`${problem.at} ${problem.code} ${problem.say}`}>
              {found === undefined ? (
                <code>{problem.at}</code>
              ) : (
                <button type="button" className="number" onClick={() => setLine(found)}>
                  <code>{problem.at}</code>
                </button>
              )}
              <br />
              {problem.say}
            </li>
          )
        })}
      </ul>
      {line !== undefined && <MendDocument line={line} close={() => setLine(undefined)} />}
    </section>
  )
}

/** `job.yaml:41:9 walls[3].thickness` is on line 41; other files are mended elsewhere. */
export function lineOf({ at }: Pick<Problem, 'at'>): number | undefined {
  const found = /^job\.yaml(?::(\d+))?/.exec(at)
  return found ? Number(found[1] ?? 1) : undefined
}
