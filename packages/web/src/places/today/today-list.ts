import { explainLift, type Lift } from '@dawnlift/core/campaign'
import { localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import { stepsOn } from '../cure-steps.js'

/** Something that happens today, with the moment it is too late where there is one. */
export interface Coming {
  readonly id: string
  readonly at: Instant
  readonly until?: Instant
  readonly kind: 'print' | 'call' | 'hold' | 'care' | 'crew'
  readonly who: string
  readonly say: string
}

/** All of one local day, in the order of the clock. */
export function comingOn(plan: Plan, date: string, units: 'metric' | 'imperial'): readonly Coming[] {
  const zone = plan.job.site.timeZone
  const day = plan.campaign.days.find(each => each.date === date)
  const lifts = day?.lifts ?? []
  const all: Coming[] = [
    ...(day ? [crewAt(`${date}-set-up`, day.start, 'Set-up begins: wet, prime, calibrate')] : []),
    ...lifts.flatMap(lift => [
      {
        id: `${lift.id}-start`,
        at: lift.start,
        kind: 'print' as const,
        who: lift.id,
        say: `Start, layers ${lift.firstLayer} to ${lift.lastLayer}`,
      },
      ...holdsOf(lift),
      {
        id: `${lift.id}-end`,
        at: lift.end,
        kind: 'print' as const,
        who: lift.id,
        say: explainLift(lift, units, zone),
      },
    ]),
    ...plan.calls
      .filter(call => call.date === date)
      .map(call => ({
        id: `call-${call.id}-${call.from}`,
        at: call.from,
        until: call.until,
        kind: 'call' as const,
        who: call.trade,
        say: `${call.id}, ${call.what}: wall ${call.wall}, lift ${call.lift}`,
      })),
    ...stepsOn(plan.cure, at => localTime(at, zone).date === date).map(step => ({
      id: step.id,
      at: step.at,
      kind: 'care' as const,
      who: step.lift,
      say: step.say,
    })),
    ...(day ? [crewAt(`${date}-wash-out`, day.end, 'Wash-out done')] : []),
  ]
  return all.sort((a, b) => a.at - b.at)
}

const crewAt = (id: string, at: Instant, say: string): Coming => ({ id, at, kind: 'crew', who: 'crew', say })

function holdsOf(lift: Lift): readonly Coming[] {
  return lift.holds.flatMap(hold => {
    const at = lift.layerEnds[hold.afterLayer - lift.firstLayer]
    return at === undefined
      ? []
      : [
          {
            id: `${lift.id}-hold-${hold.afterLayer}-${hold.ref}`,
            at,
            until: at + hold.duration,
            kind: 'hold' as const,
            who: lift.id,
            say: `Hold after layer ${hold.afterLayer} for ${hold.reason} ${hold.ref}`,
          },
        ]
  })
}

/** `now`, `in 7 min`, `in 2 h 05 min`; what has begun counts down to the moment it is too late. */
export function countdown(now: Instant, { at, until }: Pick<Coming, 'at' | 'until'>): string {
  if (at <= now && until !== undefined && now < until) return `now, ${spell(until - now)} left`
  if (Math.abs(at - now) < 30) return 'now'
  return at > now ? `in ${spell(at - now)}` : `${spell(now - at)} ago`
}

/** Rounded down for what is left, so that nobody comes late by rounding. */
export function spell(seconds: number): string {
  const minutes = Math.floor(seconds / 60)
  if (minutes < 1) return `${Math.floor(seconds)} s`
  if (minutes < 60) return `${minutes} min`
  const hours = Math.floor(minutes / 60)
  if (hours < 24) return `${hours} h ${String(minutes % 60).padStart(2, '0')} min`
  return hours < 48 ? 'a day' : `${Math.floor(hours / 24)} days`
}
