import type { MixFit, MixTest } from '@dawnlift/core/mix'
import { formatQuantity } from '@dawnlift/core/quantity'
import { readMixTests } from '@dawnlift/formats/mix-tests'
import { Button, Group, Textarea } from '@mantine/core'
import { useMemo, useState } from 'react'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { useJobText } from '../fields/index.js'
import { Scroller } from '../scroller.js'
import { LeftOutTests } from './outliers.js'
import { testsFileOf, withTests } from './tests-edit.js'

/** The site's own tests: as a table, and as text that a spreadsheet can be pasted into. */
export function TestsSheet({ fit }: { readonly fit: MixFit | undefined }) {
  const { document, raw } = useJobText()
  const file = testsFileOf(raw)
  const content = useApp(state => (file ? state.files?.beside[file] : undefined))
  const standing = useMemo(() => (content ? new TextDecoder().decode(content) : ''), [content])
  const [typed, setTyped] = useState<string>()
  const [problems, setProblems] = useState<readonly string[]>([])
  const read = useMemo(() => (standing ? readMixTests(standing, file) : undefined), [standing, file])
  const keep = () => {
    const text = typed ?? ''
    const tests = readMixTests(text, file ?? 'mix-tests.csv')
    if (!tests.ok) return setProblems(tests.problems.map(problem => `${problem.at}: ${problem.say}`))
    const edited = withTests(document, raw)
    if (!edited.ok) return setProblems(edited.problems.map(problem => problem.say))
    useApp.getState().edit(edited.value.document, { [edited.value.file]: new TextEncoder().encode(text) })
    setTyped(undefined)
    setProblems([])
  }
  return (
    <section className="sheet" aria-labelledby="tests-title">
      <Group justify="space-between">
        <h2 id="tests-title">
          {words.tests.title}
          {file ? `, ${file}` : ''}
        </h2>
        {typed === undefined && (
          <Button variant="default" onClick={() => setTyped(standing || words.testsHead)}>
            {standing ? 'Change or paste' : 'Paste tests'}
          </Button>
        )}
      </Group>
      <LeftOutTests />
      {typed !== undefined && (
        <>
          <Textarea
            label={words.testsLabel}
            value={typed}
            onChange={event => setTyped(event.currentTarget.value)}
            autosize
            minRows={6}
            maxRows={18}
            styles={{ input: { fontFamily: 'monospace' } }}
          />
          <Group gap="sm" mt="sm">
            <Button onClick={keep}>{words.tests.fit}</Button>
            <Button
              variant="default"
              onClick={() => {
                setTyped(undefined)
                setProblems([])
              }}
            >
              {words.cancel}
            </Button>
          </Group>
        </>
      )}
      {problems.length > 0 && (
        <ul className="limit" role="alert">
          {problems.slice(0, 8).map(problem => (
            <li key={problem}>{problem}</li>
          ))}
        </ul>
      )}
      {typed === undefined && read?.ok && <TestTable tests={read.value} outliers={fit?.outliers ?? []} />}
      {typed === undefined && !standing && <p className="soft">{words.noTests}</p>}
    </section>
  )
}

function TestTable({
  tests,
  outliers,
}: {
  readonly tests: readonly MixTest[]
  readonly outliers: readonly string[]
}) {
  const units = useApp(state => state.units)
  return (
    <Scroller label={words.tests.list} tall>
      <table className="plain wide ruled">
        <thead>
          <tr>
            {words.tests.heads.map(head => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {tests.map(test => (
            <tr key={test.at} className={outliers.includes(test.at) ? 'limit' : ''}>
              <th scope="row">{test.at.split(':').at(-1)}</th>
              <td>{test.kind}</td>
              <td>{ageText(test.age)}</td>
              <td>{formatQuantity(test.temperature, 'temperature', units)}</td>
              <td>
                {measured(test, units)}
                {outliers.includes(test.at) ? words.tests.farOff : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </Scroller>
  )
}

const ageText = (seconds: number): string =>
  seconds < 7200
    ? `${Math.round(seconds / 60)} min`
    : seconds < 172_800
      ? `${Number((seconds / 3600).toFixed(1))} h`
      : `${Number((seconds / 86_400).toFixed(1))} d`

function measured(test: MixTest, units: 'metric' | 'imperial'): string {
  const pressure = (value: number | undefined) =>
    value === undefined ? [] : [formatQuantity(value, 'pressure', units)]
  switch (test.kind) {
    case 'vane':
    case 'penetrometer':
      return pressure(test.stress).join('')
    case 'compression':
      return [
        ...pressure(test.strength).map(text => `strength ${text}`),
        ...pressure(test.stiffness).map(text => `stiffness ${text}`),
      ].join(', ')
    case 'spread':
      return `${formatQuantity(test.diameter, 'length', units)} from ${formatQuantity(test.volume, 'volume', units)}`
    case 'set':
      return pressure(test.resistance).join('')
    case 'density':
      return formatQuantity(test.density, 'density', units)
    case 'cylinder':
    case 'cube':
      return pressure(test.strength).join('')
  }
}
