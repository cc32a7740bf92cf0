import { compareLeverRows, isJobLeverKind, type JobLeverRow, leverStageWords } from '@dawnlift/core/lever'
import type { Plan } from '@dawnlift/core/plan'
import { Button } from '@mantine/core'
import { useState } from 'react'
import { askLevers, type DoubtedLevers } from '../../state/index.js'
import { words } from '../../words/index.js'
import { Asking, useAsked } from '../asking.js'
import { LeverTable } from './lever-table.js'

/** Rows that have come so far, of which plan. */
interface Heard {
  readonly plan: Plan
  readonly rows: readonly JobLeverRow[]
}

/** What would buy days: each lever pulled and the whole job planned anew, laid side by side as they come. */
export function Levers({ plan }: { readonly plan: Plan }) {
  const { answer, asking, ask } = useAsked<DoubtedLevers>(plan)
  const [heard, setHeard] = useState<Heard>()
  const start = () => {
    setHeard({ plan, rows: [] })
    ask(progress =>
      askLevers(progress, row =>
        setHeard(old => (old?.plan === plan ? { plan, rows: [...old.rows, row] } : old)),
      ),
    )
  }
  const shown = answer ?? (asking && heard?.plan === plan ? soFar(heard.rows) : undefined)
  const { levers } = words
  return (
    <section className="sheet" aria-labelledby="levers-title">
      <h2 id="levers-title">{levers.title}</h2>
      {!answer && !asking && (
        <p>
          <Button onClick={start}>{levers.start}</Button> <span className="soft">{levers.hint}</span>
        </p>
      )}
      <Asking asking={asking} what={stageOf(asking?.stage)} />
      {shown && <LeverTable levers={shown} plan={plan} />}
    </section>
  )
}

const stageOf = (stage: string | undefined): string =>
  (leverStageWords as Readonly<Record<string, string>>)[stage ?? ''] ?? words.levers.working

/** Those that have come, in the order they will stand in. */
function soFar(
  rows: readonly JobLeverRow[],
): Pick<DoubtedLevers, 'asPlanned' | 'rows' | 'without'> | undefined {
  const asPlanned = rows.find(({ levers }) => levers.length === 0)
  const pulled = rows.filter(({ levers: [lever] }) => lever && isJobLeverKind(lever.kind))
  return asPlanned && { asPlanned, rows: [...pulled].sort(compareLeverRows), without: [] }
}
