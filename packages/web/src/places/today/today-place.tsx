import type { Lift } from '@dawnlift/core/campaign'
import { clockText, localTime } from '@dawnlift/core/clock'
import { hourAt, type Plan } from '@dawnlift/core/plan'
import { formatQuantity } from '@dawnlift/core/quantity'
import { openStop } from '@dawnlift/formats/site-log'
import { Button, Group } from '@mantine/core'
import { useEffect, useState } from 'react'
import { Caution, Figure, OpenNumber, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { dayText } from '../days/day-text.js'
import { waterText } from '../mix/water-text.js'
import { Quiet } from '../quiet.js'
import { LogBoard } from './log-board.js'
import { LogList } from './log-list.js'
import { PauseLeft } from './pause-left.js'
import { RestartSheet } from './restart-sheet.js'
import { StandingSheet } from './standing-sheet.js'
import { TellSheet } from './tell-sheet.js'
import { type Coming, comingOn, countdown } from './today-list.js'
import { useLog } from './use-log.js'
import './today.css'

/** The crew's screen, at the moment the campaign clock shows: what now, what next, how long a pause may last. */
export const TodayPlace = () => <WithPlan>{plan => <Today plan={plan} />}</WithPlan>

function Today({ plan }: { readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const units = useApp(state => state.units)
  const zone = plan.job.site.timeZone
  const date = localTime(moment, zone).date
  const day = plan.campaign.days.find(each => each.date === date)
  const running = day?.lifts.find(lift => lift.start <= moment && moment < lift.end)
  const { rows } = useLog(plan)
  const stop = openStop(rows)
  const cause = stop && stop.at <= moment && stop.event.what === 'stop' ? stop.event.cause : undefined
  const coming = comingOn(plan, date, units).filter(({ at, until }) => (until ?? at) >= moment)
  return (
    <div className="today">
      <Quiet>{words.quiet.today}</Quiet>
      <Group justify="space-between" mb="md">
        <h2 className="big">
          {clockText(moment, zone)} <span className="soft">{dayText(date)}</span>
        </h2>
        <Jumps plan={plan} date={date} />
      </Group>
      <div className="columns">
        <div className="stack">
          <section className="sheet" aria-label={words.onSite.now}>
            {running && !cause ? (
              <Running lift={running} plan={plan} />
            ) : (
              <p className="big">
                {cause ? words.log.isStopped(cause) : day ? words.onSite.rests : words.onSite.noDay}
              </p>
            )}
            {plan.soFar && (
              <div className="figures">
                <PauseLeft plan={plan} />
              </div>
            )}
            <Next coming={coming[0]} moment={moment} zone={zone} />
          </section>
          <LogBoard plan={plan} />
          <RestartSheet plan={plan} />
          <Water plan={plan} />
        </div>
        <div className="stack">
          <section className="sheet" aria-label={words.onSite.rest}>
            <h2>{coming.length === 0 ? words.onSite.nothingMore : words.onSite.rest}</h2>
            <ol className="coming">
              {coming.map(each => (
                <li key={each.id} className={each.kind}>
                  <strong className="when">
                    {clockText(each.at, zone)}
                    {each.until === undefined ? '' : `–${clockText(each.until, zone)}`}
                  </strong>
                  <span>
                    <strong>{each.who}</strong> {each.say}
                  </span>
                  <span className="soft">{countdown(moment, each)}</span>
                </li>
              ))}
            </ol>
          </section>
          <TellSheet plan={plan} />
          <StandingSheet plan={plan} />
          <LogList plan={plan} />
        </div>
      </div>
    </div>
  )
}

/** Ways to another moment: now, if now lies in the campaign; the print days before and after; a little later. */
function Jumps({ plan, date }: { readonly plan: Plan; readonly date: string }) {
  const moment = useApp(state => state.moment)
  const [follows, setFollows] = useState(false)
  const { setMoment } = useApp.getState()
  const { days, hours } = plan.campaign
  const [first, last] = [hours[0]?.start ?? 0, (hours.at(-1)?.start ?? 0) + 3600]
  const before = days.filter(day => day.date < date).at(-1)
  const after = days.find(day => day.date > date)
  useEffect(() => {
    if (!follows) return
    const tick = setInterval(() => setMoment(Date.now() / 1000), 10_000)
    return () => clearInterval(tick)
  }, [follows, setMoment])
  const go = (at: number) => {
    setFollows(false)
    setMoment(at)
  }
  const toNow = () => {
    const now = Date.now() / 1000
    setFollows(true)
    setMoment(now)
  }
  const now = Date.now() / 1000
  const isWithin = first <= now && now < last
  return (
    <Group gap="sm" className="gloves">
      <Button variant="default" disabled={!before} onClick={() => before && go(before.start)}>
        {words.onSite.before}
      </Button>
      <Button variant="default" onClick={() => go(moment - 600)}>
        {words.onSite.back}
      </Button>
      <Button variant="default" onClick={() => go(moment + 600)}>
        {words.onSite.on}
      </Button>
      <Button variant="default" disabled={!after} onClick={() => after && go(after.start)}>
        {words.onSite.next}
      </Button>
      <Button
        onClick={toNow}
        disabled={!isWithin}
        aria-pressed={follows}
        title={isWithin ? undefined : words.nowOutside}
      >
        {follows ? words.onSite.follows : words.onSite.now}
      </Button>
    </Group>
  )
}

function Next({
  coming,
  moment,
  zone,
}: {
  readonly coming: Coming | undefined
  readonly moment: number
  readonly zone: string
}) {
  if (!coming) return null
  return (
    <div className={`nextup ${coming.kind}`} role="status">
      <span className="big">{countdown(moment, coming)}</span>
      <span>
        <strong>
          {clockText(coming.at, zone)} {coming.who}
        </strong>{' '}
        {coming.say}
      </span>
    </div>
  )
}

function Running({ lift, plan }: { readonly lift: Lift; readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const zone = plan.job.site.timeZone
  const { onSite } = words
  const down = lift.layerEnds.filter(end => end <= moment).length
  const layer = Math.min(lift.lastLayer, lift.firstLayer + down)
  return (
    <>
      <div className="figures">
        <Figure value={lift.id} what={onSite.until(lift.section, clockText(lift.end, zone))} />
        <Figure value={onSite.layer(layer, lift.lastLayer)} what={onSite.goingDown} />
        <Figure
          value={
            <OpenNumber
              behind={{
                how: words.how.pause,
                inputs: [[onSite.lift, `${clockText(lift.start, zone)}–${clockText(lift.end, zone)}`]],
                source: onSite.pauseSource,
                caution: words.caution,
              }}
            >
              {onSite.minutes(Math.max(0, Math.floor(lift.pauseBudget / 60)))}
            </OpenNumber>
          }
          what={onSite.pause}
        />
        <Figure
          value={
            <OpenNumber
              behind={{
                how: words.how.standing,
                source: '[Suiker2018], [Roussel2018]',
                caution: words.caution,
              }}
            >
              {lift.safety.toFixed(2)}
            </OpenNumber>
          }
          what={onSite.safety}
        />
      </div>
      <Caution>{words.standing}</Caution>
    </>
  )
}

/** What goes into the mixer this hour. */
function Water({ plan }: { readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const units = useApp(state => state.units)
  const { job, campaign } = plan
  const { water } = words.onSite
  if (campaign.hours.length === 0) return null
  const hour = hourAt(campaign.hours, moment)
  const degrees = (value: number) => formatQuantity(value, 'temperature', units, { step: 1 })
  const most = job.rules.mixTemperatureMost
  const isHot = hour.mixTemperature > most.value
  return (
    <section className="sheet" aria-label={water.title}>
      <h2>{water.title}</h2>
      <div className="figures">
        <Figure
          value={
            <OpenNumber
              behind={{
                how: words.how.water,
                inputs: [
                  [water.air, degrees(hour.weather.air)],
                  [water.withTap, degrees(hour.mixTemperature)],
                  [water.atMost, degrees(most.value)],
                ],
                source: water.source(most.source),
                caution: words.waterCaution,
              }}
            >
              {isHot
                ? waterText(hour.waterNeeded, degrees)
                : water.tap(degrees(job.batching.waterTemperature))}
            </OpenNumber>
          }
          what={isHot ? water.needed : water.enough}
        />
        <Figure value={degrees(hour.mixTemperature)} what={water.mixed(degrees(most.value))} />
        <Figure value={formatQuantity(hour.evaporation, 'evaporation', units)} what={water.drying} />
        <Figure value={degrees(hour.wbgt)} what={water.heat(degrees(job.rules.wbgtMost.value))} />
      </div>
      <Caution>{words.crewCaution}</Caution>
    </section>
  )
}
