import { limitName } from '@dawnlift/core/campaign'
import { type JobLeverKind, type JobLeverRow, jobLeverFacts, sayJobLevers } from '@dawnlift/core/lever'
import type { Plan } from '@dawnlift/core/plan'
import { Button } from '@mantine/core'
import { useState } from 'react'
import { Caution } from '../../parts/index.js'
import { type DoubtedLevers, useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { moneyIn, moreMoneyIn } from '../money.js'
import { Scroller } from '../scroller.js'
import { dayText } from './day-text.js'

type Shown = Pick<DoubtedLevers, 'asPlanned' | 'rows' | 'without' | 'pairs' | 'triples'>

/** The plan as it stands, each kind of lever at its best setting, the best of them together; and all settings when asked. */
export function LeverTable({ levers, plan }: { readonly levers: Shown; readonly plan: Plan }) {
  const [all, setAll] = useState(false)
  const units = useApp(state => state.units)
  const { asPlanned, rows, pairs, triples } = levers
  const best = rows.filter((row, i) => rows.findIndex(other => kindOf(other) === kindOf(row)) === i)
  const name = (row: JobLeverRow) => sayJobLevers(row.levers, units)
  const { heads, asItStands, together } = words.levers
  return (
    <>
      <Scroller label={words.levers.title}>
        <table className="plain wide ruled figured">
          <thead>
            <tr>
              {heads(plan.job.costs.currency).map(head => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <Row row={asPlanned} name={asItStands} plan={plan} />
            {(all ? rows : best).map(row => (
              <Row key={name(row)} row={row} name={name(row)} plan={plan} />
            ))}
            {pairs?.best && <Row row={pairs.best} name={together(2, name(pairs.best))} plan={plan} />}
            {triples?.best && <Row row={triples.best} name={together(3, name(triples.best))} plan={plan} />}
          </tbody>
        </table>
      </Scroller>
      {rows.length > best.length && (
        <p>
          <Button variant="default" aria-pressed={all} onClick={() => setAll(!all)}>
            {all ? words.levers.bestOnly : words.levers.all(rows.length)}
          </Button>
        </p>
      )}
      <p className="soft">{words.levers.measure}</p>
      {plan.soFar && <p className="soft">{words.ofWhatIsLeft}</p>}
      <Caution>{words.levers.caution}</Caution>
      <Needs kinds={best.flatMap(row => kindOf(row) ?? [])} without={levers.without} />
    </>
  )
}

const kindOf = ({ levers }: JobLeverRow): JobLeverKind | undefined => levers[0]?.kind

function Row({ row, name, plan }: { readonly row: JobLeverRow; readonly name: string; readonly plan: Plan }) {
  const { currency } = plan.job.costs
  const { sooner, notUp, noPrice } = words.levers
  const isPlain = row.levers.length === 0
  return (
    <tr className={isPlain ? 'standing-row' : ''}>
      <th scope="row">{name}</th>
      <td>{row.printDays}</td>
      <td className="nowrap">{row.finished ? dayText(row.finishDate) : notUp}</td>
      <td className="nowrap">{isPlain ? '·' : sooner(row.daysGained)}</td>
      <td className="nowrap">
        {isPlain ? moneyIn(currency)(row.cost) : moreMoneyIn(currency)(row.costMore)}
        {row.unpriced.length > 0 && <abbr title={noPrice(row.unpriced.join(', '))}>*</abbr>}
      </td>
      <td>{row.leastSafety.toFixed(2)}</td>
      <td>{row.bindsNext ? limitName(row.bindsNext) : '·'}</td>
    </tr>
  )
}

/** What each lever takes for granted, what has to be settled first, and what has no price here. */
function Needs({
  kinds,
  without,
}: {
  readonly kinds: readonly JobLeverKind[]
  readonly without: readonly JobLeverKind[]
}) {
  const { needs, first, unpriced, notHere } = words.levers
  return (
    <details>
      <summary>{needs}</summary>
      <dl className="needs">
        {kinds.map(kind => {
          const facts = jobLeverFacts[kind]
          return (
            <div key={kind}>
              <dt>{leverName(kind)}</dt>
              <dd>
                {facts.assumes}.{facts.first && ` ${first(facts.first)}`}
                {facts.unpriced && ` ${unpriced(facts.unpriced)}`}
              </dd>
            </div>
          )
        })}
      </dl>
      {without.length > 0 && <p className="soft">{notHere(without.map(leverName).join(', '))}</p>}
    </details>
  )
}

const leverName = (kind: JobLeverKind): string => kind.replaceAll('-', ' ')
