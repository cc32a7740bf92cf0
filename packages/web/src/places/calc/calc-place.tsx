import { calculateFormula, type Formula } from '@dawnlift/core/formula'
import { allFormulas } from '@dawnlift/core/registry'
import { TextInput } from '@mantine/core'
import { useState } from 'react'
import { Caution } from '../../parts/index.js'
import { words } from '../../words/index.js'
import { Scroller } from '../scroller.js'
import './calc.css'

const { book } = words

/** The formula book: any formula of the product, worked out as one types, with unit, range and source. */
export function CalcPlace() {
  const [name, setName] = useState(allFormulas[0]!.name)
  const [wanted, setWanted] = useState('')
  const formula = allFormulas.find(each => each.name === name) ?? allFormulas[0]!
  const found = allFormulas.filter(each => speaksOf(each, wanted))
  return (
    <div className="inner book">
      <section className="sheet" aria-label={book.formulas}>
        <TextInput
          label={book.find(allFormulas.length)}
          placeholder={book.example}
          value={wanted}
          onChange={event => setWanted(event.currentTarget.value)}
          mb="sm"
        />
        <Scroller label={book.found} tall>
          <ul className="findings">
            {found.map(each => (
              <li key={each.name}>
                <button
                  type="button"
                  className="finding"
                  aria-pressed={each.name === name}
                  onClick={() => setName(each.name)}
                >
                  {each.says}
                </button>
              </li>
            ))}
          </ul>
          {found.length === 0 && <p className="soft">{words.noFormula}</p>}
        </Scroller>
      </section>
      <Worked key={formula.name} formula={formula} />
    </div>
  )
}

function speaksOf({ name, says, source, inputs }: Formula, wanted: string): boolean {
  const text = [name, says, source, ...inputs.map(input => input.meaning)].join(' ').toLowerCase()
  return wanted
    .toLowerCase()
    .split(/\s+/)
    .every(word => text.includes(word))
}

function Worked({ formula }: { readonly formula: Formula }) {
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>(
    Object.fromEntries(formula.inputs.map(input => [input.name, `${input.example} ${input.unit}`.trim()])),
  )
  const answer = calculateFormula(formula, typed)
  const problemOf = (name: string) =>
    answer.ok ? undefined : answer.problems.find(problem => problem.at === name)?.say
  return (
    <section className="sheet" aria-label={formula.says}>
      <h2>{formula.says}</h2>
      <p className="figure" role="status">
        {answer.ok ? `${Number(answer.value.value.toPrecision(5))} ${answer.value.unit}` : '—'}
      </p>
      <p>{formula.output.name}</p>
      {formula.inputs.map(input => (
        <TextInput
          key={input.name}
          label={book.input(input.name, input.meaning)}
          description={book.range(input.unit, String(input.least ?? '…'), String(input.most ?? '…'))}
          value={typed[input.name] ?? ''}
          error={problemOf(input.name)}
          onChange={event => setTyped({ ...typed, [input.name]: event.currentTarget.value })}
          mb="sm"
        />
      ))}
      {answer.ok && answer.value.warnings.map(warning => <Caution key={warning}>{warning}</Caution>)}
      {formula.caution && <Caution>{formula.caution}</Caution>}
      <p className="soft">{words.source(formula.source)}</p>
    </section>
  )
}
