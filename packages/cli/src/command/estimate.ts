import {
  type BidCost,
  type BidEstimate,
  type BidFactor,
  estimateCost,
  estimateJob,
  type Spread,
} from '@dawnlift/core/campaign'
import { type Dimension, parseQuantity } from '@dawnlift/core/quantity'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import { newJobText } from '@dawnlift/document/job'
import { type Bid, type BidGiven, bidOf, openJob } from '@dawnlift/formats/job-folder'
import { estimateReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import type { CommandContext } from './command-context.js'
import { besideJob, jobFile, readJob } from './job-input.js'

interface EstimateOptions {
  readonly walls?: string
  readonly floor?: string
  readonly height: string
  readonly openings?: string
  readonly embeds: string
  readonly lintels: string
  readonly pours: string
  readonly like?: string
  readonly json?: boolean
}

export function addEstimate(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('estimate')
    .option('--walls <length>', 'length of all walls to be printed, such as "78 m"')
    .option('--floor <area>', 'floor area, such as "150 m²"; walls are taken from it if not given')
    .option('--height <length>', 'height of the walls', '2.8 m')
    .option('--openings <share>', 'share of the wall face that is openings, such as "15 %"')
    .option('--embeds <number>', 'boxes, sleeves and other inserts', '0')
    .option('--lintels <number>', 'lintels', '0')
    .option('--pours <volume>', 'concrete poured into columns', '0 m³')
    .option('--like <job>', 'a job folder whose climate, crew, rules, mix, machine and rates are meant')
    .option('--json', 'one JSON document on standard output')
    .description('Days, cost and quantities for a bid, before anything is drawn, as ranges.')
    .action(async (options: EstimateOptions) => {
      const given = readGiven(options)
      const like = given.ok ? await likeJob(options.like, screen) : given
      if (!given.ok || !like.ok) {
        const problems = [given, like].flatMap(each => (each.ok ? [] : each.problems))
        showProblems(screen, given.ok ? problems : given.problems, options.json === true)
        return finish(2)
      }
      const bid = bidOf(like.value.opened, like.value.read, given.value)
      if (bid.input.openHours.low <= 0) {
        showProblems(screen, [noOpenHours(bid, options.like)], options.json === true)
        return finish(2)
      }
      const estimate = estimateJob(bid.input)
      const cost = estimateCost(estimate, bid.cost)
      if (options.json) return screen.out(JSON.stringify(estimateReport(bid, estimate, cost), null, 2))
      screen.out(
        estimateInWords(bid, estimate, cost, { units: like.value.opened.job.units, named: options.like }),
      )
    })
}

type LikeJob = { readonly opened: Parameters<typeof bidOf>[0]; readonly read: Parameters<typeof bidOf>[1] }

/** The job that is meant, or the one that `new` writes. */
async function likeJob(path: string | undefined, screen: CommandContext['screen']): Promise<Result<LikeJob>> {
  if (path === undefined) {
    const opened = openJob({ document: newJobText('estimate'), read: () => undefined })
    return opened.ok ? success({ opened: opened.value, read: () => undefined }) : opened
  }
  const opened = await readJob(path, screen)
  return opened.ok ? success({ opened: opened.value, read: besideJob(jobFile(path, screen)) }) : opened
}

/** What the options give; or everything that is wrong with them. */
function readGiven(options: EstimateOptions): Result<BidGiven> {
  const problems: Problem[] = []
  const wrong = (at: string, say: string) => problems.push({ code: 'cli/amount', at, say })
  const amount = (at: string, written: string, dimension: Dimension, least: number): number => {
    const read = parseQuantity(written, dimension)
    if (!read.ok) wrong(at, read.problems[0]?.say ?? '')
    else if (read.value < least || (dimension === 'share' && read.value >= 0.9))
      wrong(
        at,
        `“${written}” is not allowed here; write ${least} or more${dimension === 'share' ? ', and less than 90 %' : ''}.`,
      )
    return read.ok ? read.value : 0
  }
  const count = (at: string, written: string): number => {
    if (!/^\d{1,5}$/.test(written)) wrong(at, `“${written}” is no whole number; write one such as 12.`)
    return Number(written)
  }
  const { walls, floor, openings } = options
  if (walls === undefined && floor === undefined)
    wrong('--walls', 'Give the length of the walls with --walls, or the floor area with --floor.')
  const given: BidGiven = {
    ...(floor === undefined ? {} : { floorArea: amount('--floor', floor, 'area', 1) }),
    ...(walls === undefined ? {} : { wallLength: amount('--walls', walls, 'length', 0.1) }),
    ...(openings === undefined ? {} : { openings: amount('--openings', openings, 'share', 0) }),
    wallHeight: amount('--height', options.height, 'length', 0.1),
    embeds: count('--embeds', options.embeds),
    lintels: count('--lintels', options.lintels),
    poured: amount('--pours', options.pours, 'volume', 0),
  }
  return problems.length > 0 ? failure(problems) : success(given)
}

const noOpenHours = ({ season, weather }: Bid, like: string | undefined): Problem => ({
  code: 'estimate/no-open-hours',
  at: like ?? '--like',
  say: `From ${season[0]} to ${season[1]} no hour of the crew’s day may be printed in (${weather}). Give a job like it with another first day, day or rules.`,
})

const factorWords: Readonly<Record<BidFactor, string>> = {
  wallLength: 'length of the walls',
  openings: 'openings',
  lintelLifts: 'lifts that lintels end',
  slowed: 'corners, starts and travel',
  used: 'small stops of the crew',
  openHours: 'open hours of a day',
  lostShare: 'days lost to weather',
}

/** The job whose climate, crew and rates are taken: its units, and its name where one was given. */
interface Like {
  readonly units: 'metric' | 'imperial'
  readonly named: string | undefined
}

/** What quantities are counted in, and how many of it make one of SI. */
const countedIn = {
  metric: { length: ['m', 1], area: ['m²', 1], bead: ['km', 1e-3], volume: ['m³', 1] },
  imperial: {
    length: ['ft', 1 / 0.3048],
    area: ['ft²', 1 / 0.3048 ** 2],
    bead: ['ft', 1 / 0.3048],
    volume: ['yd³', 1 / 0.9144 ** 3],
  },
} as const

function estimateInWords(bid: Bid, estimate: BidEstimate, cost: BidCost, { units, named }: Like): string {
  const { length, area, bead, volume } = countedIn[units]
  const row = (what: string, of: Spread, digits = 0) => [
    what,
    ...[of.low, of.likely, of.high].map(each => each.toFixed(digits)),
  ]
  const { currency } = bid.cost.costs
  const quantities = [
    row(`walls, ${length[0]}`, scaled(estimate.wallLength, length[1]), 1),
    row(`one face less openings, ${area[0]}`, scaled(estimate.wallFace, area[1])),
    row(`bead, ${bead[0]}`, scaled(estimate.beadLength, bead[1]), units === 'metric' ? 2 : 0),
    row(`mix, ${volume[0]}`, scaled(estimate.volume, volume[1]), 1),
    row('sections', estimate.sections),
    row('lifts', estimate.lifts),
    row('print hours', estimate.printHours),
    row('print days', estimate.printDays),
    row('working days', estimate.workDays),
    ...cost.lines
      .filter(line => line.amount.high > 0)
      .map(line => row(`${line.what}, ${currency}`, line.amount)),
    row(`all together, ${currency}`, cost.total),
    row(`per ${area[0]} of wall, ${currency}`, scaled(cost.perWallFace, 1 / area[1])),
    ...(cost.perFloor
      ? [row(`per ${area[0]} of floor, ${currency}`, scaled(cost.perFloor, 1 / area[1]))]
      : []),
    row(`the same walls built conventionally, ${currency}`, cost.conventional),
  ]
  const drivers = estimate.drivers.map(({ what, workDays }) => [
    factorWords[what],
    `${workDays.best} to ${workDays.worst}`,
  ])
  const { openHours, lostShare } = bid.input
  return [
    textTable(['', 'low', 'likely', 'high'], quantities, [1, 2, 3]),
    '',
    textTable(['what drives it', 'working days, the rest likely'], drivers),
    '',
    `Climate, crew, rules, mix, machine and rates as in ${named ?? 'the job that `dawnlift new` writes: give your own with --like'}.`,
    `Days from ${bid.season[0]} on, in ${bid.weather}: ${openHours.low.toFixed(1)} to ${openHours.high.toFixed(1)} h open, ${Math.round(100 * lostShare.low)} to ${Math.round(100 * lostShare.high)} % lost.`,
    ...estimate.assumes.map(each => `Assumed: ${each}.`),
    'Low is all that makes it short at once, high all that makes it long: a plan of the walls says it far better.',
  ].join('\n')
}

const scaled = ({ low, likely, high }: Spread, by: number): Spread => ({
  low: low * by,
  likely: likely * by,
  high: high * by,
})
