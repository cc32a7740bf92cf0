import type { Lift } from '@dawnlift/core/campaign'
import { localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'

/** What an edit did to one lift. */
export interface LiftChange {
  readonly lift: string
  /** Layers before and after; none before is a new lift, none after one that is gone. */
  readonly before?: number
  readonly after?: number
  /** The limit now binding, when it is another one than before. */
  readonly nowBound?: Lift['binding']
}

export interface LimitChanges {
  readonly lifts: readonly LiftChange[]
  /** Local dates of the last print day. */
  readonly finish: { readonly before: string; readonly after: string }
  readonly days: { readonly before: number; readonly after: number }
}

/** What changed between two plans of the same job in what bounds the lifts, lift by lift, and in the finish. */
export function limitChanges(before: Plan, after: Plan): LimitChanges {
  const was = liftsById(before)
  const is = liftsById(after)
  const lifts = [...new Set([...was.keys(), ...is.keys()])].flatMap(id =>
    liftChange(id, was.get(id), is.get(id)),
  )
  return {
    lifts,
    finish: { before: finishDate(before), after: finishDate(after) },
    days: { before: before.campaign.days.length, after: after.campaign.days.length },
  }
}

function liftChange(lift: string, was: Lift | undefined, is: Lift | undefined): readonly LiftChange[] {
  const [before, after] = [layersOf(was), layersOf(is)]
  const otherLimit = was && is && was.binding.kind !== is.binding.kind
  if (before === after && !otherLimit) return []
  return [
    {
      lift,
      ...(before === undefined ? {} : { before }),
      ...(after === undefined ? {} : { after }),
      ...(otherLimit ? { nowBound: is.binding } : {}),
    },
  ]
}

const liftsById = (plan: Plan): ReadonlyMap<string, Lift> =>
  new Map(plan.campaign.days.flatMap(day => day.lifts).map(lift => [lift.id, lift]))

const layersOf = (lift: Lift | undefined): number | undefined => lift && lift.lastLayer - lift.firstLayer + 1

const finishDate = (plan: Plan): string =>
  plan.campaign.days.at(-1)?.date ?? localTime(plan.campaign.finish, plan.job.site.timeZone).date
