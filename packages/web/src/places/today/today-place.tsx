import { explainLift, type Lift } from '@dawnlift/core/campaign'
import { clockText, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import { Group, Timeline } from '@mantine/core'
import { Caution, Figure, OpenNumber, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'

/** The crew's screen, at the moment the campaign clock shows: what now, what next, how long a pause may last. */
export const TodayPlace = () => <WithPlan>{plan => <Now plan={plan} />}</WithPlan>

function Now({ plan }: { readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const zone = plan.job.site.timeZone
  const date = localTime(moment, zone).date
  const day = plan.campaign.days.find(each => each.date === date)
  const next = plan.campaign.days.find(each => each.start > moment)
  if (!day) {
    return (
      <section className="sheet">
        <h2>{date}: no print day</h2>
        <p>
          {next ? `Next: ${next.date}, set-up from ${clockText(next.start, zone)}.` : 'The campaign is over.'}
        </p>
      </section>
    )
  }
  const running = day.lifts.find(lift => lift.start <= moment && moment < lift.end)
  const soon = [
    ...day.lifts.flatMap(lift => [
      { at: lift.start, say: `Start ${lift.id}: layers ${lift.firstLayer} to ${lift.lastLayer}` },
      { at: lift.end, say: `${lift.id} is up` },
    ]),
    ...plan.calls
      .filter(call => call.date === date)
      .map(call => ({
        at: call.from,
        say: `${call.trade}: ${call.id} ${call.what}, wall ${call.wall}, until ${clockText(call.until, zone)}`,
      })),
    { at: day.end, say: 'Wash-out done' },
  ]
    .filter(({ at }) => at >= moment)
    .sort((a, b) => a.at - b.at)
  return (
    <Group align="start" gap="lg" grow preventGrowOverflow={false}>
      <section className="sheet">
        <h2>
          Day {day.number}, {clockText(moment, zone)}
        </h2>
        {running ? <Running lift={running} plan={plan} /> : <p>The nozzle rests.</p>}
      </section>
      <section className="sheet">
        <h2>Next</h2>
        <Timeline bulletSize={14}>
          {soon.map(({ at, say }) => (
            <Timeline.Item key={`${at} ${say}`} title={clockText(at, zone)}>
              {say}
            </Timeline.Item>
          ))}
        </Timeline>
      </section>
    </Group>
  )
}

function Running({ lift, plan }: { readonly lift: Lift; readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const zone = plan.job.site.timeZone
  const layer = lift.firstLayer + lift.layerEnds.filter(end => end <= moment).length
  return (
    <>
      <Group gap="xl" mb="md">
        <Figure value={`${lift.id}`} what={`section ${lift.section}`} />
        <Figure value={`${layer} / ${lift.lastLayer}`} what="layer" />
        <Figure
          value={
            <OpenNumber
              behind={{
                how: 'Longest resting time that bond allows at this hour, less the time the layers rest anyway; the least over this lift.',
                source: 'Roussel & Cussigh 2008 for structuration; the job for drying',
              }}
            >
              {Math.max(0, Math.floor(lift.pauseBudget / 60))} min
            </OpenNumber>
          }
          what="pause before a cold joint"
        />
      </Group>
      <p>{explainLift(lift, plan.job.units, zone)}</p>
      <Caution>{words.caution}</Caution>
    </>
  )
}
