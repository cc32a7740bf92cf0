import type { Lift } from '@dawnlift/core/campaign'
import { cureLifts } from '@dawnlift/core/cure'
import { hourAt, type Plan } from '@dawnlift/core/plan'
import { assert } from '@dawnlift/core/result'
import { type StandChart, type StandGeometry, standChart, standGeometry } from '@dawnlift/core/stand'
import type { Drawing, Sheet } from '@dawnlift/drawing/paper'
import { drawStand, drawWallHeat } from '@dawnlift/drawing/views'

/** Heat of a lift's last layer by depth: reckoned when it is asked for, as the plan leaves it out. */
export function liftHeat(plan: Plan, lift: Lift, sheet: Sheet): Drawing {
  const { job, sections, campaign } = plan
  const among = campaign.days.flatMap(day => day.lifts)
  const [cure] = cureLifts(job, sections, [lift], campaign.hours, { among })
  assert(cure, `lift ${lift.id} has a cure`)
  // A section of several thicknesses is followed where it matures last: its cells tell how thick that is.
  const depths = cure.heat.depths
  const thickness = (depths[0] ?? 0) + (depths.at(-1) ?? 0)
  return drawWallHeat({ job, lift, heat: cure.heat, thickness, cover: cure.cover, steps: cure.steps }, sheet)
}

/** Standing of a lift at its own layer times, in its own mix: what is allowed is what the plan itself was judged by. */
export const liftStanding = (plan: Plan, lift: Lift, sheet: Sheet): Drawing =>
  drawStand({ job: plan.job, lift, chart: liftChart(plan, lift) }, sheet)

/** The chart of a lift, as warm as its mix is by then. */
export function liftChart(plan: Plan, lift: Lift): StandChart {
  const { mix, print, rules } = plan.job
  const { section, firstLayer, layerEnds, start } = lift
  const temperatureOf = (layers: number) => meanMix(plan, lift, layers)
  const temperature = temperatureOf(layerEnds.length)
  const input = { mix, print, rules, sections: geometriesOf(plan) }
  return standChart(input, { section, firstLayer, layerEnds, start, temperature, temperatureOf })
}

/** Mean temperature of the mix at the ends of the first layers. */
function meanMix({ campaign }: Plan, lift: Lift, layers: number): number {
  const chilled = campaign.days.find(day => day.lifts.some(({ id }) => id === lift.id))?.chilled
  const mixes = lift.layerEnds.slice(0, layers).map(end => {
    const hour = hourAt(campaign.hours, end - 1)
    return chilled ? (hour.mixTemperatureChilled ?? hour.mixTemperature) : hour.mixTemperature
  })
  return mixes.reduce((sum, mix) => sum + mix, 0) / mixes.length
}

const geometriesOf = ({ job, sections, bands }: Plan): readonly StandGeometry[] =>
  sections.map((section, index) =>
    standGeometry(section, job.walls, job.openings, job.print, bands[index]?.bands, job.units),
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
