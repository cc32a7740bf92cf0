import { addDays, clockText, instantAt, localTime, weekday } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import type { KeyboardEvent, PointerEvent } from 'react'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'
import { standingText } from './standing-text.js'
import './ribbon.css'

const width = 1400
const height = 46

/** The campaign's clock, under every place: drag it and the whole app shows what stands at that moment. */
export function Ribbon() {
  const plan = useApp(state => state.plan)
  if (!plan || plan.campaign.days.length === 0)
    return <footer className="ribbon soft">{words.noPlanYet}</footer>
  return <RibbonOf plan={plan} />
}

function RibbonOf({ plan }: { readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const setMoment = useApp.getState().setMoment
  const zone = plan.job.site.timeZone
  const { first, last } = span(plan)
  const x = (at: number) => ((at - first) / (last - first)) * width
  const within = (at: number) => Math.min(last, Math.max(first, at))
  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointermove' && event.buttons === 0) return
    if (event.type === 'pointerdown') event.currentTarget.setPointerCapture(event.pointerId)
    const box = event.currentTarget.getBoundingClientRect()
    setMoment(within(first + ((event.clientX - box.left) / box.width) * (last - first)))
  }
  const key = (event: KeyboardEvent<HTMLDivElement>) => {
    const wanted = movedBy(event.key, moment, first, last)
    if (wanted === undefined) return
    event.preventDefault()
    setMoment(within(wanted))
  }
  const here = localTime(moment, zone)
  const cursor = within(moment)
  return (
    <footer className="ribbon">
      <div className="facts">
        <strong>
          {here.date} {clockText(moment, zone)}
        </strong>
        <span className="soft">{standingText(plan, moment)}</span>
      </div>
      <div
        className="track"
        role="slider"
        tabIndex={0}
        aria-label={words.ribbon}
        aria-valuemin={first}
        aria-valuemax={last}
        aria-valuenow={cursor}
        aria-valuetext={`${here.date} ${clockText(moment, zone)}`}
        onPointerDown={drag}
        onPointerMove={drag}
        onKeyDown={key}
      >
        <svg viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden="true">
          {calendarDays(first, last, zone).map(day => (
            <rect
              key={day.date}
              className={dayClass(plan, day.date)}
              x={x(day.start) + 1}
              width={Math.max(1, x(day.end) - x(day.start) - 2)}
              y={0}
              height={height}
            />
          ))}
          {plan.campaign.days.flatMap(day =>
            day.lifts.map(lift => (
              <rect
                key={lift.id}
                className={plan.soFar && lift.end <= plan.soFar.now ? 'lift over' : 'lift'}
                x={x(lift.start)}
                width={Math.max(1.5, x(lift.end) - x(lift.start))}
                y={8}
                height={height - 16}
              >
                <title>{`${lift.id} ${clockText(lift.start, zone)}–${clockText(lift.end, zone)}`}</title>
              </rect>
            )),
          )}
          <line className="cursor" x1={x(cursor)} x2={x(cursor)} y1={0} y2={height} />
        </svg>
        <DayNames plan={plan} place={at => `${(x(at) / width) * 100}%`} first={first} last={last} />
      </div>
    </footer>
  )
}

/** A day off is no loss; a working day without a lift is. */
function dayClass(plan: Plan, date: string): 'day' | 'idle' | 'off' {
  const idle = plan.campaign.idleDays.find(each => each.date === date)
  if (!idle) return 'day'
  const { daysOff, workDays } = plan.job.crew
  return daysOff.includes(date) || !workDays.includes(weekday(date)) ? 'off' : 'idle'
}

/** Arrows go by the half hour, with pages by the day, to the ends with home and end. */
function movedBy(key: string, moment: number, first: number, last: number): number | undefined {
  const steps: Readonly<Record<string, number>> = {
    ArrowLeft: moment - 1800,
    ArrowDown: moment - 1800,
    ArrowRight: moment + 1800,
    ArrowUp: moment + 1800,
    PageUp: moment + 86_400,
    PageDown: moment - 86_400,
    Home: first,
    End: last,
  }
  return steps[key]
}

/** Mondays by their date, so that the eye finds the week. */
function DayNames({
  plan,
  place,
  first,
  last,
}: {
  readonly plan: Plan
  readonly place: (at: number) => string
  readonly first: number
  readonly last: number
}) {
  const zone = plan.job.site.timeZone
  const name = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', timeZone: zone })
  const mondays = calendarDays(first, last, zone).filter(day => weekday(day.date) === 1)
  return (
    <div className="daynames" aria-hidden="true">
      {mondays.map(day => (
        <span key={day.date} style={{ left: place(day.start) }}>
          {name.format(day.start * 1000)}
        </span>
      ))}
    </div>
  )
}

function span(plan: Plan) {
  const zone = plan.job.site.timeZone
  const { days, finish } = plan.campaign
  const first = instantAt(days[0]!.date, 0, zone)
  return { first, last: instantAt(addDays(localTime(finish, zone).date, 1), 0, zone) }
}

function calendarDays(first: number, last: number, zone: string) {
  const days: { date: string; start: number; end: number }[] = []
  for (let date = localTime(first, zone).date; ; date = addDays(date, 1)) {
    const start = instantAt(date, 0, zone)
    if (start >= last) return days
    days.push({ date, start, end: instantAt(addDays(date, 1), 0, zone) })
  }
}
