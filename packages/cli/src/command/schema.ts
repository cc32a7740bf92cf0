import { jobJsonSchema } from '@dawnlift/document/job'
import { planJsonSchema } from '@dawnlift/formats/plan-report'
import type { Command } from 'commander'
import type { CommandContext } from '../run-dawnlift.js'

export function addSchema(program: Command, { screen }: CommandContext): void {
  program
    .command('schema')
    .option('--plan', 'of what `plan --json` prints, instead')
    .description('The JSON Schema of job.yaml, for editors that complete and check while one types.')
    .action((options: { plan?: boolean }) =>
      screen.out(JSON.stringify(options.plan ? planJsonSchema() : jobJsonSchema(), null, 2)),
    )
}
