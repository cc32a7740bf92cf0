import { existsSync, renameSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { restOfLift } from '@dawnlift/formats/outputs'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import type { CommandContext } from './command-context.js'
import { planFolder } from './job-input.js'

export function addResume(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('resume')
    .argument('<job>', 'a job folder')
    .requiredOption('--lift <id>', 'the lift that stopped, such as B3')
    .requiredOption('--layer <number>', 'the layer to go on with')
    .option('--pass <number>', 'the pass of that layer to go on with, from 1', '1')
    .option('--out <file>', 'write it there instead of to standard output; an existing file is left alone')
    .description('Machine file of what is left of a lift after a stop.')
    .action(async (job: string, options: { lift: string; layer: string; pass: string; out?: string }) => {
      const refuse = (at: string, say: string) => {
        showProblems(screen, [{ code: 'cli/resume', at, say }], false)
        finish(2)
      }
      const planned = await planFolder(job, screen)
      if (!planned.ok) {
        showProblems(screen, planned.problems, false)
        return finish(2)
      }
      const layer = Number(options.layer)
      const pass = Number(options.pass)
      const rest = restOfLift(planned.value.plan, { lift: options.lift, layer, pass })
      if (!rest.ok) {
        const [wrong] = rest.problems
        return refuse(`--${wrong?.at}`, wrong?.say ?? '')
      }
      const text = rest.value
      if (!options.out) return screen.out(text.trimEnd())
      const target = resolve(screen.folder, options.out)
      if (existsSync(target))
        return refuse('--out', `${options.out} exists already; choose another name. Nothing was written.`)
      writeFileSync(`${target}.part`, text, { flush: true })
      renameSync(`${target}.part`, target)
      screen.err(
        `Wrote ${options.out}: lift ${options.lift} from layer ${layer}, pass ${pass}. Check the joint before going on; treat it if the layer has lain bare too long.`,
      )
    })
}
