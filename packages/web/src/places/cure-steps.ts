import type { CureStep } from '@dawnlift/core/cure'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'

/** A step of the care, with the lift it is for. */
export type LiftStep = CureStep & { readonly lift: string }

/** What the cure asks for at these moments, over all lifts, in the order of the clock. */
export const stepsOn = (cure: Plan['cure'], isAsked: (at: Instant) => boolean): readonly LiftStep[] =>
  cure
    .flatMap(({ lift, steps }) => steps.map(step => ({ ...step, lift })))
    .filter(step => isAsked(step.at))
    .sort((a, b) => a.at - b.at)
