import { formatQuantity } from '@dawnlift/core/quantity'
import { checkReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showFindings, showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import type { CommandContext } from './command-context.js'
import { planFolder } from './job-input.js'

export function addCheck(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('check')
    .argument('<job>', 'a job folder')
    .option('--assumed', 'also every default in use, with where it comes from')
    .option('--json', 'one JSON document on standard output')
    .description(
      'Problems and findings only. Ends with 1 when something fails, 2 when the job cannot be read.',
    )
    .action(async (job: string, options: { assumed?: boolean; json?: boolean }) => {
      const planned = await planFolder(job, screen)
      if (!planned.ok) {
        showProblems(screen, planned.problems, options.json === true)
        return finish(2)
      }
      const { plan, opened } = planned.value
      const length = (metres: number) => formatQuantity(metres, 'length', plan.job.units)
      const failed = plan.findings.some(finding => finding.verdict === 'fail')
      if (options.json)
        screen.out(JSON.stringify(checkReport(plan, opened, options.assumed === true), null, 2))
      else {
        showFindings(screen, plan.findings)
        for (const { point, say } of opened.notes)
          screen.out(`  in the drawing at ${point.map(length).join(', ')}  ${say}`)
        for (const { at, say } of opened.weatherNotes) screen.out(`  in the weather  ${at}: ${say}`)
        for (const snap of plan.snaps)
          screen.out(`  moved to a layer  ${snap.what}: ${length(snap.asked)} → ${length(snap.got)}`)
        if (options.assumed)
          screen.out(
            textTable(
              ['assumed', 'value', 'from'],
              opened.assumed.map(({ at, value, source }) => [at, value, source]),
            ),
          )
        screen.out(failed ? 'Some of this cannot be printed as drawn.' : 'Nothing here stops the print.')
      }
      if (failed) finish(1)
    })
}
