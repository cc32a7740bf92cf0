import type { Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Arm, Junction } from './junction.js'
import { standsAt } from './parts.js'
import { holdsArm, type SectionPlan } from './section-plan.js'

/** Sorts as the walls take precedence: double, then solid from thick to thin, then single. */
export function shellKey({ makeUp, thickness }: Wall): string {
  if (makeUp.kind !== 'solid') return makeUp.kind === 'double' ? '0' : '2'
  return `1 ${(1000 - thickness).toFixed(6)}`
}

/** Walls of other sections that come before all of ours at a junction. */
export function foreignOwners(plan: SectionPlan, junction: Junction, z: Metres): readonly Arm[] {
  const standing = junction.arms.filter(({ wall }) => standsAt(wall, z))
  const ours = standing.filter(arm => holdsArm(plan.stretches, arm))
  const theirs = standing.filter(arm => !holdsArm(plan.stretches, arm))
  const first = Math.min(...ours.map(arm => precedence(plan, junction, arm)))
  return theirs.filter(arm => precedence(plan, junction, arm) < first)
}

/** Whether the corner at a junction is ours. */
export const keepsCorner = (plan: SectionPlan, junction: Junction, z: Metres): boolean =>
  foreignOwners(plan, junction, z).length === 0

/** A wall that goes on through the junction comes before one that ends there; then the order of the plan. */
function precedence(plan: SectionPlan, junction: Junction, { wall }: Arm): number {
  const through = junction.arms.filter(arm => arm.wall === wall).length > 1
  return (through ? 0 : 1e6) + (plan.order.get(wall.id) ?? 0)
}
