import type { Campaign, Lift } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'

type LiftCure = Plan['cure'][number]
type Step = LiftCure['steps'][number]

const source = 'common practice, no source'

/** Covered half an hour after the lift, wetted three times, uncovered three days later: a plain stand-in for the real plan. */
export const smallCure = (campaign: Campaign): readonly LiftCure[] =>
  campaign.days.flatMap(day => day.lifts).map(cureOf)

function cureOf(lift: Lift): LiftCure {
  const step = (what: Step['do'], number: number, hours: number, say: string): Step => ({
    id: `${lift.id}-${what}-${number}`,
    at: lift.end + hours * 3600,
    do: what,
    say,
    source,
  })
  return {
    lift: lift.id,
    cover: 'wet-burlap',
    steps: [
      step('cover', 1, 0.5, 'wet burlap on both faces and the top'),
      ...[3, 5.5, 8].map((hours, index) => ({
        ...step('wet', index + 1, hours, 'wet the burlap'),
        litres: 14,
      })),
      step('uncover', 1, 72, 'take the burlap off'),
    ],
    milestones: [],
    findings: [],
    peak: { temperature: 41, at: lift.end + 9 * 3600 },
  }
}
