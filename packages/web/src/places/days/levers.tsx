import type { Plan } from '@dawnlift/core/plan'

/** What would buy time, tried for real. */
export function Levers({ plan }: { readonly plan: Plan }) {
  const gains = plan.campaign.days.flatMap(day => day.lifts).filter(lift => lift.nextGain)
  return gains.length === 0 ? null : <p className="soft">{gains.length} lifts have a next gain.</p>
}
