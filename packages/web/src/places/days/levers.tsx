import { type LeverRow, limitName, sayLever } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import { Button } from '@mantine/core'
import { askLevers, type TriedLevers, useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { Asking, useAsked } from '../asking.js'
import { Scroller } from '../scroller.js'
import { dayText } from './day-text.js'

/** What would buy time, each lever planned for real and laid side by side. */
export function Levers({ plan }: { readonly plan: Plan }) {
  const { answer, asking, ask } = useAsked<TriedLevers>(plan)
  return (
    <section className="sheet" aria-labelledby="levers-title">
      <h2 id="levers-title">What would buy days</h2>
      {!answer && !asking && (
        <p>
          <Button onClick={() => ask(askLevers)}>Try the levers</Button>{' '}
          <span className="soft">{words.leversHint}</span>
        </p>
      )}
      <Asking asking={asking} what={words.trying} />
      {answer && <LeverTable tried={answer} />}
    </section>
  )
}

function LeverTable({ tried }: { readonly tried: TriedLevers }) {
  const { asPlanned, rows, bestPair } = tried
  return (
    <>
      <Scroller label="Levers">
        <table className="plain wide ruled">
          <thead>
            <tr>
              {['lever', 'print days', 'the last lift', 'sooner', 'printing', 'on site', 'binds next'].map(
                head => (
                  <th key={head} scope="col">
                    {head}
                  </th>
                ),
              )}
            </tr>
          </thead>
          <tbody>
            <Row row={asPlanned} name="as planned" />
            {rows.map(row => (
              <Row key={JSON.stringify(row.levers)} row={row} />
            ))}
            {bestPair && <Row row={bestPair} />}
          </tbody>
        </table>
      </Scroller>
      <p className="soft">{words.leversMeasure}</p>
    </>
  )
}

function Row({ row, name }: { readonly row: LeverRow; readonly name?: string }) {
  const units = useApp(state => state.units)
  const pulled = row.levers.map(lever => (lever.kind === 'own' ? lever.name : sayLever(lever, units)))
  return (
    <tr>
      <th scope="row">{name ?? pulled.join(', and ')}</th>
      <td>{row.printDays}</td>
      <td>{row.finished ? dayText(row.finishDate) : 'not in time'}</td>
      <td>{row.daysGained === 0 ? '—' : `${row.daysGained} days`}</td>
      <td>{(row.printTime / 3600).toFixed(0)} h</td>
      <td>{(row.siteTime / 3600).toFixed(0)} h</td>
      <td>{row.bindsNext ? limitName(row.bindsNext) : '—'}</td>
    </tr>
  )
}
