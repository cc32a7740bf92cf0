import { inspectReport } from '@dawnlift/formats/reports'
import { inspectRun, type RunSummary, readMachineFile } from '@dawnlift/formats/rs274'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import type { CommandContext } from './command-context.js'
import { readJob } from './job-input.js'
import { readTextFile } from './text-file.js'

export function addInspect(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('inspect')
    .argument('<file>', 'a machine file (RS-274 / ISO 6983)')
    .option('--job <folder>', 'take the machine of this job: planned times, and what corners get too much')
    .option('--json', 'one JSON document on standard output')
    .description('Reads a machine file back: extents, length, volume, time per layer.')
    .action(async (file: string, options: { job?: string; json?: boolean }) => {
      const job = options.job === undefined ? undefined : await readJob(options.job, screen)
      if (job && !job.ok) {
        showProblems(screen, job.problems, options.json === true)
        return finish(2)
      }
      const text = readTextFile(file, screen, "a lift's file is a few MB")
      const run = text.ok ? readMachineFile(text.value) : text
      if (!run.ok) {
        showProblems(screen, run.problems, options.json === true)
        return finish(2)
      }
      const summary = inspectRun(run.value, job ? { machine: job.value.job.machine } : {})
      if (options.json) return screen.out(JSON.stringify(inspectReport(summary), null, 2))
      screen.out(inWords(summary))
    })
}

function inWords({
  extents,
  layers,
  length,
  volume,
  feedTime,
  starts,
  stops,
  headingRateMost,
  plannedTime,
  overfill,
}: RunSummary): string {
  const box = extents
    ? `x ${range(extents.x)}, y ${range(extents.y)}, z ${range(extents.z)}`
    : 'nothing is laid'
  const litres = volume === undefined ? '' : `, ${(volume * 1000).toFixed(1)} L`
  return [
    box,
    `${length.toFixed(3)} m of bead${litres}, ${(feedTime / 60).toFixed(1)} min under feed, ${starts} starts, ${stops.length} stops, heading at most ${((headingRateMost * 180) / Math.PI).toFixed(0)} °/s`,
    ...(plannedTime === undefined
      ? []
      : [`${(plannedTime / 60).toFixed(1)} min as planned, braking and travels in it`]),
    ...(overfill ? [overfillWords(overfill)] : []),
    textTable(
      ['layer top', 'bead m', 'min under feed', 'starts'],
      layers.map(layer => [
        `${(layer.z * 1000).toFixed(1)} mm`,
        layer.length.toFixed(3),
        (layer.feedTime / 60).toFixed(2),
        String(layer.starts),
      ]),
      [0, 1, 2, 3],
    ),
  ].join('\n')
}

const overfillWords = ({ volume, share, worst }: NonNullable<RunSummary['overfill']>): string =>
  `${(volume * 1000).toFixed(1)} L too much (${(share * 100).toFixed(1)} %): the pump keeps its setting while the nozzle brakes; most, ${(worst.volume * 1e6).toFixed(0)} mL, at line ${worst.line} (${(worst.x * 1000).toFixed(0)}, ${(worst.y * 1000).toFixed(0)} mm)`

const range = ([least, most]: readonly [number, number]): string =>
  `${(least * 1000).toFixed(1)} to ${(most * 1000).toFixed(1)} mm`
