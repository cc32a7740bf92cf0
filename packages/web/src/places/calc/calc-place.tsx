import { calculateFormula, type Formula } from '@dawnlift/core/formula'
import { allFormulas } from '@dawnlift/core/registry'
import { Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import { Caution } from '../../parts/index.js'

/** The formula book: any formula of the product, worked out as one types, with unit, range and source. */
export function CalcPlace() {
  const [name, setName] = useState(allFormulas[0]!.name)
  const formula = allFormulas.find(each => each.name === name) ?? allFormulas[0]!
  return (
    <div className="inner">
      <Select
        label="Formula"
        searchable
        allowDeselect={false}
        data={allFormulas.map(each => ({ value: each.name, label: each.says }))}
        value={name}
        onChange={value => value && setName(value)}
        maw={760}
        mb="md"
      />
      <Worked key={formula.name} formula={formula} />
    </div>
  )
}

function Worked({ formula }: { readonly formula: Formula }) {
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>(
    Object.fromEntries(formula.inputs.map(input => [input.name, `${input.example} ${input.unit}`.trim()])),
  )
  const answer = calculateFormula(formula, typed)
  const problemOf = (name: string) =>
    answer.ok ? undefined : answer.problems.find(problem => problem.at === name)?.say
  return (
    <section className="sheet" style={{ maxWidth: 760 }}>
      <p className="figure" role="status">
        {answer.ok ? `${Number(answer.value.value.toPrecision(5))} ${answer.value.unit}` : '—'}
      </p>
      <p>{formula.output.name}</p>
      {formula.inputs.map(input => (
        <TextInput
          key={input.name}
          label={`${input.name} — ${input.meaning}`}
          description={`${input.unit || 'no unit'}, from ${input.least ?? '…'} to ${input.most ?? '…'}`}
          value={typed[input.name] ?? ''}
          error={problemOf(input.name)}
          onChange={event => setTyped({ ...typed, [input.name]: event.currentTarget.value })}
          mb="sm"
        />
      ))}
      {answer.ok && answer.value.warnings.map(warning => <Caution key={warning}>{warning}</Caution>)}
      {formula.caution && <Caution>{formula.caution}</Caution>}
      <p className="soft">Source: {formula.source}</p>
    </section>
  )
}
