import { limitName } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import { Button, NumberInput } from '@mantine/core'
import { useState } from 'react'
import { Caution } from '../../parts/index.js'
import { askDoubt, type Doubt } from '../../state/index.js'
import { words } from '../../words/index.js'
import { Asking, useAsked } from '../asking.js'
import { dayText } from './day-text.js'

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
      <h2 id="doubt-title">How sure the finish is</h2>
      {!asking && (
        <>
          <div className="mishaps">
            <Mishap label="Breakdowns per 100 h" name="breakdowns" {...{ mishaps, setMishaps }} />
            <Mishap label="each of hours" name="repair" {...{ mishaps, setMishaps }} />
            <Mishap label="Late deliveries, %" name="late" {...{ mishaps, setMishaps }} />
            <Mishap label="each by hours" name="lateBy" {...{ mishaps, setMishaps }} />
          </div>
          <p>
            <Button onClick={() => ask(progress => askDoubt({ replays, rates }, progress))}>
              Run it {replays} times
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

const percent = (share: number): string => `${Math.round(share * 100)} %`

function DoubtTable({ doubt }: { readonly doubt: Doubt }) {
  const { quantiles, lost, chance, planned, weather, caution, replays: run, finished } = doubt
  const date = (text: string | undefined) => (text === undefined ? 'beyond the weather given' : dayText(text))
  return (
    <>
      <p role="status">
        Up by {dayText(planned)}, as planned: <strong>{percent(chance.chance)}</strong> of {run} runs (
        {percent(chance.between[0])} to {percent(chance.between[1])} is what so few runs can tell).
      </p>
      <table className="plain wide ruled">
        <thead>
          <tr>
            <th scope="col">as sure as</th>
            <th scope="col">up by</th>
            <th scope="col">true date lies between</th>
          </tr>
        </thead>
        <tbody>
          {quantiles.map(each => (
            <tr key={each.share}>
              <th scope="row">{percent(each.share)}</th>
              <td>{date(each.date)}</td>
              <td>
                {date(each.between[0])} and {date(each.between[1])}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {lost.length > 0 && (
        <p>
          Working days lost, on average:{' '}
          {lost
            .slice(0, 5)
            .map(({ cause, days }) => `${days.toFixed(1)} to ${causeName(cause)}`)
            .join(', ')}
          .
        </p>
      )}
      <p className="soft">
        {weather}; {finished} of {run} runs were up in time. {caution}
      </p>
      <Caution>{words.doubtCaution}</Caution>
    </>
  )
}

const causeName = (cause: Doubt['lost'][number]['cause']): string =>
  cause === 'breakdown' ? 'breakdowns' : cause === 'late delivery' ? 'late deliveries' : limitName(cause)
