import { explainLift, type Lift, type PrintDay } from '@dawnlift/core/campaign'
import { clockText } from '@dawnlift/core/clock'
import { sayLimit } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawDayClock, drawLimits, drawTimeHeight } from '@dawnlift/drawing/views'
import { Group } from '@mantine/core'
import { useMemo } from 'react'
import { Caution, Figure, OpenNumber, Picture, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { sheetWords } from '../sheet-words.js'
import { dayText } from './day-text.js'
import { Levers } from './levers.js'

/** Which lift on which day, at which clock time, and why not more. */
export const DaysPlace = () => <WithPlan>{plan => <Days plan={plan} />}</WithPlan>

function Days({ plan }: { readonly plan: Plan }) {
  const selection = useApp(state => state.selection)
  const { days, bound, finished } = plan.campaign
  const lifts = days.flatMap(day => day.lifts)
  const lift = lifts.find(each => selection?.kind === 'lift' && each.id === selection.id) ?? lifts[0]
  const day = days.find(each => lift && each.lifts.includes(lift))
  const last = days.at(-1)
  return (
    <>
      <Group gap="xl" mb="md">
        <Figure value={days.length} what="print days" />
        <Figure
          value={finished && last ? dayText(last.date) : 'not within the weather given'}
          what="the last lift"
        />
        <Figure
          value={
            <OpenNumber
              behind={{
                how: `No campaign can be shorter: ${bound.how}.`,
                source: 'proven from the same hours, print times and rules',
              }}
            >
              {bound.days}
            </OpenNumber>
          }
          what="print days at the very least"
        />
        <Figure value={plan.sections.length} what="sections" />
      </Group>
      <TimeHeight plan={plan} />
      <div className="days">
        <ol className="daylist" aria-label="Print days">
          {days.map(each => (
            <Day key={each.date} day={each} plan={plan} chosen={lift?.id} />
          ))}
        </ol>
        <div>
          {lift && day && <LiftSheet lift={lift} day={day} plan={plan} />}
          <Levers plan={plan} />
        </div>
      </div>
    </>
  )
}

function TimeHeight({ plan }: { readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const drawing = useMemo(
    () =>
      drawTimeHeight(
        { job: plan.job, sections: plan.sections, campaign: plan.campaign },
        figure(300, 78, sheetWords(plan)),
        limit => sayLimit(limit, units, plan.job.site.timeZone),
      ),
    [plan, units],
  )
  return (
    <section className="sheet">
      <Picture drawing={drawing} label="Height of each section over the days of the campaign" />
    </section>
  )
}

function Day({
  day,
  plan,
  chosen,
}: {
  readonly day: PrintDay
  readonly plan: Plan
  readonly chosen: string | undefined
}) {
  const zone = plan.job.site.timeZone
  return (
    <li>
      <h3>
        Day {day.number}, {dayText(day.date)}{' '}
        <span className="soft">
          {clockText(day.start, zone)}–{clockText(day.end, zone)}
          {day.chilled ? ', chilled water' : ''}
        </span>
      </h3>
      {day.lifts.map(lift => (
        <button
          key={lift.id}
          type="button"
          className="liftrow"
          aria-pressed={lift.id === chosen}
          onClick={() => {
            useApp.getState().select({ kind: 'lift', id: lift.id })
            useApp.getState().setMoment(lift.start)
          }}
        >
          <strong>{lift.id}</strong>
          <span>
            {clockText(lift.start, zone)}–{clockText(lift.end, zone)}
          </span>
          <span>
            layers {lift.firstLayer}–{lift.lastLayer}
          </span>
          <span className="why">{explainLift(lift, plan.job.units, zone)}</span>
        </button>
      ))}
    </li>
  )
}

function LiftSheet({
  lift,
  day,
  plan,
}: {
  readonly lift: Lift
  readonly day: PrintDay
  readonly plan: Plan
}) {
  const units = useApp(state => state.units)
  const zone = plan.job.site.timeZone
  const say = (limit: Lift['binding']) => sayLimit(limit, units, zone)
  const limits = useMemo(
    () =>
      drawLimits(
        { job: plan.job, lift, hours: plan.campaign.hours, say: limit => sayLimit(limit, units, zone) },
        figure(170, 92, sheetWords(plan)),
      ),
    [plan, lift, units, zone],
  )
  const clock = useMemo(() => drawDayClock(plan, day.date, figure(170, 120, sheetWords(plan))), [plan, day])
  return (
    <section className="sheet" aria-label={`Lift ${lift.id}`}>
      <h2 style={{ marginTop: 0 }}>Why {lift.id} is not higher</h2>
      <Picture drawing={limits} label={`Limits of lift ${lift.id} over the hours`} />
      <table className="plain">
        <thead>
          <tr>
            <th>limit</th>
            <th>alone allows</th>
            <th>source</th>
          </tr>
        </thead>
        <tbody>
          <tr className="limit">
            <td>{say(lift.binding)}</td>
            <td>{lift.lastLayer - lift.firstLayer + 1} layers</td>
            <td>{lift.binding.source}</td>
          </tr>
          {lift.runnersUp.map(({ limit, layers }) => (
            <tr key={limit.kind}>
              <td>{say(limit)}</td>
              <td>{layers} layers</td>
              <td>{limit.source}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>
        Standing safety{' '}
        <OpenNumber
          behind={{
            how: 'Height the green wall could stand at the end of the lift over the height it has; the least of first-layer shape, plastic collapse and buckling, on the lower band of the mix.',
            source: '[Suiker2018], [Roussel2018]',
            caution: words.caution,
          }}
        >
          {lift.safety.toFixed(2)}
        </OpenNumber>
        ; pause before a cold joint {Math.max(0, Math.floor(lift.pauseBudget / 60))} min.
      </p>
      <Caution>{words.caution}</Caution>
      <Picture drawing={clock} label={`Day ${day.number} as a clock: weather, open hours, prints, calls`} />
    </section>
  )
}
