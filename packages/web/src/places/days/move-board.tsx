import type { Lift } from '@dawnlift/core/campaign'
import { addDays, weekday } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import { type KeyboardEvent, type PointerEvent, useMemo, useRef, useState } from 'react'
import { askMove, type LiftMove, useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { dayText } from './day-text.js'
import { MoveResult } from './move-result.js'
import { isOver } from './over-lift.js'
import { liftName } from './pin-edits.js'
import { type BoardDay, weeksOf } from './weeks.js'
import './move-board.css'

interface Held {
  readonly lift: Lift
  readonly from: string
  readonly to: string
}

/** The print days by week. A lift is taken to another day, by hand or by keys, to see what breaks before it is pinned. */
export function MoveBoard({ plan }: { readonly plan: Plan }) {
  const [held, setHeld] = useState<Held>()
  const [asking, setAsking] = useState(false)
  const [answer, setAnswer] = useState<{ readonly plan: Plan; readonly move: LiftMove | 'none' }>()
  const { days } = plan.campaign
  const { workDays, daysOff } = plan.job.crew
  const weeks = useMemo(
    () => weeksOf(days, date => workDays.includes(weekday(date)) && !daysOff.includes(date)),
    [days, workDays, daysOff],
  )
  const bounds = [weeks[0]?.[0]?.date ?? '', weeks.at(-1)?.at(-1)?.date ?? ''] as const
  const tryIt = async ({ lift, from, to }: Held) => {
    setHeld(undefined)
    if (to === from) return
    setAsking(true)
    const move = await askMove(lift.id, to)
    setAsking(false)
    setAnswer({ plan, move: move ?? 'none' })
  }
  const { moving } = words
  return (
    <section className="sheet" aria-labelledby="moving-title">
      <h2 id="moving-title">{moving.title}</h2>
      <p className="soft" id="moving-hint">
        {moving.hint}
      </p>
      {plan.soFar && <p className="soft">{words.ofWhatIsLeft}</p>}
      <section className="weeks" aria-label={moving.board}>
        {weeks.flat().map(day => (
          <DayCell
            key={day.date}
            day={day}
            plan={plan}
            held={held}
            hold={setHeld}
            bounds={bounds}
            tryIt={tryIt}
          />
        ))}
      </section>
      <p role="status" className="plan-say">
        {held && held.to !== held.from && moving.over(held.lift.id, dayText(held.to))}
        {asking && `${moving.working} …`}
      </p>
      {answer?.plan === plan && !asking && (
        <MoveResult move={answer.move} plan={plan} close={() => setAnswer(undefined)} />
      )}
    </section>
  )
}

function DayCell({
  day: { date, works, day },
  plan,
  held,
  hold,
  bounds,
  tryIt,
}: {
  readonly day: BoardDay
  readonly plan: Plan
  readonly held: Held | undefined
  readonly hold: (held: Held | undefined) => void
  readonly bounds: readonly [string, string]
  readonly tryIt: (held: Held) => Promise<void>
}) {
  const over = held?.to === date && held.from !== date
  return (
    <div data-date={date} className={`weekday${works ? '' : ' off'}${over ? ' over' : ''}`}>
      <span className="soft">{dayText(date).replace(/^(\w+) (\d+) (\w{3})\w*$/, '$1 $2 $3')}</span>
      {day?.lifts.map(lift =>
        isOver(lift, plan) ? (
          <span key={lift.id} className="chip past" title={words.overLift}>
            {lift.id}
          </span>
        ) : (
          <Chip
            key={lift.id}
            lift={lift}
            date={date}
            pinned={isPinned(plan, lift)}
            held={held?.lift.id === lift.id ? held : undefined}
            hold={hold}
            bounds={bounds}
            tryIt={tryIt}
          />
        ),
      )}
      {over && <span className="chip ghost">{held.lift.id}</span>}
    </div>
  )
}

function Chip({
  lift,
  date,
  pinned,
  held,
  hold,
  bounds,
  tryIt,
}: {
  readonly lift: Lift
  readonly date: string
  readonly pinned: boolean
  readonly held: Held | undefined
  readonly hold: (held: Held | undefined) => void
  readonly bounds: readonly [string, string]
  readonly tryIt: (held: Held) => Promise<void>
}) {
  const pulling = useRef(false)
  const now = held ?? { lift, from: date, to: date }
  const move = (event: PointerEvent) => {
    if (!pulling.current) return
    const under = document.elementFromPoint(event.clientX, event.clientY)?.closest('[data-date]')
    const to = under?.getAttribute('data-date')
    if (to && to !== now.to) hold({ ...now, to })
  }
  const key = (event: KeyboardEvent) => {
    const step = keySteps[event.key]
    if (step !== undefined) {
      const to = addDays(now.to, step)
      if (to >= bounds[0] && to <= bounds[1]) hold({ ...now, to })
    } else if (event.key === 'Enter' && held && held.to !== date) void tryIt(held)
    else if (event.key === 'Escape' && held) hold(undefined)
    else return
    event.preventDefault()
  }
  return (
    <button
      type="button"
      className={`chip${pinned ? ' pinned' : ''}${held ? ' held' : ''}`}
      aria-label={words.moving.chip(lift.id, dayText(date), pinned)}
      aria-describedby="moving-hint"
      onClick={() => useApp.getState().select({ kind: 'lift', id: lift.id })}
      onKeyDown={key}
      onBlur={() => {
        if (held && !pulling.current) hold(undefined)
      }}
      onPointerDown={event => {
        pulling.current = true
        event.currentTarget.setPointerCapture(event.pointerId)
      }}
      onPointerMove={move}
      onPointerUp={() => {
        pulling.current = false
        if (held) void tryIt(held)
      }}
      onPointerCancel={() => {
        pulling.current = false
        hold(undefined)
      }}
    >
      {lift.id}
    </button>
  )
}

/** A day, or a week, sooner or later. */
const keySteps: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowRight: 1,
  ArrowUp: -7,
  ArrowDown: 7,
}

const isPinned = ({ job }: Plan, { id, section }: Lift): boolean => {
  const name = liftName(id, section)
  return (job.pins ?? []).some(
    pin => pin.kind === 'lift' && pin.section === name?.section && pin.lift === name.lift,
  )
}
