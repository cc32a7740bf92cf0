import { words } from '../words/index.js'
import type { PlacedProblem } from './problem-places.js'

/** Problems in words; pointing at one, or going to it by Tab, shows where it is on the preview. */
export function ProblemRows({
  problems,
  active,
  point,
}: {
  readonly problems: readonly PlacedProblem[]
  readonly active: number | undefined
  readonly point: (number: number) => void
}) {
  if (problems.length === 0) return null
  return (
    <section aria-label={words.problems(problems.length)}>
      <h3 className="limit">{words.problems(problems.length)}</h3>
      <ol className="problem-rows">
        {problems.map(({ number, problem }) => (
          <li key={number}>
            <button
              type="button"
              aria-pressed={number === active}
              onClick={() => point(number)}
              onFocus={() => point(number)}
            >
              <span className="pin-number">{number}</span>
              <span>{problem.say}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  )
}
