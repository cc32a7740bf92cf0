import { basename, resolve } from 'node:path'
import { sayQuantity } from '@dawnlift/core/limit'
import { machineProfile } from '@dawnlift/core/machine'
import { defaultMix } from '@dawnlift/core/mix'
import { assert, failure, type Result, success } from '@dawnlift/core/result'
import { applyTrials, nextTrials } from '@dawnlift/core/trial'
import { fitTrials, readTrials } from '@dawnlift/formats/mix-tests'
import { trialsReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import type { Screen } from '../screen/terminal.js'
import type { CommandContext } from './command-context.js'
import { readJob } from './job-input.js'
import { readTextFile } from './text-file.js'
import { printDefaults, writeTrials } from './trial-output.js'
import { trialsInWords } from './trial-words.js'
import type { TriedWith } from './tried-with.js'

export function addTrials(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('trials')
    .argument('<sheet>', 'trials of machine and pump, a CSV file with units in its headings')
    .option('--job <job>', 'take machine and mix density from this job')
    .option('--out <folder>', 'write the trial files to run next into this folder, new or empty')
    .option('--json', 'one JSON document on standard output')
    .description('Pump curve, bead model, lags and corners from trials, and which trials to run next.')
    .action(async (sheet: string, options: { job?: string; out?: string; json?: boolean }) => {
      const text = readTextFile(sheet, screen, 'a sheet of trials is some kilobytes')
      const trials = text.ok ? readTrials(text.value, basename(sheet)) : text
      const tried = await triedWith(options.job, screen)
      if (!trials.ok || !tried.ok) {
        const problems = [...(trials.ok ? [] : trials.problems), ...(tried.ok ? [] : tried.problems)]
        showProblems(screen, problems, options.json === true)
        return finish(2)
      }
      const fitted = fitTrials(trials.value, tried.value.density, tried.value.units)
      if (!fitted.ok) {
        showProblems(screen, fitted.problems, options.json === true)
        return finish(2)
      }
      // What to try next is set by what was found so far.
      const machine = applyTrials(tried.value.machine, fitted.value)
      const next = nextTrials(machine, trials.value)
      if (options.out !== undefined) {
        const folder = resolve(screen.folder, options.out)
        const inTheWay = writeTrials(folder, options.out, { ...tried.value, machine }, next)
        if (inTheWay) {
          showProblems(screen, [inTheWay], options.json === true)
          return finish(2)
        }
      }
      if (!options.json) return screen.out(trialsInWords(tried.value, fitted.value, machine, next))
      const told = { from: tried.value.from, ...fitted.value, machine, next }
      screen.out(JSON.stringify(trialsReport(told), null, 2))
    })
}

async function triedWith(job: string | undefined, screen: Screen): Promise<Result<TriedWith>> {
  if (job === undefined) {
    const machine = machineProfile('gantry-12')
    assert(machine, 'the usual profile is there')
    const { density } = defaultMix
    return success({
      machine,
      density,
      mix: defaultMix,
      print: printDefaults,
      units: 'metric',
      from: `profile gantry-12 and ${density} kg/m³ (assumed; name your job with --job)`,
    })
  }
  const opened = await readJob(job, screen)
  if (!opened.ok) return failure(opened.problems)
  const { machine, mix, name, print, units } = opened.value.job
  return success({
    machine,
    mix,
    print,
    units,
    density: mix.density,
    from: `${machine.name} and ${sayQuantity(mix.density, 'kg/m³', units)} of ${name}`,
  })
}
