import { moveLift, type PrintDay } from '@dawnlift/core/campaign'
import { localTime } from '@dawnlift/core/clock'
import { daysToCome, type Plan, restOfPlan } from '@dawnlift/core/plan'

/** What breaks, and what else changes, when one lift goes to another day. */
export interface LiftMove {
  readonly lift: string
  readonly date: string
  /** Pins that cannot be kept, this one among them, each with what stands in its way. */
  readonly broken: readonly string[]
  /** Print days still to come. */
  readonly days: { readonly before: number; readonly after: number }
  /** Local dates of the last lift. */
  readonly finish: { readonly before: string; readonly after: string }
  /** Other lifts that go to another day, or are not printed any more. */
  readonly moved: readonly { readonly lift: string; readonly from: string; readonly to?: string }[]
}

/** Plans the days to come anew with one lift on another date. Undefined where the plan has no such lift. */
export function movedLift(plan: Plan, lift: string, date: string): LiftMove | undefined {
  const result = moveLift(restOfPlan(plan), lift, date)
  if (!result) return undefined
  const [before, after] = [daysToCome(plan), result.campaign.days]
  const { timeZone } = plan.job.site
  return {
    lift,
    date,
    broken: result.broken.map(({ say }) => say),
    days: { before: before.length, after: after.length },
    finish: {
      before: localTime(plan.campaign.finish, timeZone).date,
      after: localTime(result.campaign.finish, timeZone).date,
    },
    moved: movedBetween(before, after).filter(each => each.lift !== lift),
  }
}

function movedBetween(before: readonly PrintDay[], after: readonly PrintDay[]): LiftMove['moved'] {
  const dates = (days: readonly PrintDay[]) =>
    new Map(days.flatMap(day => day.lifts.map(lift => [lift.id, day.date] as const)))
  const to = dates(after)
  return [...dates(before)].flatMap(([lift, from]) => {
    const now = to.get(lift)
    return now === from ? [] : [{ lift, from, ...(now === undefined ? {} : { to: now }) }]
  })
}
