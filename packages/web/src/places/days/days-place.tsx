import { explainLift, type Lift, type PrintDay } from '@dawnlift/core/campaign'
import { clockText, weekday } from '@dawnlift/core/clock'
import { sayLimit } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawLayerPlan, drawTimeHeight } from '@dawnlift/drawing/views'
import { lazy, Suspense, useMemo } from 'react'
import { Figure, OpenNumber, Picture, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { Quiet } from '../quiet.js'
import { sheetWords } from '../sheet-words.js'
import { DaySheet } from './day-sheet.js'
import { dayText } from './day-text.js'
import { HeldNote } from './held-note.js'
import { LiftSheet } from './lift-sheet.js'
import { isOver } from './over-lift.js'
import { PinnedList } from './pinned-list.js'
import './days.css'

/** Further down the page: fetched when the first picture is there. */
const DoubtSheet = lazy(() => import('./doubt-sheet.js').then(module => ({ default: module.DoubtSheet })))
const Levers = lazy(() => import('./levers.js').then(module => ({ default: module.Levers })))
const TradeOffSheet = lazy(() => import('./trade-off.js').then(module => ({ default: module.TradeOffSheet })))
const ShellSheet = lazy(() => import('./shell-sheet.js').then(module => ({ default: module.ShellSheet })))
const MoveBoard = lazy(() => import('./move-board.js').then(module => ({ default: module.MoveBoard })))

/** Which lift on which day, at which clock time, and why not more. */
export const DaysPlace = () => <WithPlan>{plan => <Days plan={plan} />}</WithPlan>

function Days({ plan }: { readonly plan: Plan }) {
  const selection = useApp(state => state.selection)
  const { days } = plan.campaign
  const lifts = days.flatMap(day => day.lifts)
  const chosen = lifts.find(each => selection?.kind === 'lift' && each.id === selection.id)
  // Until somebody chooses: the first lift that something could make taller.
  const ahead = lifts.filter(each => !isOver(each, plan))
  const lift =
    chosen ?? ahead.find(each => each.leftFor === undefined && each.nextGain) ?? ahead[0] ?? lifts[0]
  const day = days.find(each => lift && each.lifts.includes(lift))
  return (
    <>
      <Quiet>{words.quiet.days}</Quiet>
      <Figures plan={plan} />
      <HeldNote />
      {lift && day && <Answer lift={lift} day={day} plan={plan} />}
      <TimeHeight plan={plan} />
      <div className="days">
        <ol className="daylist" aria-label={words.days.list}>
          {days.map(each => (
            <Day key={each.date} day={each} plan={plan} chosen={lift?.id} />
          ))}
        </ol>
        <div className="stack beside">
          {lift && <LiftSheet lift={lift} plan={plan} />}
          {lift && (
            <Suspense>
              <ShellSheet key={lift.id} lift={lift} plan={plan} />
            </Suspense>
          )}
          {day && <DaySheet day={day} plan={plan} />}
        </div>
      </div>
      <PinnedList plan={plan} />
      <Suspense>
        <MoveBoard plan={plan} />
      </Suspense>
      <Suspense>
        <div className="choices">
          <Levers plan={plan} />
          <div className="columns">
            <TradeOffSheet plan={plan} />
            <DoubtSheet plan={plan} />
          </div>
        </div>
      </Suspense>
    </>
  )
}

/** The one question, answered first: why only this much, and what would buy more. Beside it the house, with this lift's section. */
function Answer({ lift, day, plan }: { readonly lift: Lift; readonly day: PrintDay; readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const house = useMemo(
    () => drawLayerPlan(plan, lift.lastLayer, figure(260, 150, sheetWords(plan))),
    [plan, lift],
  )
  return (
    <section className="sheet answer" aria-label={words.days.why(lift.id)}>
      <div>
        <p className="soft">
          {words.days.lift(dayText(day.date), lift.section, lift.firstLayer, lift.lastLayer)}
        </p>
        <p className="answer-words">
          <strong>{lift.id}</strong> {explainLift(lift, units, plan.job.site.timeZone)}
        </p>
      </div>
      <Picture drawing={house} label={words.days.house(lift.lastLayer)} />
    </section>
  )
}

function Figures({ plan }: { readonly plan: Plan }) {
  const said = words.days
  const { days, bound, finished } = plan.campaign
  const idle = plan.campaign.idleDays.filter(({ date }) => isWorkDay(plan, date)).length
  const last = days.at(-1)
  const hours = plan.tally.total.printTime / 3600
  return (
    <div className="figures">
      <Figure value={days.length} what={said.printDays} />
      <Figure value={finished && last ? dayText(last.date) : said.notUp} what={said.last} />
      <Figure
        value={
          <OpenNumber
            behind={{
              how: said.leastHow(bound.how),
              inputs: [
                [said.notBefore, bound.date ? dayText(bound.date) : said.unknown],
                [said.meets, bound.met ? said.proven : said.unproven],
              ],
              source: said.leastSource,
            }}
          >
            {bound.days}
          </OpenNumber>
        }
        what={said.least}
      />
      <Figure value={said.hours(hours.toFixed(0))} what={said.printing} />
      <Figure value={idle} what={said.idle} />
      <Figure value={plan.sections.length} what={said.sections(plan.sections.length)} />
    </div>
  )
}

const isWorkDay = ({ job }: Plan, date: string): boolean =>
  job.crew.workDays.includes(weekday(date)) && !job.crew.daysOff.includes(date)

function TimeHeight({ plan }: { readonly plan: Plan }) {
  const units = useApp(state => state.units)
  const drawing = useMemo(
    () =>
      drawTimeHeight(plan, figure(250, 74, sheetWords(plan)), limit =>
        sayLimit(limit, units, plan.job.site.timeZone),
      ),
    [plan, units],
  )
  return (
    <section className="sheet">
      <Picture drawing={drawing} label={words.days.chart} />
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
  const units = useApp(state => state.units)
  const zone = plan.job.site.timeZone
  return (
    <li>
      <h3>
        {words.days.day(day.number, dayText(day.date))}{' '}
        <span className="soft">
          {clockText(day.start, zone)}–{clockText(day.end, zone)}
          {day.chilled ? words.days.chilled : ''}
        </span>
      </h3>
      {day.lifts.map(lift => (
        <button
          key={lift.id}
          type="button"
          className={isOver(lift, plan) ? 'liftrow over' : 'liftrow'}
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
          <span>{words.days.layers(lift.firstLayer, lift.lastLayer)}</span>
          <span className="why">{isOver(lift, plan) ? words.overLift : explainLift(lift, units, zone)}</span>
        </button>
      ))}
    </li>
  )
}
