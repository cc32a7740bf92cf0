import type { Campaign } from '../campaign/index.js'
import { clockText, instantAt, localTime } from '../clock/index.js'
import type { Job } from '../job/index.js'
import type { SiteLog } from '../log/index.js'
import { cutWindow } from '../mix/index.js'
import type { Instant } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { routeSection } from '../route/index.js'
import { proposeSections } from '../section/index.js'
import { tallyOf } from '../tally/index.js'
import { callsOf, checkCalls, checkClashes } from '../trade/index.js'
import { checkCorners } from '../trial/index.js'
import { checkBrushes, checkOverhang, cutsThrough, heightSnaps, layAllBeads } from '../wall/index.js'
import { checkCoverage, type WeatherHour } from '../weather/index.js'
import { campaignInput } from './campaign-input.js'
import { gathered } from './gathered-findings.js'
import { keptCures } from './kept-cures.js'
import { hasDays, keptDays, standingDays } from './kept-days.js'
import { keptHours } from './kept-hours.js'
import type { Plan } from './plan.js'
import { kept, newPlanCache, type PlanCache, trimPlanCache } from './plan-cache.js'
import { sampledBeadLength } from './sample-wall.js'
import { checkSite, columnPours } from './site-checks.js'
import { hourAt } from './site-physics.js'
import { thinPlaces } from './thin-places.js'

/** What a plan is made from: the job, and weather hour by hour from its first day on. */
export interface PlanInput {
  readonly job: Job
  readonly hours: readonly WeatherHour[]
  /** What stands already; the rest is planned from it. */
  readonly log?: SiteLog
}

export type Stage = 'sections' | 'beads' | 'routes' | 'weather' | 'campaign' | 'calls' | 'cure' | 'tally'

/** What each stage is called while somebody waits for it. */
export const stageWords: Readonly<Record<Stage, string>> = {
  sections: 'dividing into sections',
  beads: 'laying beads',
  routes: 'running the nozzle',
  weather: 'placing it in the weather',
  campaign: 'choosing lifts and days',
  calls: 'calling the trades',
  cure: 'keeping it damp',
  tally: 'counting',
}

export interface PlanOptions {
  readonly cache?: PlanCache
  /** Called before each stage; answering `false` cancels the plan. */
  readonly progress?: (stage: Stage, share: number) => Promise<boolean> | boolean
  /**
   * A campaign whose days are held instead of searched: an edit is answered in a tenth of the time. Days searched already
   * are taken all the same.
   */
  readonly hold?: Campaign
}

/**
 * The whole pipeline. Undefined only when `progress` cancelled it, or the days to hold do not carry over. `initGeometry`
 * must have run.
 */
export async function planJob(
  { job, hours, log }: PlanInput,
  options: PlanOptions = {},
): Promise<Plan | undefined> {
  const cache = options.cache ?? newPlanCache()
  const goOn = async (stage: Stage, share: number) => (await options.progress?.(stage, share)) !== false

  if (!(await goOn('sections', 0))) return undefined
  const { sections, findings: sectionFindings } = kept(cache.divisions, divisionKey(job), () => {
    const division = proposeSections(job, { beadLengthOf: sampledBeadLength(job, cache.routes) })
    return { ...division, findings: [...division.findings, ...checkBrushes(job, division.sections)] }
  })

  if (!(await goOn('beads', 0.05))) return undefined
  const bands = layAllBeads(job, sections, cache.bands)

  if (!(await goOn('routes', 0.3))) return undefined
  const rules = { speed: job.print.speed, origin: job.machineOrigin, cache: cache.routes, units: job.units }
  const routed = bands.map(each => routeSection(each, job.machine, rules))
  const routes = routed.map(each => each.routes)

  if (!(await goOn('weather', 0.55))) return undefined
  const { verdicts, longestRest } = keptHours(job, hours, cache.weather)

  if (!(await goOn('campaign', 0.65))) return undefined
  const { runs, geometry, gains } = cache
  const known = { longestRest, runs, geometry, gains }
  const makeInput = () => campaignInput(job, sections, bands, routes, verdicts, cache.paces, known)
  const daysOf = { job, hours: verdicts, ...(log ? { log } : {}) }
  const isHeld = options.hold !== undefined && !hasDays(daysOf, cache.days)
  const settled = isHeld
    ? standingDays(daysOf, makeInput, options.hold)
    : keptDays(daysOf, makeInput, cache.days)
  if (!settled) return undefined
  const { days } = settled
  const { campaign } = days

  if (!(await goOn('calls', 0.82))) return undefined
  const parts = { job, sections, routes, campaign, cutWindow: (down: Instant) => cutAt(down, job, verdicts) }
  const calls = callsOf(parts)

  if (!(await goOn('cure', 0.85))) return undefined
  const lifts = campaign.days.flatMap(day => day.lifts)
  const cure = keptCures(job, sections, lifts, verdicts, cache)

  if (!(await goOn('tally', 0.98))) return undefined
  const poured = columnPours(job, sections, campaign)
  const findings: readonly Finding[] = [
    ...sectionFindings,
    ...thinPlaces(job, bands),
    ...bands.flatMap(laid => checkOverhang(job, laid, cache.overhangs)),
    ...routed.flatMap(each => each.findings),
    ...checkCorners(routes, job),
    ...checkClashes(job),
    ...days.findings,
    ...settled.findings,
    ...weatherFindings(job, hours, campaign),
    ...checkCalls(parts, calls),
    ...checkSite(job, campaign),
    ...poured.findings.filter(finding => finding.verdict !== 'pass'),
    ...gathered(cure.flatMap(each => each.findings)),
  ]
  const plan = {
    job,
    sections,
    bands,
    routes,
    campaign,
    calls,
    cure,
    pours: poured.pours,
    tally: tallyOf({ job, campaign }),
    snaps: sections.flatMap(section => heightSnaps(job, section)),
    findings,
    ...(days.soFar ? { soFar: days.soFar } : {}),
    ...(isHeld ? { held: true as const } : {}),
  }
  trimPlanCache(cache, bands, lifts.length)
  if (!(await goOn('tally', 1))) return undefined
  return plan
}

/** What a division and its findings rest on: all that its estimates of layer time read, and what may leave a section nothing to print. */
const divisionKey = (job: Job): string => {
  const { walls, openings, embeds, columns, print, rules, sections, noCutAt, machine, units } = job
  const through = embeds.filter(embed =>
    walls.some(wall => wall.id === embed.wall && cutsThrough(embed, wall, print)),
  )
  return JSON.stringify([
    walls,
    openings,
    through,
    columns,
    print,
    rules.layerTimeMost,
    sections,
    noCutAt,
    machine,
    units,
  ])
}

/** What the weather of the planned days rests on. */
function weatherFindings(job: Job, hours: readonly WeatherHour[], campaign: Campaign): readonly Finding[] {
  const { timeZone } = job.site
  const last = campaign.days.at(-1)
  if (!last) return []
  const clock = (at: Instant) => `${localTime(at, timeZone).date} ${clockText(at, timeZone)}`
  return checkCoverage(hours, instantAt(job.calendar.firstDay, 0, timeZone), last.end, clock)
}

/** From the earliest clean cut to the latest cut by knife; none where the mix gives none. */
const cutAt = (down: Instant, job: Job, verdicts: Parameters<typeof hourAt>[0]) =>
  cutWindow(down, at => hourAt(verdicts, at).mixTemperature, job.mix)
