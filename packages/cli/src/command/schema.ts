import { jobJsonSchema } from '@dawnlift/document/job'
import type { Command } from 'commander'
import type { CommandContext } from '../run-dawnlift.js'

export function addSchema(program: Command, { screen }: CommandContext): void {
  program
    .command('schema')
    .description('The JSON Schema of job.yaml, for editors that complete and check while one types.')
    .action(() => screen.out(JSON.stringify(jobJsonSchema(), null, 2)))
}
