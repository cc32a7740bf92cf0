import { resolve } from 'node:path'
import { explainLift } from '@dawnlift/core/campaign'
import { clockText } from '@dawnlift/core/clock'
import { sayQuantity } from '@dawnlift/core/limit'
import type { MixFit } from '@dawnlift/core/mix'
import type { Plan } from '@dawnlift/core/plan'
import { formatQuantity, type QuantityFormat } from '@dawnlift/core/quantity'
import { failure } from '@dawnlift/core/result'
import { outputsOf } from '@dawnlift/formats/outputs'
import { planReport } from '@dawnlift/formats/plan-report'
import type { Command } from 'commander'
import { showFindings, showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import type { Screen } from '../screen/terminal.js'
import type { CommandContext } from './command-context.js'
import { planFolder } from './job-input.js'
import { fillFolder, folderProblem } from './output-folder.js'

export function addPlan(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('plan')
    .argument('<job>', 'a job folder')
    .option('--out <folder>', 'write sheets, machine files, calendars, tables and drawings there')
    .option('--json', 'the whole plan as one JSON document on standard output')
    .description('The whole plan: print days on the screen, files in a folder.')
    .action(async (job: string, options: { out?: string; json?: boolean }) => {
      const folder = options.out === undefined ? undefined : resolve(screen.folder, options.out)
      const inTheWay = folder === undefined ? undefined : folderProblem(folder, options.out ?? folder)
      const planned = inTheWay ? failure([inTheWay]) : await planFolder(job, screen)
      if (!planned.ok) {
        showProblems(screen, planned.problems, options.json === true)
        return finish(2)
      }
      const { plan, opened } = planned.value
      if (folder !== undefined) await writeOutputs(plan, opened.mixFit, folder, screen)
      screen.out(options.json ? JSON.stringify(planReport(plan), null, 2) : printDays(plan, screen.columns))
      if (!options.json)
        showFindings(
          screen,
          plan.findings.filter(finding => finding.verdict !== 'pass'),
        )
    })
}

async function writeOutputs(
  plan: Plan,
  mixFit: MixFit | undefined,
  folder: string,
  screen: Screen,
): Promise<void> {
  const outputs = outputsOf(plan, { at: Date.now() / 1000, sequence: 0, ...(mixFit ? { mixFit } : {}) })
  await fillFolder(folder, outputs, (done, name) => {
    if (screen.live) screen.err(`\x1b[2K  ${done} of ${outputs.length}  ${name}\r`)
  })
  screen.err(`${outputs.length} files in ${folder}`)
}

/** Print days as a table, with beside each lift why it is not higher and what would make it so; with a moment, the lifts from then on. */
export function printDays(plan: Plan, columns?: number, from = Number.NEGATIVE_INFINITY): string {
  const { campaign, job } = plan
  const zone = job.site.timeZone
  const rows = campaign.days.flatMap(day =>
    day.lifts
      .filter(lift => lift.end > from)
      .map((lift, index) => [
        index === 0 ? String(day.number) : '',
        index === 0 ? day.date : '',
        lift.id,
        `${lift.firstLayer}–${lift.lastLayer}`,
        `${clockText(lift.start, zone)}–${clockText(lift.end, zone)}`,
        sayQuantity(lift.volume, 'm³', job.units),
        lift.safety.toFixed(2),
        explainLift(lift, job.units, zone),
      ]),
  )
  const table = textTable(
    ['day', 'date', 'lift', 'layers', 'clock', 'volume', 'safety', 'why not more'],
    rows,
    [0, 5, 6],
    columns,
  )
  return `${job.name}\n\n${table}\n\n${closingLines(plan).join('\n')}`
}

function closingLines(plan: Plan): readonly string[] {
  const { campaign, tally, sections } = plan
  const last = campaign.days.at(-1)
  const finish =
    campaign.finished && last ? `finished on ${last.date}` : 'not finished within the weather given'
  return [
    `${campaign.days.length} print days for ${sections.length === 1 ? 'one section' : `${sections.length} sections`}, ${finish}; ${boundWords(campaign.bound)}.`,
    `${totals(plan)}, ${tally.total.bags} bags.`,
    'Safety is standing capacity over demand of the green wall: a screening value. Confirm by test; local codes and a licensed engineer decide.',
  ]
}

/** What goes into the walls of the whole job, in the big units of its site. */
function totals({ job: { units }, tally: { total } }: Plan): string {
  const inBig = (
    value: number,
    dimension: 'length' | 'mass',
    metric: QuantityFormat,
    imperial: QuantityFormat,
  ) => formatQuantity(value, dimension, units, units === 'metric' ? metric : imperial)
  const bead = inBig(total.beadLength, 'length', { unit: 'km', step: 0.01 }, { unit: 'ft', step: 10 })
  const water = inBig(total.water, 'mass', { unit: 't', step: 0.1 }, { unit: 'lb', step: 10 })
  return `${sayQuantity(total.volume, 'm³', units)} in ${bead} of bead, ${water} of water`
}

/** How much shorter it could be at best: the date no campaign can beat, or that this one is proven shortest. */
function boundWords({ date, met, how }: Plan['campaign']['bound']): string {
  if (met) return 'proven to be the earliest'
  return date === undefined ? how : `no plan can finish before ${date} (${how})`
}
