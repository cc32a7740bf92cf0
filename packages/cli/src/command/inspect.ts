import { sayQuantity, type Units } from '@dawnlift/core/limit'
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
      screen.out(inWords(summary, job?.value.job.units ?? 'metric'))
    })
}

function inWords(summary: RunSummary, units: Units): string {
  const { extents, layers, length, volume, feedTime } = summary
  const { starts, stops, headingRateMost, plannedTime, overfill } = summary
  const range = ([least, most]: readonly [number, number]) =>
    `${small(least, units)} to ${small(most, units)}`
  const run = runIn[units]
  const box = extents
    ? `x ${range(extents.x)}, y ${range(extents.y)}, z ${range(extents.z)}`
    : 'nothing is laid'
  const litres = volume === undefined ? '' : `, ${poured(volume, units)}`
  return [
    box,
    `${(length * run.per).toFixed(3)} ${run.unit} of bead${litres}, ${(feedTime / 60).toFixed(1)} min under feed, ${starts} starts, ${stops.length} stops, heading at most ${((headingRateMost * 180) / Math.PI).toFixed(0)} °/s`,
    ...(plannedTime === undefined
      ? []
      : [`${(plannedTime / 60).toFixed(1)} min as planned, braking and travels in it`]),
    ...(overfill ? [overfillWords(overfill, units)] : []),
    textTable(
      ['layer top', `bead ${run.unit}`, 'min under feed', 'starts'],
      layers.map(layer => [
        small(layer.z, units),
        (layer.length * run.per).toFixed(3),
        (layer.feedTime / 60).toFixed(2),
        String(layer.starts),
      ]),
      [0, 1, 2, 3],
    ),
  ].join('\n')
}

const overfillWords = ({ volume, share, worst }: NonNullable<RunSummary['overfill']>, units: Units): string =>
  `${poured(volume, units)} too much (${(share * 100).toFixed(1)} %): the pump keeps its setting while the nozzle brakes; most, ${units === 'metric' ? `${(worst.volume * 1e6).toFixed(0)} mL` : `${(worst.volume / 2.54e-2 ** 3).toFixed(1)} in³`}, at line ${worst.line} ${placeOf(worst.x, worst.y, units)}`

/** What a run of bead is counted in, and how many of it make a metre. */
const runIn = { metric: { unit: 'm', per: 1 }, imperial: { unit: 'ft', per: 1 / 0.3048 } } as const
const small = (length: number, units: Units): string =>
  units === 'metric' ? `${(length * 1000).toFixed(1)} mm` : sayQuantity(length * 1000, 'mm', units)
const placeOf = (x: number, y: number, units: Units): string =>
  units === 'metric'
    ? `(${(x * 1000).toFixed(0)}, ${(y * 1000).toFixed(0)} mm)`
    : `(${small(x, units)}, ${small(y, units)})`
const poured = (volume: number, units: Units): string =>
  units === 'metric' ? `${(volume * 1000).toFixed(1)} L` : `${(volume * 264.1721).toFixed(1)} gal`
