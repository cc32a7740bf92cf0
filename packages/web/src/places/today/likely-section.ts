import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'

/** The section that is printed at this moment, or next. */
export function likelySection({ campaign, sections }: Plan, at: Instant): string {
  const lifts = campaign.days.flatMap(day => day.lifts)
  return (lifts.find(lift => lift.end > at) ?? lifts.at(-1))?.section ?? sections[0]?.id ?? ''
}

/** Layers of a section that stand by the log. */
export const standingIn = ({ soFar }: Plan, section: string): number =>
  soFar?.standing.find(each => each.section === section)?.layers ?? 0

export const layersOf = ({ sections, bands }: Plan, section: string): number =>
  bands[sections.findIndex(({ id }) => id === section)]?.layers ?? 0
