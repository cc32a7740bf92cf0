import type { Lift } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import type { Celsius } from '../quantity/index.js'
import { assert, type Finding } from '../result/index.js'
import type { Section } from '../section/index.js'
import type { PrintHour, WeatherHour } from '../weather/index.js'
import type { CoverKind } from './cover.js'
import { type CurePlan, curePlan, FOLLOWED } from './cure-plan.js'
import { cureTables } from './cure-tables.js'
import { facePlaces, standingWalls } from './face-shade.js'
import { facingsOf } from './facings.js'
import { hydrationOf } from './hydration.js'
import type { Milestone } from './milestones.js'
import { traceAgeAt } from './wall-trace.js'
import { siteSky, skyBetween, wallWeatherUnder } from './wall-weather.js'

export type CureJob = Pick<Job, 'site' | 'walls' | 'mix' | 'rules' | 'batching' | 'print'> &
  Partial<Pick<Job, 'units'>>

export interface CureOptions {
  /** One cover for all lifts; chosen by the weather where absent. */
  readonly cover?: CoverKind
  /** All lifts of the campaign, for what stands and casts shade; those asked about where absent. */
  readonly among?: readonly Lift[]
}

/**
 * The cure of every lift asked about.
 *
 * A section's walls look several ways, and each way has its sunniest and its most shaded place: all are computed, and the worst rules.
 * Water and its clock times follow the place that dries fastest (brought to the whole section), milestones the one that matures last,
 * findings the one that fares worst. Faces are taken as whole: openings need less water.
 */
export function cureLifts(
  job: CureJob,
  sections: readonly Section[],
  lifts: readonly Lift[],
  hours: readonly PrintHour[],
  { cover, among = lifts }: CureOptions = {},
): readonly CurePlan[] {
  const sky = siteSky(job.site, hoursAround(lifts, hours))
  const tables = cureTables(job.mix, hydrationOf(job.mix))
  const facings = new Map(sections.map(section => [section.id, facingsOf(job, section)]))
  return lifts.map(lift => {
    const ways = facings.get(lift.section) ?? []
    const { layerHeight } = job.print
    const heights = [(lift.firstLayer - 1) * layerHeight, lift.lastLayer * layerHeight] as const
    const area = ways.reduce((sum, way) => sum + way.length, 0) * (heights[1] - heights[0])
    const neighbours = standingWalls(job, sections, among, lift.end)
    const near = skyBetween(sky, lift.start - 86400, lift.end + FOLLOWED)
    const from = near.hours[0]?.start ?? lift.start
    const plans = ways.flatMap(facing =>
      facePlaces({ site: job.site, facing, neighbours, heights, from: from + 2 * 86400 }).map(
        (place, index) =>
          curePlan({
            job,
            lift,
            build: facing.build,
            weather: wallWeatherUnder(near, place),
            mixTemperature: mixAtEnd(job, lift, hours),
            area: { left: area, right: area },
            tables,
            shaded: index > 0,
            ...(cover ? { cover } : {}),
          }),
      ),
    )
    return worstOf(plans, lift.id)
  })
}

/** The hours that the lifts and their cure lie in; where one is missing the one before it stands for it. */
function hoursAround(lifts: readonly Lift[], hours: readonly PrintHour[]): readonly WeatherHour[] {
  const from = Math.min(...lifts.map(lift => lift.start)) - 86400
  const until = Math.max(...lifts.map(lift => lift.end)) + FOLLOWED
  const known = hours.filter(({ start }) => start >= from && start < until).map(hour => hour.weather)
  return known.flatMap((hour, index) => {
    const missing = Math.max(
      1,
      Math.round(((known[index + 1]?.start ?? hour.start + 3600) - hour.start) / 3600),
    )
    return Array.from({ length: missing }, (_, n) =>
      n === 0 ? hour : { ...hour, start: hour.start + n * 3600 },
    )
  })
}

/** The mix as it leaves the nozzle at the end of the lift, chilled as far as the limit asks. */
function mixAtEnd(job: CureJob, lift: Lift, hours: readonly PrintHour[]): Celsius {
  const hour = hours.find(each => each.start + 3600 > lift.end) ?? hours.at(-1)
  if (!hour) return job.mix.reference
  const most = job.rules.mixTemperatureMost.value
  return Math.max(hour.mixTemperatureChilled ?? hour.mixTemperature, Math.min(hour.mixTemperature, most))
}

function worstOf(plans: readonly CurePlan[], lift: string): CurePlan {
  const [first, ...others] = plans
  assert(first, `lift ${lift} belongs to a section with walls`)
  if (others.length === 0) return first
  const driest = plans.reduce((a, b) => (litresOf(b) > litresOf(a) ? b : a))
  const hottest = plans.reduce((a, b) => (b.peak.temperature > a.peak.temperature ? b : a))
  const common = Math.min(...plans.map(plan => plan.heat.until))
  const slowest = plans.reduce((a, b) => (traceAgeAt(b.heat, common) < traceAgeAt(a.heat, common) ? b : a))
  return {
    ...driest,
    steps: [
      ...driest.steps.filter(step => step.do !== 'check-temperature'),
      ...hottest.steps.filter(step => step.do === 'check-temperature'),
    ].sort((a, b) => a.at - b.at),
    milestones: slowest.milestones.map((mark, index) =>
      latest(
        plans.map(plan => plan.milestones[index]!),
        mark,
      ),
    ),
    findings: worstFindings(plans.flatMap(plan => plan.findings)),
    peak: hottest.peak,
    heat: slowest.heat,
  }
}

const litresOf = (plan: CurePlan): number => plan.steps.reduce((sum, step) => sum + (step.litres ?? 0), 0)

/** The latest of one milestone over all ways; one that is not reached is later than any. */
const latest = (marks: readonly Milestone[], start: Milestone): Milestone =>
  marks.reduce((a, b) => ((b.at ?? Infinity) > (a.at ?? Infinity) ? b : a), start)

const gravity = { pass: 0, warn: 1, 'outside-range': 2, fail: 3 } as const

/** One finding of each check: the gravest, among equals the one farthest out. */
function worstFindings(findings: readonly Finding[]): readonly Finding[] {
  const worst = new Map<string, Finding>()
  for (const finding of findings) {
    const known = worst.get(finding.check)
    const graver = !known || gravity[finding.verdict] > gravity[known.verdict]
    const farther =
      known?.verdict === finding.verdict &&
      Math.abs(finding.demand - finding.capacity) > Math.abs(known.demand - known.capacity) &&
      finding.verdict !== 'pass'
    if (graver || farther) worst.set(finding.check, finding)
  }
  return [...worst.values()]
}
