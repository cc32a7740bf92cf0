import { writeFileSync } from 'node:fs'
import { type Way, waysOf } from '@dawnlift/core/lever'
import type { Plan } from '@dawnlift/core/plan'
import { figure, toSvg } from '@dawnlift/drawing/paper'
import { drawTradeOff, tradeOffRows } from '@dawnlift/drawing/views'
import { weighReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import { progressLine } from '../screen/progress.js'
import { textTable } from '../screen/table.js'
import type { CommandContext } from './command-context.js'
import { planFolder } from './job-input.js'
import { leftNote } from './levers-table.js'
import { pictureFile } from './picture-file.js'

const caution =
  'Safety is the smallest standing capacity over demand of any lift: a screening value; local codes and a licensed engineer decide.'

export function addWeigh(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('weigh')
    .argument('<job>', 'a job folder')
    .option('--out <file>', 'draw finish against cost, an SVG picture; an existing file is left alone')
    .option('--json', 'one JSON document on standard output')
    .description(
      'What waiting would buy: the soonest, the cheapest and the calmest days, each planned for real.',
    )
    .action(async (job: string, options: { out?: string; json?: boolean }) => {
      const target = pictureFile(screen, options.out)
      const planned = target.ok ? await planFolder(job, screen) : target
      if (!planned.ok || !target.ok) {
        showProblems(screen, planned.ok ? [] : planned.problems, options.json === true)
        return finish(2)
      }
      const { plan } = planned.value
      const line = progressLine(screen, { campaign: 'planning other ways' })
      const ways = waysOf(plan, line)
      line('campaign', 1)
      if (target.value !== undefined && ways.length > 0) writeFileSync(target.value, picture(ways, plan))
      screen.out(options.json ? JSON.stringify(weighReport(ways, plan), null, 2) : inWords(ways, plan))
    })
}

function picture(ways: readonly Way[], { job }: Plan): string {
  const rows = tradeOffRows(ways, way => ({ name: nameOf(way), calmSay: `${way.lifts} lifts` }))
  const { name, revision, costs, calendar } = job
  const words = { job: name, revision, date: calendar.firstDay, notes: [caution] }
  return toSvg(drawTradeOff({ job: name, currency: costs.currency, rows }, figure(128, 76, words)))
}

/** By the aims of the job it answers; a way that no aim leads to was the best found of its kind up to its day. */
const nameOf = ({ aim, ledToBy }: Way): string => (ledToBy.length > 0 ? ledToBy.join(', ') : `${aim} by then`)

function inWords(ways: readonly Way[], { job, soFar }: Plan): string {
  if (ways.length === 0)
    return `${job.name}\n\nThe job is not up while the weather is known: there is nothing to weigh.`
  const head = ['way', 'finish', `cost ${job.costs.currency}`, 'days', 'lifts', 'safety', '']
  const rows = ways.map(way => [
    nameOf(way),
    way.date,
    String(Math.round(way.cost)),
    String(way.printDays),
    String(way.lifts),
    way.safety.toFixed(2),
    [way.isPlanned ? 'as planned' : '', way.isWorthwhile ? '' : 'another is as good in everything']
      .filter(note => note !== '')
      .join('; '),
  ])
  return [
    job.name,
    '',
    textTable(head, rows, [2, 3, 4, 5]),
    '',
    ...(soFar ? [leftNote] : []),
    'Calm is told by lifts: each is a start of the nozzle and a joint to cure. Cost is by the job’s own rates. What counts first is written in job.yaml as `aim`.',
    caution,
  ].join('\n')
}
