import type { PrintDay } from '@dawnlift/core/campaign'
import { clockText, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawDayClock } from '@dawnlift/drawing/views'
import { useMemo } from 'react'
import { Picture } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { stepsOn } from '../cure-steps.js'
import { sheetWords } from '../sheet-words.js'
import { dayText } from './day-text.js'

/** One day round the clock: weather, open hours, prints, calls and wetting; and what the cure asks for that day. */
export function DaySheet({ day, plan }: { readonly day: PrintDay; readonly plan: Plan }) {
  const isServed = useApp(state => state.revision !== undefined)
  const zone = plan.job.site.timeZone
  const clock = useMemo(() => drawDayClock(plan, day.date, figure(170, 120, sheetWords(plan))), [plan, day])
  const steps = stepsOn(plan.cure, at => localTime(at, zone).date === day.date)
  return (
    <section className="sheet" aria-label={words.clock.label(day.number)}>
      <h2>{words.clock.title(day.number, dayText(day.date))}</h2>
      <Picture drawing={clock} label={words.clock.picture(day.number)} />
      {isServed && (
        <p>
          <a href={`/api/out/sheets/day-${day.date}.pdf`} target="_blank" rel="noreferrer">
            {words.clock.sheet}
          </a>
        </p>
      )}
      {steps.length > 0 && (
        <details>
          <summary>{words.clock.care(steps.length)}</summary>
          <table className="plain wide">
            <tbody>
              {steps.map(step => (
                <tr key={step.id}>
                  <th scope="row">{clockText(step.at, zone)}</th>
                  <td>{step.lift}</td>
                  <td>
                    {step.say} <span className="soft">({step.source})</span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </section>
  )
}
