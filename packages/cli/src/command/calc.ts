import { calculateFormula, type Formula, findFormula } from '@dawnlift/core/formula'
import { allFormulas } from '@dawnlift/core/registry'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import type { CommandContext } from './command-context.js'

export function addCalc(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('calc')
    .argument('[name]', 'a formula; without one, all of them are listed')
    .argument('[inputs...]', 'each as name="value unit", such as air="35 °C"')
    .option('--json', 'one JSON document on standard output')
    .description('Any formula of the product, with unit, range and source.')
    .action((name: string | undefined, inputs: readonly string[], options: { json?: boolean }) => {
      if (name === undefined)
        return screen.out(options.json ? JSON.stringify(allFormulas.map(described), null, 2) : formulaList())
      const formula = findFormula(allFormulas, name)
      if (!formula.ok) {
        showProblems(screen, formula.problems, options.json === true)
        return finish(2)
      }
      if (inputs.length === 0)
        return screen.out(
          options.json ? JSON.stringify(described(formula.value), null, 2) : oneFormula(formula.value),
        )
      const assigned = Object.fromEntries(
        inputs.map(input => [input.split('=', 1)[0]!, input.slice(input.indexOf('=') + 1)]),
      )
      const answer = calculateFormula(formula.value, assigned)
      if (!answer.ok) {
        showProblems(screen, answer.problems, options.json === true)
        return finish(2)
      }
      const { output, value, unit, source, warnings, caution } = answer.value
      if (options.json) return screen.out(JSON.stringify(answer.value, null, 2))
      screen.out(`${output} = ${Number(value.toPrecision(6))} ${unit}   ${source}`)
      for (const warning of warnings) screen.out(`  outside its range: ${warning}`)
      if (caution) screen.out(`  caution: ${caution}`)
    })
}

const described = ({ calculate: _, ...formula }: Formula) => formula

const formulaList = (): string =>
  textTable(
    ['name', 'inputs', 'gives', 'source'],
    allFormulas.map(({ name, inputs, output, source }) => [
      name,
      inputs.map(input => `${input.name} [${input.unit || '–'}]`).join(', '),
      `${output.name} [${output.unit || '–'}]`,
      source,
    ]),
  )

function oneFormula(formula: Formula): string {
  const rows = formula.inputs.map(({ name, unit, meaning, least, most, example }) => [
    name,
    unit,
    `${least ?? '…'} to ${most ?? '…'}`,
    String(example),
    meaning,
  ])
  const call = formula.inputs
    .map(({ name, unit, example }) => `${name}="${example}${unit ? ` ${unit}` : ''}"`)
    .join(' ')
  return [
    `${formula.name}: ${formula.says}`,
    textTable(['input', 'unit', 'range', 'example', 'meaning'], rows),
    `gives ${formula.output.name} [${formula.output.unit || '–'}]   ${formula.source}`,
    ...(formula.caution ? [`caution: ${formula.caution}`] : []),
    `dawnlift calc ${formula.name} ${call}`,
  ].join('\n')
}
