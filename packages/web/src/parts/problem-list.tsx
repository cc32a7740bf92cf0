import type { Problem } from '@dawnlift/core/result'
import { words } from '../words/index.js'

/** Everything that keeps a plan from being made: where, what, and what to do. */
export const ProblemList = ({ problems }: { readonly problems: readonly Problem[] }) => (
  <section className="sheet problems" aria-label="Problems">
    <h2 className="limit">{words.problems(problems.length)}</h2>
    <ul>
      {problems.map(problem => (
        <li key={`${problem.at} ${problem.code}`}>
          <code>{problem.at}</code>
          <br />
          {problem.say}
        </li>
      ))}
    </ul>
  </section>
)
