import type { Lift } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'

/** Printed already, by the site log: nothing about it can be changed any more. */
export const isOver = (lift: Pick<Lift, 'end'>, { soFar }: Pick<Plan, 'soFar'>): boolean =>
  soFar !== undefined && lift.end <= soFar.now
