import { limitName, type MishapRates } from '@dawnlift/core/campaign'
import { isDate } from '@dawnlift/core/clock'
import { type Dimension, parseQuantity } from '@dawnlift/core/quantity'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import { type Doubt, type DoubtWishes, doubtFrom, doubtReplays } from '@dawnlift/formats/job-folder'
import { riskReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { replayParcels, replayWork } from '../beside/replay-work.js'
import { parcelCount, workBeside } from '../beside/work-beside.js'
import { showProblems } from '../screen/problem-list.js'
import { progressLine } from '../screen/progress.js'
import { textTable } from '../screen/table.js'
import type { Screen } from '../screen/terminal.js'
import type { CommandContext } from './command-context.js'
import { type PlannedFolder, planFolder } from './job-input.js'

interface RiskOptions {
  readonly years: string
  readonly breakdownEvery?: string
  readonly repair: string
  readonly late: string
  readonly lateBy: string
  readonly by?: string
  readonly json?: boolean
}

const stages = { weather: 'meeting other weather', campaign: 'replaying the campaign' }

export function addRisk(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('risk')
    .argument('<job>', 'a job folder')
    .option('--years <number>', 'courses of weather to meet', '100')
    .option(
      '--breakdown-every <time>',
      'mean printing time between breakdowns, such as "60 h"; without it there are none',
    )
    .option('--repair <time>', 'mean time until it prints again', '3 h')
    .option('--late <share>', "chance that a day's mix comes late", '0 %')
    .option('--late-by <time>', 'how late it comes on average', '1 h')
    .option('--by <date>', 'a date whose chance is asked for, such as 2026-08-01')
    .option('--json', 'one JSON document on standard output')
    .description('How sure the finish is: the campaign run through other years of weather and mishaps.')
    .action(async (job: string, options: RiskOptions) => {
      const wishes = readWishes(options)
      const planned = wishes.ok ? await planFolder(job, screen) : wishes
      if (!planned.ok || !wishes.ok) {
        showProblems(screen, planned.ok ? [] : planned.problems, options.json === true)
        return finish(2)
      }
      const doubt = await replayed(screen, planned.value, wishes.value)
      if (!doubt) return finish(130)
      if (options.json) return screen.out(JSON.stringify(riskReport(wishes.value, doubt), null, 2))
      screen.out(`${planned.value.plan.job.name}\n\n${riskInWords(doubt, wishes.value.rates)}`)
    })
}

/** Replays worth a worker's start. */
const fewReplays = 40

/** The replays shared out among the cores; undefined when somebody has stopped them. */
async function replayed(
  screen: Screen,
  planned: PlannedFolder,
  wishes: DoubtWishes,
): Promise<Doubt | undefined> {
  const count = doubtReplays(planned, wishes)
  const line = progressLine(screen, stages)
  const parcels = replayParcels(planned, wishes, count, parcelCount(count, fewReplays))
  const runs = await workBeside(screen, replayWork, parcels, line)
  if (runs === 'stopped') {
    screen.err('Stopped before all replays were run; nothing is said of the rest.')
    return undefined
  }
  line('campaign', 1)
  return doubtFrom(planned, wishes, runs.flat())
}

/** What the options ask for; or everything that is wrong with them. */
function readWishes(options: RiskOptions): Result<DoubtWishes> {
  const problems: Problem[] = []
  const amount = (flag: string, written: string, dimension: Dimension): number => {
    const read = parseQuantity(written, dimension)
    if (read.ok && read.value >= 0 && (dimension !== 'share' || read.value <= 1)) return read.value
    const allowed = dimension === 'share' ? 'from 0 to 100 %' : '0 or more'
    const say = read.ok
      ? `“${written}” is not allowed here; write ${allowed}.`
      : (read.problems[0]?.say ?? '')
    problems.push({ code: 'cli/amount', at: flag, say })
    return 0
  }
  const replays = Number(options.years)
  if (!Number.isInteger(replays) || replays < 1 || replays > 5000)
    problems.push({
      code: 'cli/years',
      at: '--years',
      say: `“${options.years}” is no whole number from 1 to 5000; write how many courses of weather to meet, such as 100.`,
    })
  const every = options.breakdownEvery
  const between = every === undefined ? Number.POSITIVE_INFINITY : amount('--breakdown-every', every, 'time')
  const rates = {
    breakdownsPerHour: between > 0 ? 3600 / between : 0,
    repairHours: amount('--repair', options.repair, 'time') / 3600,
    lateChance: amount('--late', options.late, 'share'),
    lateHours: amount('--late-by', options.lateBy, 'time') / 3600,
  }
  const { by } = options
  if (by !== undefined && !isDate(by))
    problems.push({
      code: 'cli/date',
      at: '--by',
      say: `“${by}” is no day of the calendar; write it like 2026-08-01.`,
    })
  return problems.length > 0
    ? failure(problems)
    : success({ replays, rates, ...(by === undefined ? {} : { by }) })
}

function riskInWords(doubt: Doubt, rates: MishapRates): string {
  const { chance, between } = doubt.chance
  const rows = doubt.quantiles.map(({ share, date, between: [from, to] }) => [
    percent(share),
    date ?? 'later than the weather reaches',
    `${from ?? 'later'} to ${to ?? 'later'}`,
    daysMore(doubt.contingency.find(each => each.share === share)?.days),
  ])
  const lost = doubt.lost.map(({ cause, days, within }) => [
    causeWords(cause),
    days.toFixed(2),
    Number.isFinite(within) ? `± ${within.toFixed(2)}` : '',
  ])
  return [
    `planned to be up on ${doubt.planned}: ${percent(chance)} sure (${percent(between[0])} to ${percent(between[1])}), in ${doubt.weather}`,
    ...(doubt.by
      ? [
          `up by ${doubt.by.date}: ${percent(doubt.by.chance)} sure (${percent(doubt.by.between[0])} to ${percent(doubt.by.between[1])})`,
        ]
      : []),
    mishapWords(rates),
    '',
    textTable(['sure', 'up by', 'itself within', 'days after the plan'], rows, [3]),
    '',
    textTable(['working days without a layer', 'mean of a replay', 'itself within'], lost, [1]),
    '',
    doubt.caution,
  ].join('\n')
}

const daysMore = (days: number | undefined): string =>
  days === undefined ? '' : days > 0 ? `+${days}` : String(days)

const percent = (share: number): string => `${Math.round(share * 100)} %`

const causeWords = (cause: Doubt['lost'][number]['cause']): string =>
  cause === 'breakdown' || cause === 'late delivery' ? cause : limitName(cause)

const mishapWords = ({ breakdownsPerHour, repairHours, lateChance, lateHours }: MishapRates): string =>
  [
    breakdownsPerHour > 0
      ? `a breakdown every ${Number((1 / breakdownsPerHour).toPrecision(3))} h of printing, ${Number(repairHours.toPrecision(3))} h each`
      : 'no breakdowns (--breakdown-every)',
    lateChance > 0
      ? `mix late on ${percent(lateChance)} of the days, by ${Number(lateHours.toPrecision(3))} h`
      : 'no late deliveries (--late)',
  ].join('; ')
