import type { Job } from '../job/index.js'
import { ageAtStrength } from '../mix/index.js'
import type { Pascals, Seconds } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { columnCavity } from './cavity.js'
import { neededStrength } from './needed-strength.js'
import { defaultPourRules, type Fill, type PourPlan, type PourRules, planPour } from './pour-plan.js'

/** A flowing grout, as columns in printed walls are usually filled with: common practice, no source. */
export const flowingGrout: Fill = {
  kind: 'flowing',
  density: 2250,
  chemistry: 'portland',
  temperature: 20,
  set: 6 * 3600,
  aggregate: 0.008,
}

/** A column's pour, and when its shell is ready for a lift of full rule height. */
export interface ColumnPour extends PourPlan {
  readonly wall: string
  readonly strengthNeeded: Pascals
  /** Equivalent age of the shell at that strength; absent: the mix never gets that strong. */
  readonly ageNeeded?: Seconds
}

/**
 * Pours of all columns of a job in shells of a known strength, and findings for those without room to pour.
 *
 * @param strengthOf  compressive strength of the shell of a column when its pour starts [Pa]
 */
export function jobPours(
  job: Pick<Job, 'columns' | 'walls' | 'print' | 'mix'>,
  strengthOf: (column: string) => Pascals,
  fill: Fill = flowingGrout,
  rules: PourRules = defaultPourRules,
): { readonly pours: readonly ColumnPour[]; readonly findings: readonly Finding[] } {
  const cavities = job.columns.flatMap(column => {
    const wall = job.walls.find(({ id }) => id === column.wall)
    return wall ? [{ wall: wall.id, cavity: columnCavity(column, wall, job.print.beadWidth) }] : []
  })
  const hollow = cavities.filter(({ cavity }) => cavity.depth > 0 && cavity.length > 0 && cavity.height > 0)
  const pours = hollow.map(({ wall, cavity }): ColumnPour => {
    const lift = Math.min(rules.liftMost.value, cavity.height)
    const strengthNeeded = neededStrength(cavity, fill, lift, rules)
    const ageNeeded = ageAtStrength(job.mix.strength, strengthNeeded)
    const plan = planPour(cavity, fill, strengthOf(cavity.id), rules)
    return { ...plan, wall, strengthNeeded, ...(ageNeeded === undefined ? {} : { ageNeeded }) }
  })
  const solid = cavities.filter(each => !hollow.includes(each))
  return {
    pours,
    findings: [
      ...pours.flatMap(({ findings }) => findings),
      ...solid.map(({ cavity }) => noRoom(cavity.id, cavity.depth)),
    ],
  }
}

const noRoom = (id: string, depth: number): Finding => ({
  check: 'pour-room',
  at: id,
  demand: 0.05,
  capacity: depth,
  unit: 'm',
  source: 'closed form',
  verdict: 'fail',
  say: `Column ${id} has ${(depth * 1000).toFixed(0)} mm between its beads: there is nothing to pour into. Make it thicker than two beads.`,
})
