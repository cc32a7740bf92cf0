import {
  type AnyLever,
  type LeverRow,
  leverSettings,
  leverUnits,
  limitName,
  sayLever,
  tryLevers,
} from '@dawnlift/core/campaign'
import { campaignInput } from '@dawnlift/core/plan'
import { leversReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import type { CommandContext } from '../run-dawnlift.js'
import { showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import { planFolder } from './job-input.js'

export function addLevers(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('levers')
    .argument('<job>', 'a job folder')
    .option('--json', 'one JSON document on standard output')
    .description('What would buy time: each lever planned for real, and the best pair of them.')
    .action(async (job: string, options: { json?: boolean }) => {
      const planned = await planFolder(job, screen)
      if (!planned.ok) {
        showProblems(screen, planned.problems, options.json === true)
        return finish(2)
      }
      const { plan } = planned.value
      const input = campaignInput(plan.job, plan.sections, plan.bands, plan.routes, plan.campaign.hours)
      const kinds = (Object.keys(leverUnits) as (keyof typeof leverUnits)[]).filter(
        kind => kind !== 'next-day',
      )
      screen.err('  pulling levers …')
      const table = tryLevers(
        input,
        kinds.flatMap(kind => leverSettings(input, kind)),
      )
      if (options.json) return screen.out(JSON.stringify(leversReport(table), null, 2))
      const name = (lever: AnyLever) => (lever.kind === 'own' ? lever.name : sayLever(lever, plan.job.units))
      const row = (
        label: string,
        { printDays, finishDate, finished, daysGained, printTime, lifts, bindsNext }: LeverRow,
      ) => [
        label,
        String(printDays),
        finished ? finishDate : 'not up',
        daysGained === 0 ? '·' : String(daysGained),
        (printTime / 3600).toFixed(1),
        String(lifts),
        bindsNext ? limitName(bindsNext) : '',
      ]
      const rows = [
        row('as planned', table.asPlanned),
        ...table.rows.map(each => row(each.levers.map(name).join(' and '), each)),
        ...(table.bestPair
          ? [row(`best pair: ${table.bestPair.levers.map(name).join(' and ')}`, table.bestPair)]
          : []),
      ]
      screen.out(
        textTable(
          ['lever', 'print days', 'finish', 'days sooner', 'print hours', 'lifts', 'then binds'],
          rows,
          [1, 3, 4, 5],
        ),
      )
    })
}
