import { limitName } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import { Button, NumberInput } from '@mantine/core'
import { useState } from 'react'
import { Caution } from '../../parts/index.js'
import { askDoubt, type Doubt } from '../../state/index.js'
import { words } from '../../words/index.js'
import { Asking, useAsked } from '../asking.js'
import { dayText } from './day-text.js'

const said = words.doubt

const replays = 60
type Mishaps = {
  readonly breakdowns: number
  readonly repair: number
  readonly late: number
  readonly lateBy: number
}

/** How sure the finish is: the campaign run through many courses of weather, and through the lead's own mishaps. */
export function DoubtSheet({ plan }: { readonly plan: Plan }) {
  const { answer, asking, ask } = useAsked<Doubt>(plan)
  const [mishaps, setMishaps] = useState<Mishaps>({ breakdowns: 0, repair: 2, late: 0, lateBy: 1 })
  const rates = {
    breakdownsPerHour: mishaps.breakdowns / 100,
    repairHours: mishaps.repair,
    lateChance: mishaps.late / 100,
    lateHours: mishaps.lateBy,
  }
  return (
    <section className="sheet" aria-labelledby="doubt-title">
      <h2 id="doubt-title">{said.title}</h2>
      {!asking && (
        <>
          <div className="mishaps">
            <Mishap label={said.breakdowns} name="breakdowns" {...{ mishaps, setMishaps }} />
            <Mishap label={said.repair} name="repair" {...{ mishaps, setMishaps }} />
            <Mishap label={said.late} name="late" {...{ mishaps, setMishaps }} />
            <Mishap label={said.lateBy} name="lateBy" {...{ mishaps, setMishaps }} />
          </div>
          <p>
            <Button onClick={() => ask(progress => askDoubt({ replays, rates }, progress))}>
              {said.run(replays)}
            </Button>{' '}
            <span className="soft">{words.doubtHint}</span>
          </p>
        </>
      )}
      <Asking asking={asking} what={words.replaying} />
      {answer && <DoubtTable doubt={answer} />}
    </section>
  )
}

function Mishap({
  label,
  name,
  mishaps,
  setMishaps,
}: {
  readonly label: string
  readonly name: keyof Mishaps
  readonly mishaps: Mishaps
  readonly setMishaps: (mishaps: Mishaps) => void
}) {
  return (
    <NumberInput
      label={label}
      value={mishaps[name]}
      min={0}
      max={100}
      hideControls
      onChange={value => setMishaps({ ...mishaps, [name]: Number(value) || 0 })}
    />
  )
}

const percent = (share: number): string => said.percent(Math.round(share * 100))

function DoubtTable({ doubt }: { readonly doubt: Doubt }) {
  const { quantiles, lost, chance, planned, weather, caution, replays: run, finished } = doubt
  const date = (text: string | undefined) => (text === undefined ? said.beyond : dayText(text))
  return (
    <>
      <p role="status">
        {said.upBy(dayText(planned))} <strong>{percent(chance.chance)}</strong>{' '}
        {said.ofRuns(run, percent(chance.between[0]), percent(chance.between[1]))}
      </p>
      <table className="plain wide ruled">
        <thead>
          <tr>
            {said.heads.map(head => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {quantiles.map(each => (
            <tr key={each.share}>
              <th scope="row">{percent(each.share)}</th>
              <td>{date(each.date)}</td>
              <td>{said.between(date(each.between[0]), date(each.between[1]))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {lost.length > 0 && (
        <p>
          {said.lost(
            lost
              .slice(0, 5)
              .map(({ cause, days }) => said.lostTo(days.toFixed(1), causeName(cause)))
              .join(', '),
          )}
        </p>
      )}
      <p className="soft">{said.inTime(weather, finished, run, caution)}</p>
      <Caution>{words.doubtCaution}</Caution>
    </>
  )
}

const causeName = (cause: Doubt['lost'][number]['cause']): string =>
  cause === 'breakdown' ? said.breakdown : cause === 'late delivery' ? said.delivery : limitName(cause)
