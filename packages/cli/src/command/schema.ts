import { jobJsonSchema, siteFileJsonSchema } from '@dawnlift/document/job'
import { isReportedCommand, reportJsonSchema, reportSchemas } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import type { CommandContext } from './command-context.js'

const commands = Object.keys(reportSchemas).join(', ')

export function addSchema(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('schema')
    .option('--of <command>', `of what that command prints with --json, instead: ${commands}`)
    .option('--site', 'of site.yaml, instead')
    .option('--plan', 'short for --of plan')
    .description('The JSON Schema of job.yaml, for editors that complete and check while one types.')
    .action((options: { of?: string; site?: boolean; plan?: boolean }) => {
      if (options.site) return screen.out(JSON.stringify(siteFileJsonSchema(), null, 2))
      const of = options.of ?? (options.plan ? 'plan' : undefined)
      if (of === undefined) return screen.out(JSON.stringify(jobJsonSchema(), null, 2))
      if (isReportedCommand(of)) return screen.out(JSON.stringify(reportJsonSchema(of), null, 2))
      const say = `“${of}” prints no report with --json; those that do are ${commands}. Name one of them.`
      showProblems(screen, [{ code: 'cli/no-report', at: '--of', say }], false)
      finish(2)
    })
}
