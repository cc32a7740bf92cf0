import type { Lift } from '@dawnlift/core/campaign'
import { cureLifts } from '@dawnlift/core/cure'
import { hourAt, type Plan } from '@dawnlift/core/plan'
import { assert } from '@dawnlift/core/result'
import { type StandGeometry, standChart, standGeometry } from '@dawnlift/core/stand'
import type { Drawing, Sheet } from '@dawnlift/drawing/paper'
import { drawStand, drawWallHeat } from '@dawnlift/drawing/views'

/** Heat of a lift's last layer by depth: reckoned when it is asked for, as the plan leaves it out. */
export function liftHeat(plan: Plan, lift: Lift, sheet: Sheet): Drawing {
  const { job, sections, campaign } = plan
  const [cure] = cureLifts(job, sections, [lift], campaign.hours)
  assert(cure, `lift ${lift.id} has a cure`)
  // A section of several thicknesses is followed where it matures last: its cells tell how thick that is.
  const depths = cure.heat.depths
  const thickness = (depths[0] ?? 0) + (depths.at(-1) ?? 0)
  return drawWallHeat({ job, lift, heat: cure.heat, thickness, cover: cure.cover, steps: cure.steps }, sheet)
}

/** Standing of a lift at its own layer times, in the mix of the hour it begins. */
export function liftStanding(plan: Plan, lift: Lift, sheet: Sheet): Drawing {
  const { job, campaign } = plan
  const hour = hourAt(campaign.hours, lift.start)
  const chilled = campaign.days.find(day => day.lifts.includes(lift))?.chilled
  const temperature = chilled ? (hour.mixTemperatureChilled ?? hour.mixTemperature) : hour.mixTemperature
  const chart = standChart(
    { mix: job.mix, print: job.print, rules: job.rules, sections: geometriesOf(plan) },
    {
      section: lift.section,
      firstLayer: lift.firstLayer,
      layerEnds: lift.layerEnds,
      start: lift.start,
      temperature,
    },
  )
  return drawStand({ job, lift, chart }, sheet)
}

const geometriesOf = ({ job, sections, bands }: Plan): readonly StandGeometry[] =>
  sections.map((section, index) =>
    standGeometry(section, job.walls, job.openings, job.print, bands[index]?.bands),
  )

/** The lift that comes nearest to falling, and the one that gets hottest: what an engineer looks at first. */
export function tellingLifts({ campaign, cure }: Plan): {
  readonly weakest?: Lift
  readonly hottest?: Lift
} {
  const lifts = campaign.days.flatMap(day => day.lifts)
  const weakest = [...lifts].sort((a, b) => a.safety - b.safety)[0]
  const hot = [...cure].sort((a, b) => b.peak.temperature - a.peak.temperature)[0]
  const hottest = lifts.find(({ id }) => id === hot?.lift)
  return { ...(weakest ? { weakest } : {}), ...(hottest ? { hottest } : {}) }
}
