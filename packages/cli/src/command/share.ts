import { existsSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { basename, dirname, join, resolve } from 'node:path'
import { clockText } from '@dawnlift/core/clock'
import type { Units } from '@dawnlift/core/limit'
import { type Finding, failure, type Problem, type Result, success } from '@dawnlift/core/result'
import {
  checkSiteCampaign,
  type SharedSite,
  type SiteCampaign,
  type SiteInput,
  shareSite,
} from '@dawnlift/core/site-campaign'
import { parseSiteFile, type SiteFile } from '@dawnlift/document/job'
import { figure, toSvg } from '@dawnlift/drawing/paper'
import { drawSharedSite, type SiteGrowth } from '@dawnlift/drawing/views'
import { type SiteBuilding, siteOf } from '@dawnlift/formats/job-folder'
import { shareReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showFindings, showProblems } from '../screen/problem-list.js'
import { progressLine } from '../screen/progress.js'
import { textTable } from '../screen/table.js'
import type { Screen } from '../screen/terminal.js'
import type { CommandContext } from './command-context.js'
import { planFolder } from './job-input.js'

interface ShareOptions {
  readonly picture?: string
  readonly json?: boolean
}

export function addShare(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('share')
    .argument('<site>', 'a folder with a site.yaml that names two job folders or more')
    .option('--picture <file>', 'draw both ways as an SVG there; an existing file is left alone')
    .option('--json', 'one JSON document on standard output')
    .description('One machine and crew over several buildings: one is printed while the other cures.')
    .action(async (path: string, options: ShareOptions) => {
      const read = await readSite(path, options, screen)
      if (!read.ok) {
        showProblems(screen, read.problems, options.json === true)
        return finish(2)
      }
      const { site, input, failing, units } = read.value
      const shared = await sharedOut(input, screen)
      if (!shared) {
        screen.err('Stopped before the site was shared out; nothing is said of it.')
        return finish(130)
      }
      const checked = [shared.shared, shared.oneAfterOther].flatMap(way =>
        checkSiteCampaign(input, way, units),
      )
      const findings = [...failing, ...checked]
      if (options.picture !== undefined)
        writeFileSync(resolve(screen.folder, options.picture), pictureOf(site, input, shared))
      if (options.json)
        return screen.out(JSON.stringify(shareReport(site.name, site.move, shared, findings), null, 2))
      screen.out(siteInWords(site, input, shared))
      showFindings(screen, findings)
    })
}

interface ReadSite {
  readonly site: SiteFile
  readonly input: SiteInput
  /** What cannot be printed as drawn in each job: reach of the machine among it. */
  readonly failing: readonly Finding[]
  /** Of the first building's job. */
  readonly units: Units
}

/** The site with each of its jobs planned; or every problem of all of them. */
async function readSite(path: string, { picture }: ShareOptions, screen: Screen): Promise<Result<ReadSite>> {
  const problems: Problem[] = []
  if (picture !== undefined && existsSync(resolve(screen.folder, picture)))
    problems.push({
      code: 'cli/exists',
      at: '--picture',
      say: `${picture} exists and is left as it is. Choose another name.`,
    })
  const file = siteFile(path, screen)
  if (!existsSync(file) || !statSync(file).isFile() || statSync(file).size > mostBytes)
    return failure([
      ...problems,
      {
        code: 'site/not-found',
        at: path,
        say: `There is no site at ${path}: a folder with a site.yaml is needed (docs/guide/site.md shows one).`,
      },
    ])
  const site = parseSiteFile(readFileSync(file, 'utf8'), basename(file))
  if (!site.ok) return failure([...problems, ...site.problems])
  const buildings: SiteBuilding[] = []
  const failing: Finding[] = []
  for (const { name, job } of site.value.buildings) {
    const planned = await planFolder(join(dirname(file), job), screen)
    if (planned.ok) {
      buildings.push({ name, at: job, plan: planned.value.plan })
      const fails = planned.value.plan.findings.filter(finding => finding.verdict === 'fail')
      failing.push(...fails.map(finding => ({ ...finding, at: `${name}: ${finding.at}` })))
    } else problems.push(...planned.problems.map(each => ({ ...each, at: `${job}: ${each.at}` })))
  }
  if (problems.length > 0) return failure(problems)
  const input = siteOf(buildings, site.value.move)
  const units = buildings[0]?.plan.job.units ?? 'metric'
  return input.ok ? success({ site: site.value, input: input.value, failing, units }) : input
}

const mostBytes = 1024 * 1024

function siteFile(path: string, screen: Screen): string {
  const given = resolve(screen.folder, path)
  return existsSync(given) && statSync(given).isDirectory() ? join(given, 'site.yaml') : given
}

/** Between days it listens for whoever has had enough. */
async function sharedOut(input: SiteInput, screen: Screen): Promise<SharedSite | undefined> {
  const line = progressLine(screen, { share: 'sharing machine and crew' })
  let isStopped = false
  void screen.stopped().then(() => {
    isStopped = true
  })
  const shared = await shareSite(input, {
    progress: share =>
      new Promise(goOn => {
        line('share', share)
        setImmediate(() => goOn(!isStopped))
      }),
  })
  if (shared) line('share', 1)
  return shared
}

function siteInWords(site: SiteFile, input: SiteInput, told: SharedSite): string {
  const zone = input.buildings[0]!.input.timeZone
  const { shared, oneAfterOther, daysGained, bound } = told
  let date = ''
  const rows = shared.visits.map(visit => {
    const isNew = visit.date !== date
    date = visit.date
    return [
      isNew ? visit.date : '',
      visit.building,
      visit.moveStart === undefined ? '' : clockText(visit.moveStart, zone),
      `${clockText(visit.start, zone)}–${clockText(visit.end, zone)}`,
      visit.lifts.map(lift => `${lift.id} ${lift.firstLayer}–${lift.lastLayer}`).join(', '),
    ]
  })
  return [
    site.name,
    '',
    textTable(['date', 'building', 'move from', 'set-up to wash-out', 'lifts and their layers'], rows),
    '',
    `Shared: ${endText(shared)}, ${shared.moves} moves. One after the other: ${endText(oneAfterOther)}.`,
    ...(daysGained === undefined ? [] : [gainText(daysGained)]),
    ...(bound === undefined ? [] : [`No way of sharing is up before ${bound}.`]),
    'Each day follows the plain rule, most urgent section first; moves are in the crew’s time. Standing is a screening value; local codes and a licensed engineer decide.',
  ].join('\n')
}

const endText = ({ finished, finishDate }: SiteCampaign): string =>
  finished ? `up on ${finishDate}` : 'not up within the weather given'

const gainText = (days: number): string =>
  days > 0
    ? `Sharing machine and crew gains ${days} ${days === 1 ? 'day' : 'days'}.`
    : 'Sharing gains nothing here: one building fills the days by itself, or the moves eat what is won.'

function pictureOf(site: SiteFile, input: SiteInput, { shared, oneAfterOther }: SharedSite): string {
  const words = { job: site.name, revision: '', date: '' }
  const parts = {
    site: site.name,
    shared: growthsOf(input, shared),
    oneAfterOther: growthsOf(input, oneAfterOther),
  }
  return toSvg(drawSharedSite(parts, figure(240, 120, words)))
}

/** Share of each building's layers that stands on the evening of each of its days. */
function growthsOf({ buildings }: SiteInput, campaign: SiteCampaign): readonly SiteGrowth[] {
  return buildings.map(({ name, input }) => {
    const layers = input.work.reduce((sum, work) => sum + work.printTimes.length, 0)
    let standing = 0
    const evenings = campaign.visits
      .filter(visit => visit.building === name)
      .map(({ date, lifts }) => {
        for (const lift of lifts) standing += lift.lastLayer - lift.firstLayer + 1
        return { date, share: standing / layers }
      })
    return { building: name, evenings }
  })
}
