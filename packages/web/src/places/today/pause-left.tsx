import { longestRest } from '@dawnlift/core/bond'
import { clockText, localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant, Seconds } from '@dawnlift/core/quantity'
import { Figure, OpenNumber } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { spell } from './today-list.js'

/** A layer that lies bare and waits for the next one. */
export interface Bare {
  readonly section: string
  readonly since: Instant
  /** How long it may lie bare before it is a cold joint. */
  readonly mayRest: Seconds
  readonly source: string
}

/** Sections that grew today by the log and can still go on without a cold joint, or are to: their top layer waits. */
export function bareLayers(plan: Plan, moment: Instant): readonly Bare[] {
  const { job, sections, bands, campaign, soFar } = plan
  const zone = job.site.timeZone
  const date = localTime(moment, zone).date
  const day = campaign.days.find(each => each.date === date)
  return (soFar?.standing ?? []).flatMap(({ section, layers, lastEnd }) => {
    if (lastEnd === undefined || lastEnd > moment || localTime(lastEnd, zone).date !== date) return []
    const { layerHeight, speed } = job.print
    const rest = longestRest(lastEnd, job.mix, campaign.hours, job.rules, {
      layerHeight,
      speed,
      ...(day?.chilled ? { chilled: true } : {}),
    })
    const goesOn = day?.lifts.some(lift => lift.section === section && lift.firstLayer === layers + 1)
    const isUp = layers >= (bands[sections.findIndex(({ id }) => id === section)]?.layers ?? 0)
    if (isUp || (!goesOn && moment - lastEnd > rest.seconds)) return []
    return [{ section, since: lastEnd, mayRest: rest.seconds, source: rest.limit.source }]
  })
}

/** What is left of the pause, of every layer that waits. */
export function PauseLeft({ plan }: { readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const zone = plan.job.site.timeZone
  const { pause } = words
  return bareLayers(plan, moment).map(({ section, since, mayRest, source }) => {
    const left = mayRest - (moment - since)
    return (
      <Figure
        key={section}
        value={
          <OpenNumber
            behind={{
              how: pause.how,
              inputs: [
                [pause.lastLayer, clockText(since, zone)],
                [pause.mayRest, spell(mayRest)],
              ],
              source,
              caution: pause.caution,
            }}
          >
            <span className={left < 0 ? 'limit' : ''}>{spell(Math.abs(left))}</span>
          </OpenNumber>
        }
        what={left < 0 ? pause.over(section) : pause.left(section)}
      />
    )
  })
}
