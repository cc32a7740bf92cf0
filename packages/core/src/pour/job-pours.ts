import type { Job } from '../job/index.js'
import type { Units } from '../limit/index.js'
import { ageAtStrength, strengthAt } from '../mix/index.js'
import { formatQuantity, type Metres, type Pascals, type Seconds } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { columnCavity } from './cavity.js'
import { headPressure } from './lateral-pressure.js'
import { neededStrength } from './needed-strength.js'
import {
  bearablePressure,
  type Cavity,
  defaultPourRules,
  type Fill,
  LEAST_LIFT,
  type PourPlan,
  type PourRules,
  planPour,
} from './pour-plan.js'

/** A flowing grout, as columns in printed walls are usually filled with: common practice, no source. */
export const flowingGrout: Fill = {
  kind: 'flowing',
  density: 2250,
  chemistry: 'portland',
  temperature: 20,
  set: 6 * 3600,
  aggregate: 0.008,
}

/** A column's pour, and when its shell is ready for the tallest lift that its mix will ever bear. */
export interface ColumnPour extends PourPlan {
  readonly wall: string
  /** The tallest even lift of the rules that the shell bears at 28 days; the rules' own where it bears none. */
  readonly tallestLift: Metres
  /** Of the shell, for that lift. */
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
  job: Pick<Job, 'columns' | 'walls' | 'print' | 'mix'> & Partial<Pick<Job, 'units'>>,
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
    const tallestLift = tallestEver(cavity, fill, strengthAt(job.mix.strength, TESTED_AGE), rules)
    const strengthNeeded = neededStrength(cavity, fill, tallestLift, rules)
    const ageNeeded = ageAtStrength(job.mix.strength, strengthNeeded)
    const plan = planPour(cavity, fill, strengthOf(cavity.id), rules, job.units)
    return { ...plan, wall, tallestLift, strengthNeeded, ...(ageNeeded === undefined ? {} : { ageNeeded }) }
  })
  const solid = cavities.filter(each => !hollow.includes(each))
  return {
    pours,
    findings: [
      ...pours.flatMap(({ findings }) => findings),
      ...solid.map(({ cavity }) => noRoom(cavity.id, cavity.depth, job.units ?? 'metric')),
    ],
  }
}

/** Age at which concrete is judged by the trade; growth after it is not counted on. */
const TESTED_AGE = 28 * 86_400

/** Under the rules' height and what a shell of this strength bears, in even lifts. */
function tallestEver(cavity: Cavity, fill: Fill, strength: Pascals, rules: PourRules): Metres {
  const byRule = Math.min(rules.liftMost.value, cavity.height)
  const byShell = bearablePressure(cavity, strength, rules) / headPressure(fill.density, 1)
  const most = Math.min(byRule, byShell)
  if (most < LEAST_LIFT) return byRule
  return cavity.height / Math.ceil(cavity.height / most - 1e-9)
}

const noRoom = (id: string, depth: Metres, units: Units): Finding => ({
  check: 'pour-room',
  at: id,
  demand: 0.05,
  capacity: depth,
  unit: 'm',
  source: 'closed form',
  verdict: 'fail',
  say: `Column ${id} has ${formatQuantity(depth, 'length', units)} between its beads: there is nothing to pour into. Make it thicker than two beads.`,
})
