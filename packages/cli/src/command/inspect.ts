import { inspectReport } from '@dawnlift/formats/reports'
import { inspectRun, type RunSummary, readMachineFile } from '@dawnlift/formats/rs274'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import type { CommandContext } from './command-context.js'
import { readTextFile } from './text-file.js'

export function addInspect(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('inspect')
    .argument('<file>', 'a machine file (RS-274 / ISO 6983)')
    .option('--json', 'one JSON document on standard output')
    .description('Reads a machine file back: extents, length, volume, time per layer.')
    .action((file: string, options: { json?: boolean }) => {
      const text = readTextFile(file, screen, "a lift's file is a few MB")
      const run = text.ok ? readMachineFile(text.value) : text
      if (!run.ok) {
        showProblems(screen, run.problems, options.json === true)
        return finish(2)
      }
      const summary = inspectRun(run.value)
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
}: RunSummary): string {
  const box = extents
    ? `x ${range(extents.x)}, y ${range(extents.y)}, z ${range(extents.z)}`
    : 'nothing is laid'
  const litres = volume === undefined ? '' : `, ${(volume * 1000).toFixed(1)} L`
  return [
    box,
    `${length.toFixed(3)} m of bead${litres}, ${(feedTime / 60).toFixed(1)} min under feed, ${starts} starts, ${stops.length} stops, heading at most ${((headingRateMost * 180) / Math.PI).toFixed(0)} °/s`,
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

const range = ([least, most]: readonly [number, number]): string =>
  `${(least * 1000).toFixed(1)} to ${(most * 1000).toFixed(1)} mm`
