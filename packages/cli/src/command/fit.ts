import { basename } from 'node:path'
import { fitMix, type MixFit } from '@dawnlift/core/mix'
import { uniformFrom } from '@dawnlift/core/numeric'
import { failure } from '@dawnlift/core/result'
import { readMixTests } from '@dawnlift/formats/mix-tests'
import { fitReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import type { CommandContext } from './command-context.js'
import { readTextFile } from './text-file.js'

/** Fixed: the same tests give the same band, today and in the permit office. */
const seed = 1

export function addFit(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('fit')
    .argument('<tests>', "the site's tests of the mix, a CSV file with units in its headings")
    .option('--probability <share>', 'chance that a batch lies under the planned band, such as 0.05', '0.05')
    .option('--json', 'one JSON document on standard output')
    .description(
      'Mix parameters with their doubt, from tests of yield stress, spread, stiffness, set and strength.',
    )
    .action((tests: string, options: { probability: string; json?: boolean }) => {
      const probability = Number(options.probability)
      const text = readTextFile(tests, screen, 'a sheet of tests is some kilobytes')
      const problems = [
        ...(text.ok ? [] : text.problems),
        ...(probability > 0 && probability < 0.5
          ? []
          : [
              {
                code: 'cli/probability',
                at: '--probability',
                say: `“${options.probability}” is no chance between 0 and 0.5; write one such as 0.05.`,
              },
            ]),
      ]
      const read =
        text.ok && problems.length === 0 ? readMixTests(text.value, basename(tests)) : failure(problems)
      const fitted = read.ok
        ? fitMix(read.value, {
            name: basename(tests, '.csv'),
            provenance: basename(tests),
            random: uniformFrom(seed),
            probability,
          })
        : read
      if (!fitted.ok) {
        showProblems(screen, fitted.problems, options.json === true)
        return finish(2)
      }
      screen.out(options.json ? JSON.stringify(fitReport(fitted.value), null, 2) : fitInWords(fitted.value))
    })
}

function fitInWords(fit: MixFit): string {
  const { mix } = fit
  const growth = (value: object) =>
    Object.entries(value)
      .map(
        ([name, number]) => `${name} ${typeof number === 'number' ? Number(number.toPrecision(4)) : number}`,
      )
      .join(', ')
  const rows = [
    ['yield stress [Pa, s]', growth(mix.fitted.yield), growth(mix.lower.yield)],
    ['stiffness [Pa, s]', growth(mix.fitted.stiffness), growth(mix.lower.stiffness)],
    ['strength [Pa, s]', growth(mix.strength), ''],
    ['density [kg/m³]', String(Math.round(mix.density)), ''],
  ]
  const list = (head: string, lines: readonly string[]) =>
    lines.length > 0 ? [`${head}:`, ...lines.map(line => `  ${line}`)] : []
  return [
    `${mix.name}: planned with the lower band, under which one batch in ${Math.round(1 / mix.lowerProbability)} is expected to lie`,
    textTable(['what', 'best estimate', 'lower band'], rows),
    ...list('assumed', fit.assumed),
    ...list('look again', fit.cautions),
    ...list('far off their curve', fit.outliers),
  ].join('\n')
}
