import type { Lift } from '@dawnlift/core/campaign'
import { type Plan, planJob, wholeSection } from '@dawnlift/core/plan'
import type { SectionBuckling, ShellMesh } from '@dawnlift/core/stand'
import { demoJob } from './demo-job.js'

/** A lift as the strips that plan see it, against the shells of its real beads. */
export interface Compared {
  readonly lift: Lift
  readonly buckling: SectionBuckling
  /** Strips over shells: over 1 the plan promises more than the shells bear. */
  readonly share: number
}

export async function demoPlan(name: string): Promise<Plan> {
  const plan = await planJob(await demoJob(name))
  if (!plan) throw new Error(`the plan of ${name} was not cancelled`)
  return plan
}

export const liftsOf = ({ campaign }: Plan): readonly Lift[] => campaign.days.flatMap(({ lifts }) => lifts)

export function compare(plan: Plan, lift: Lift, mesh?: ShellMesh): Compared {
  const answer = wholeSection(plan, lift, undefined, mesh)
  if (!answer.ok || answer.value.kind !== 'buckles') throw new Error(`lift ${lift.id} buckles`)
  const { buckling } = answer.value
  return { lift, buckling, share: buckling.quick.factor / buckling.factor }
}
