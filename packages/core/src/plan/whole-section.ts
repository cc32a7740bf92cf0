import type { Lift } from '../campaign/index.js'
import { ageFactor } from '../mix/index.js'
import { assert, type Result } from '../result/index.js'
import {
  type Progress,
  type SectionAnswer,
  type ShellMesh,
  sectionBuckling,
  standGeometry,
  standRulesOf,
} from '../stand/index.js'
import type { Plan } from './plan.js'
import { hourAt } from './site-physics.js'

/**
 * The whole section of a lift as shells, at the end of the lift: its real beads, each layer at its own age, on the lower band of the
 * mix. Takes seconds; `progress` may end it by answering false, `mesh` makes it finer or coarser than usual.
 */
export function wholeSection(
  plan: Plan,
  lift: Lift,
  progress?: Progress,
  mesh?: ShellMesh,
): Result<SectionAnswer> {
  const { job, sections, bands, campaign } = plan
  const index = sections.findIndex(section => section.id === lift.section)
  const [section, laid] = [sections[index], bands[index]]
  assert(section && laid, `section ${lift.section} of lift ${lift.id} is in the plan`)
  const geometry = standGeometry(section, job.walls, job.openings, job.print, laid.bands, job.units)
  const mixes = lift.layerEnds.map(end => hourAt(campaign.hours, end).mixTemperature)
  const temperature = mixes.reduce((sum, each) => sum + each, 0) / mixes.length
  const age = {
    layerHeight: job.print.layerHeight,
    ends: lift.layerEnds.map(end => end - lift.start),
    factor: ageFactor(temperature, job.mix),
  }
  const rules = standRulesOf({ mix: job.mix, print: job.print, rules: job.rules, sections: [geometry] })
  return sectionBuckling(
    { section, walls: job.walls, bands: laid.bands, geometry, firstLayer: lift.firstLayer, age },
    rules,
    progress,
    mesh,
  )
}
