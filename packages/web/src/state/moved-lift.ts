import { type Campaign, moveLift } from '@dawnlift/core/campaign'
import { localTime } from '@dawnlift/core/clock'
import { campaignInput, type Plan } from '@dawnlift/core/plan'

/** What breaks, and what else changes, when one lift goes to another day. */
export interface LiftMove {
  readonly lift: string
  readonly date: string
  /** Pins that cannot be kept, this one among them, each with what stands in its way. */
  readonly broken: readonly string[]
  readonly days: { readonly before: number; readonly after: number }
  /** Local dates of the last lift. */
  readonly finish: { readonly before: string; readonly after: string }
  /** Other lifts that go to another day, or are not printed any more. */
  readonly moved: readonly { readonly lift: string; readonly from: string; readonly to?: string }[]
}

/** Plans the days anew with one lift on another date. Undefined where the plan has no such lift. */
export function movedLift(plan: Plan, lift: string, date: string): LiftMove | undefined {
  const { job, sections, bands, routes, campaign } = plan
  const result = moveLift(campaignInput(job, sections, bands, routes, campaign.hours), lift, date)
  if (!result) return undefined
  const [before, after] = [campaign, result.campaign]
  const { timeZone } = job.site
  return {
    lift,
    date,
    broken: result.broken.map(({ say }) => say),
    days: { before: before.days.length, after: after.days.length },
    finish: {
      before: localTime(before.finish, timeZone).date,
      after: localTime(after.finish, timeZone).date,
    },
    moved: movedBetween(before, after).filter(each => each.lift !== lift),
  }
}

function movedBetween(before: Campaign, after: Campaign): LiftMove['moved'] {
  const dates = (campaign: Campaign) =>
    new Map(campaign.days.flatMap(day => day.lifts.map(lift => [lift.id, day.date] as const)))
  const to = dates(after)
  return [...dates(before)].flatMap(([lift, from]) => {
    const now = to.get(lift)
    return now === from ? [] : [{ lift, from, ...(now === undefined ? {} : { to: now }) }]
  })
}
