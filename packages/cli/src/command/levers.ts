import {
  isJobLeverKind,
  type JobLeverKind,
  jobLeverKinds,
  type LeverPrice,
  type LeverPrices,
  leverStageWords,
} from '@dawnlift/core/lever'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import { leversReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { type LeversParcel, leversWork } from '../beside/levers-work.js'
import { standingParts } from '../beside/standing-parts.js'
import { workBeside } from '../beside/work-beside.js'
import { showProblems } from '../screen/problem-list.js'
import { progressLine } from '../screen/progress.js'
import type { CommandContext } from './command-context.js'
import { planFolder } from './job-input.js'
import { leversInWords } from './levers-table.js'

interface LeversOptions {
  readonly sets: string
  readonly years: string
  readonly without: readonly string[]
  readonly price: readonly string[]
  readonly json?: boolean
}

type LeversWishes = Pick<LeversParcel, 'wishes' | 'prices' | 'most' | 'without'>

const stages = { ...leverStageWords, doubt: 'meeting other weather' }

const gathered = (value: string, before: readonly string[]): readonly string[] => [...before, value]

export function addLevers(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('levers')
    .argument('<job>', 'a job folder')
    .option('--sets <number>', 'levers pulled together: 1, 2 or 3 at most', '3')
    .option('--years <number>', 'courses of weather each row has to meet; 0: none', '40')
    .option('--without <lever>', `a lever that cannot be had: ${jobLeverKinds.join(', ')}`, gathered, [])
    .option(
      '--price <lever=amount>',
      'what a lever costs once, or as AMOUNT/day by the print day',
      gathered,
      [],
    )
    .option('--json', 'one JSON document on standard output')
    .description('What would buy time: each lever planned for real, with the best pair and triple of them.')
    .action(async (job: string, options: LeversOptions) => {
      const wishes = readWishes(options)
      const planned = wishes.ok ? await planFolder(job, screen) : wishes
      if (!planned.ok || !wishes.ok) {
        showProblems(screen, planned.ok ? [] : planned.problems, options.json === true)
        return finish(2)
      }
      const { plan, opened, file } = planned.value
      const parcel = {
        opened,
        plan: standingParts(plan),
        file,
        ...wishes.value,
      }
      const line = progressLine(screen, stages)
      const done = await workBeside(screen, leversWork, [parcel], line)
      if (done === 'stopped' || !done[0]) {
        screen.err('Stopped before all levers were pulled; nothing is said of the rest.')
        return finish(130)
      }
      line('doubt', 1)
      screen.out(
        options.json ? JSON.stringify(leversReport(done[0], plan), null, 2) : leversInWords(done[0], plan),
      )
    })
}

/** What the options ask for; or everything that is wrong with them. */
function readWishes({ sets, years, without, price }: LeversOptions): Result<LeversWishes> {
  const problems: Problem[] = []
  const wrong = (at: string, say: string) => problems.push({ code: 'cli/lever', at, say })
  const kindOf = (at: string, written: string): JobLeverKind | undefined => {
    if (isJobLeverKind(written)) return written
    wrong(at, `“${written}” is no lever; those there are: ${jobLeverKinds.join(', ')}.`)
    return undefined
  }
  const most = ([1, 2, 3] as const).find(each => String(each) === sets)
  if (!most) wrong('--sets', `“${sets}” is not 1, 2 or 3.`)
  const replays = Number(years)
  if (!Number.isInteger(replays) || replays < 0 || replays > 1000)
    wrong('--years', `“${years}” is no whole number from 0 to 1000.`)
  const prices: Partial<Record<JobLeverKind, LeverPrice>> = {}
  for (const each of price) {
    const [, name, amount, daily] = /^([^=]*)=(\d+(?:\.\d+)?)(\/day)?$/.exec(each) ?? []
    if (name === undefined) wrong('--price', `“${each}” is no price: write LEVER=AMOUNT or LEVER=AMOUNT/day.`)
    const kind = name === undefined ? undefined : kindOf('--price', name)
    if (kind) prices[kind] = priceWith(prices[kind], Number(amount), daily !== undefined)
  }
  const left = without.flatMap(each => kindOf('--without', each) ?? [])
  return problems.length > 0 || !most ? failure(problems) : success(wishesOf(replays, prices, most, left))
}

/** A lever may cost something once and something by the day. */
function priceWith(before: LeverPrice | undefined, amount: number, isDaily: boolean): LeverPrice {
  const { once, perPrintDay } = before ?? { once: 0, perPrintDay: 0 }
  return isDaily ? { once, perPrintDay: perPrintDay + amount } : { once: once + amount, perPrintDay }
}

const wishesOf = (
  replays: number,
  prices: LeverPrices,
  most: 1 | 2 | 3,
  without: readonly JobLeverKind[],
): LeversWishes => ({
  wishes: { replays, rates: { breakdownsPerHour: 0, repairHours: 0, lateChance: 0, lateHours: 0 } },
  prices,
  most,
  without,
})
