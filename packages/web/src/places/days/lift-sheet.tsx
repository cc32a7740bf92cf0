import { type Lift, sayGain } from '@dawnlift/core/campaign'
import { clockText } from '@dawnlift/core/clock'
import { type Limit, sayLimit, sayQuantity } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawLimits } from '@dawnlift/drawing/views'
import { useMemo } from 'react'
import { Caution, OpenNumber, Picture } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { sheetWords } from '../sheet-words.js'

const said = words.lift

/** Why one lift is not higher: every limit with what it alone would allow, opened to its numbers. */
export function LiftSheet({ lift, plan }: { readonly lift: Lift; readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const zone = plan.job.site.timeZone
  const drawing = useMemo(
    () =>
      drawLimits(
        { job: plan.job, lift, hours: plan.campaign.hours, say: limit => sayLimit(limit, units, zone) },
        figure(170, 92, sheetWords(plan)),
      ),
    [plan, lift, units, zone],
  )
  const got = lift.lastLayer - lift.firstLayer + 1
  return (
    <section className="sheet" aria-label={said.label(lift.id)}>
      <h2>{said.why(lift.id, got, lift.wishedLayers)}</h2>
      {lift.leftFor !== undefined && <p>{said.leaves(lift.leftFor)}</p>}
      <table className="plain wide">
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
          <LimitRow limit={lift.binding} layers={got} zone={zone} binding />
          {lift.runnersUp.map(({ limit, layers }) => (
            <LimitRow key={`${limit.kind} ${layers}`} limit={limit} layers={layers} zone={zone} />
          ))}
        </tbody>
      </table>
      <Gains lift={lift} />
      <p>
        {said.standing}{' '}
        <OpenNumber
          behind={{
            how: words.how.standing,
            inputs: [
              [said.asked, plan.job.rules.standSafety.value.toFixed(2)],
              [said.counted, said.percent(Math.round(plan.job.rules.imperfection.value * 100))],
              [said.mix, plan.job.mix.provenance === 'default' ? said.defaultMix : plan.job.mix.provenance],
            ],
            source: '[Suiker2018], [Roussel2018]',
            caution: words.caution,
          }}
        >
          {lift.safety.toFixed(2)}
        </OpenNumber>
        {said.pause}{' '}
        <OpenNumber
          behind={{
            how: words.how.pause,
            inputs: [
              [said.lift, `${clockText(lift.start, zone)}–${clockText(lift.end, zone)}`],
              [said.layersOf, `${lift.firstLayer}–${lift.lastLayer}`],
            ],
            source: words.onSite.pauseSource,
          }}
        >
          {said.minutes(Math.max(0, Math.floor(lift.pauseBudget / 60)))}
        </OpenNumber>
        .
      </p>
      <Caution>{words.standing}</Caution>
      <Picture drawing={drawing} label={said.chart(lift.id)} />
    </section>
  )
}

function LimitRow({
  limit,
  layers,
  zone,
  binding = false,
}: {
  readonly limit: Limit
  readonly layers: number
  readonly zone: string
  readonly binding?: boolean
}) {
  const units = useApp(state => state.units)
  const quantity = (value: number) => sayQuantity(value, limit.unit, units)
  return (
    <tr className={binding ? 'limit' : ''}>
      <td>
        <OpenNumber
          behind={{
            how: binding ? words.how.binding : words.how.runnerUp,
            inputs: [
              [said.found, quantity(limit.demand)],
              [said.allowed, quantity(limit.capacity)],
              ...(limit.at === undefined ? [] : [[said.at, clockText(limit.at, zone)] as const]),
            ],
            source: limit.source,
          }}
        >
          {sayLimit(limit, units, zone)}
        </OpenNumber>
      </td>
      <td>{said.layers(layers)}</td>
    </tr>
  )
}

function Gains({ lift }: { readonly lift: Lift }) {
  const units = useApp(state => state.units)
  const gains = lift.gains ?? (lift.nextGain ? [lift.nextGain] : [])
  if (gains.length === 0) return null
  return (
    <>
      <h3>{said.gains}</h3>
      <ul>
        {gains.map(gain => (
          <li key={`${gain.lever} ${gain.setting}`}>{sayGain(gain, units)}</li>
        ))}
      </ul>
    </>
  )
}
