import type { Lift } from '../campaign/index.js'
import type { Point } from '../geometry/index.js'
import type { Job, Wall } from '../job/index.js'
import type { Celsius, Metres, Radians } from '../quantity/index.js'
import { assert, type Finding } from '../result/index.js'
import type { Section, Stretch } from '../section/index.js'
import { faceBearing, type PrintHour, type WeatherHour } from '../weather/index.js'
import type { CoverKind } from './cover.js'
import { type CurePlan, curePlan, FOLLOWED } from './cure-plan.js'
import { cureTables } from './cure-tables.js'
import { hydrationOf } from './hydration.js'
import type { Milestone } from './milestones.js'
import type { WallBuild } from './wall-cells.js'
import { traceAgeAt } from './wall-trace.js'
import { type WallWeather, wallWeather } from './wall-weather.js'

type CureJob = Pick<Job, 'site' | 'walls' | 'mix' | 'rules' | 'batching' | 'print'>

/** A piece of a section whose faces look one way. */
interface Facing {
  readonly build: WallBuild
  readonly leftBearing: Radians
  readonly length: Metres
}

/**
 * The cure of every lift of a campaign.
 *
 * A section's walls look several ways: each way is computed, and the worst rules. Water and its clock times follow the side that dries
 * fastest (brought to the whole section), milestones the one that matures last, findings the one that fares worst.
 *
 * Faces are taken as unshaded and whole: openings and the shade of other walls make it cooler and need less water.
 */
export function cureLifts(
  job: CureJob,
  sections: readonly Section[],
  lifts: readonly Lift[],
  hours: readonly PrintHour[],
  cover?: CoverKind,
): readonly CurePlan[] {
  const weatherAt = weatherBySide(job, hoursAround(lifts, hours))
  const tables = cureTables(job.mix, hydrationOf(job.mix))
  const facings = new Map(sections.map(section => [section.id, facingsOf(job, section)]))
  return lifts.map(lift => {
    const ways = facings.get(lift.section) ?? []
    const height = lift.lastLayer * job.print.layerHeight
    const rise = (lift.lastLayer - lift.firstLayer + 1) * job.print.layerHeight
    const area = ways.reduce((sum, way) => sum + way.length, 0) * rise
    const plans = ways.map(({ build, leftBearing }) =>
      curePlan({
        job,
        lift,
        build,
        weather: weatherAt(leftBearing, height),
        mixTemperature: mixAtEnd(job, lift, hours),
        area: { left: area, right: area },
        tables,
        ...(cover ? { cover } : {}),
      }),
    )
    return worstOf(plans, lift.id)
  })
}

/** The hours that the lifts and their cure lie in. */
function hoursAround(lifts: readonly Lift[], hours: readonly PrintHour[]): readonly WeatherHour[] {
  const from = Math.min(...lifts.map(lift => lift.start)) - 86400
  const until = Math.max(...lifts.map(lift => lift.end)) + FOLLOWED
  return hours.filter(({ start }) => start >= from && start < until).map(hour => hour.weather)
}

/** Ways nearer than this look the same to the sun: 22.5°. */
const WAY: Radians = Math.PI / 8

/** The ways a section's walls look, opposite ones together: a wall has both faces anyway. */
function facingsOf(job: CureJob, section: Section): readonly Facing[] {
  const ways = new Map<string, Facing>()
  for (const stretch of section.stretches) {
    const wall = job.walls.find(each => each.id === stretch.wall)
    if (!wall) continue
    const { kind } = wall.makeUp
    const build = { kind, beadWidth: job.print.beadWidth, thickness: wall.thickness }
    for (const piece of piecesOf(wall, stretch)) {
      const bearing = faceBearing(piece.from, piece.to, 'left', job.site.yAxisBearing) % Math.PI
      const way = Math.round(bearing / WAY) % Math.round(Math.PI / WAY)
      const key = `${kind} ${wall.thickness} ${way}`
      const known = ways.get(key)
      ways.set(key, { build, leftBearing: way * WAY, length: (known?.length ?? 0) + piece.length })
    }
  }
  return [...ways.values()]
}

/** The straight lines of a wall between two stations; an arc counts as its chord. */
function piecesOf(
  { centreline: { points, closed } }: Wall,
  { from, to }: Stretch,
): readonly { readonly from: Point; readonly to: Point; readonly length: Metres }[] {
  const corners = closed ? [...points, points[0]!] : points
  let station = 0
  return corners.slice(1).flatMap((end, index) => {
    const start = corners[index]!
    const whole = Math.hypot(end[0] - start[0], end[1] - start[1])
    const length = Math.max(0, Math.min(to, station + whole) - Math.max(from, station))
    station += whole
    return length > 1e-6 ? [{ from: start, to: end, length }] : []
  })
}

/** Walls that look the same way at about the same height share their weather. */
function weatherBySide(
  job: CureJob,
  hours: readonly WeatherHour[],
): (bearing: Radians, height: Metres) => WallWeather {
  const known = new Map<string, WallWeather>()
  return (bearing, height) => {
    const level = Math.max(0.5, Math.round(height * 2) / 2)
    const key = `${bearing.toFixed(4)} ${level}`
    const made = known.get(key) ?? wallWeather(job.site, hours, { leftBearing: bearing, height: level })
    known.set(key, made)
    return made
  }
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
