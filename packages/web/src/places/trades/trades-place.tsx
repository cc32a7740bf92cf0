import { clockText } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import { formatQuantity } from '@dawnlift/core/quantity'
import type { Call } from '@dawnlift/core/trade'
import { Button, Group, SegmentedControl } from '@mantine/core'
import { useState } from 'react'
import { Caution, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { dayText } from '../days/day-text.js'
import { Quiet } from '../quiet.js'
import { CallPlace } from './call-place.js'
import { agreementOn, type Confirmed, keepConfirmed, readConfirmed, withAgreement } from './confirmed.js'
import './trades.css'

/** Who has to be at which wall when: every call, by trade, in the order of the clock. */
export const TradesPlace = () => <WithPlan>{plan => <Calls plan={plan} />}</WithPlan>

const everyone = 'everyone'

function Calls({ plan }: { readonly plan: Plan }) {
  const [trade, setTrade] = useState(everyone)
  const isServed = useApp(state => state.revision !== undefined)
  const [opened, setOpened] = useState<string>()
  const [confirmed, setConfirmed] = useState<Confirmed>(() => readConfirmed(plan.job.name, localStorage))
  const trades = [...new Set(plan.calls.map(call => call.trade))].sort()
  const shown = plan.calls
    .filter(call => trade === everyone || call.trade === trade)
    .sort((a, b) => a.from - b.from)
  const dates = [...new Set(shown.map(call => call.date))]
  const agree = (call: Call, agreed: boolean) => {
    const now = withAgreement(confirmed, call, agreed)
    setConfirmed(now)
    keepConfirmed(plan.job.name, now, localStorage)
  }
  const agreedCount = shown.filter(call => agreementOn(call, confirmed) === 'confirmed').length
  return (
    <>
      <Quiet>{words.quiet.trades}</Quiet>
      <Group justify="space-between" mb="md">
        <SegmentedControl
          aria-label={words.calling.trade}
          value={trade}
          onChange={setTrade}
          data={[
            { value: everyone, label: words.calling.everyone(plan.calls.length) },
            ...trades.map(each => ({
              value: each,
              label: words.calling.each(each, plan.calls.filter(call => call.trade === each).length),
            })),
          ]}
        />
        <Group gap="sm">
          <span className="soft">{words.calling.confirmed(agreedCount, shown.length)}</span>
          {trade !== everyone && isServed && (
            <>
              <Button
                component="a"
                variant="default"
                href={`/api/out/sheets/trade-${trade}.pdf`}
                target="_blank"
              >
                {words.calling.sheet}
              </Button>
              <Button component="a" variant="default" href={`/api/out/calendars/${trade}.ics`}>
                {words.calling.calendar}
              </Button>
            </>
          )}
        </Group>
      </Group>
      <Caution>{words.callCaution}</Caution>
      {dates.map(date => (
        <section key={date} className="sheet calls" aria-label={dayText(date)}>
          <h2>{dayText(date)}</h2>
          <ol>
            {shown
              .filter(call => call.date === date)
              .map(call => (
                <CallRow
                  key={`${call.id} ${call.from}`}
                  call={call}
                  plan={plan}
                  agreement={agreementOn(call, confirmed)}
                  opened={opened === call.id}
                  onOpen={() => setOpened(opened === call.id ? undefined : call.id)}
                  onAgree={agreed => agree(call, agreed)}
                />
              ))}
          </ol>
        </section>
      ))}
    </>
  )
}

function CallRow({
  call,
  plan,
  agreement,
  opened,
  onOpen,
  onAgree,
}: {
  readonly call: Call
  readonly plan: Plan
  readonly agreement: ReturnType<typeof agreementOn>
  readonly opened: boolean
  readonly onOpen: () => void
  readonly onAgree: (agreed: boolean) => void
}) {
  const units = useApp(state => state.units)
  const zone = plan.job.site.timeZone
  const length = (metres: number) => formatQuantity(metres, 'length', units)
  const { calling } = words
  const isOver = plan.soFar !== undefined && call.until <= plan.soFar.now
  const { along, from: place, up, face } = call.place
  return (
    <li className={isOver ? 'call over' : 'call'}>
      <strong className="when">
        {clockText(call.from, zone)}–{clockText(call.until, zone)}
      </strong>
      <button type="button" className="finding" aria-expanded={opened} onClick={onOpen}>
        <strong>
          {call.id}, {call.what}
        </strong>{' '}
        <span className="soft">{call.trade}</span>
        <br />
        {calling.where(call.wall, length(along), place, length(up), face)};{' '}
        {calling.lift(call.lift, call.layerIn, call.layerOut)}
      </button>
      <label className={`agree ${agreement}`}>
        <input
          type="checkbox"
          checked={agreement === 'confirmed'}
          onChange={event => onAgree(event.currentTarget.checked)}
        />
        <span>{words.agreements[agreement]}</span>
        <span className="unseen"> {calling.at(call.id, clockText(call.from, zone))}</span>
      </label>
      {opened && <CallPlace call={call} plan={plan} />}
    </li>
  )
}
