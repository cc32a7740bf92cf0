import { addDays, clockText, instantAt, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import type { KeyboardEvent, PointerEvent } from 'react'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'

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
  const drag = (event: PointerEvent<HTMLDivElement>) => {
    if (event.type === 'pointermove' && event.buttons === 0) return
    const box = event.currentTarget.getBoundingClientRect()
    setMoment(first + Math.min(1, Math.max(0, (event.clientX - box.left) / box.width)) * (last - first))
  }
  const key = (event: KeyboardEvent<HTMLDivElement>) => {
    const step = { ArrowLeft: -1800, ArrowRight: 1800, PageUp: -86400, PageDown: 86400 }[event.key]
    if (step) setMoment(Math.min(last, Math.max(first, moment + step)))
  }
  const here = localTime(moment, zone)
  return (
    <footer className="ribbon">
      <div className="facts">
        <strong>
          {here.date} {clockText(moment, zone)}
        </strong>
        <span className="soft">{standingText(plan, moment)}</span>
      </div>
      <div
        role="slider"
        tabIndex={0}
        aria-label={words.ribbon}
        aria-valuemin={first}
        aria-valuemax={last}
        aria-valuenow={moment}
        aria-valuetext={`${here.date} ${clockText(moment, zone)}`}
        onPointerDown={drag}
        onPointerMove={drag}
        onKeyDown={key}
      >
        <svg viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden="true">
          {calendarDays(first, last, zone).map(day => (
            <rect
              key={day.date}
              className={plan.campaign.idleDays.some(idle => idle.date === day.date) ? 'idle' : 'day'}
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
                className="lift"
                x={x(lift.start)}
                width={Math.max(1.5, x(lift.end) - x(lift.start))}
                y={8}
                height={height - 16}
              >
                <title>{`${lift.id} ${clockText(lift.start, zone)}–${clockText(lift.end, zone)}`}</title>
              </rect>
            )),
          )}
          <line className="cursor" x1={x(moment)} x2={x(moment)} y1={0} y2={height} />
        </svg>
      </div>
    </footer>
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

/** Which lift is under way, or how many layers stand. */
function standingText(plan: Plan, moment: number): string {
  const lifts = plan.campaign.days.flatMap(day => day.lifts)
  const running = lifts.find(lift => lift.start <= moment && moment < lift.end)
  if (running) {
    const layer = running.firstLayer + running.layerEnds.filter(end => end <= moment).length
    return `${running.id}: layer ${layer} of ${running.lastLayer} going down`
  }
  const standing = lifts.reduce(
    (count, lift) => count + lift.layerEnds.filter(end => end <= moment).length,
    0,
  )
  const all = lifts.reduce((count, lift) => count + lift.layerEnds.length, 0)
  return `${standing} of ${all} section layers stand`
}
