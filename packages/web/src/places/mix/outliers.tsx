import { Button, Group } from '@mantine/core'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { useJobText } from '../fields/index.js'
import { lineOfTest, testsFileOf, testsLeftOut, withoutTest, withTestAgain } from './tests-edit.js'

/** The file of tests, and how to write another text into it: one step of undo. */
function useTests() {
  const { raw, document } = useJobText()
  const file = testsFileOf(raw)
  const content = useApp(state => (file ? state.files?.beside[file] : undefined))
  if (!file || !content) return undefined
  const text = new TextDecoder().decode(content)
  const write = (next: string) => useApp.getState().edit(document, { [file]: new TextEncoder().encode(next) })
  return { text, write }
}

/** Tests far off their curve. They count until the lead leaves them out. */
export function Outliers({ places }: { readonly places: readonly string[] }) {
  const tests = useTests()
  if (places.length === 0) return null
  return (
    <div className="outliers">
      <p className="limit">{words.mix.farOff}</p>
      <Group gap="sm">
        {places.map(at => (
          <Button
            key={at}
            variant="default"
            disabled={!tests}
            onClick={() => tests?.write(withoutTest(tests.text, lineOfTest(at)))}
          >
            {words.mix.leaveOut(at)}
          </Button>
        ))}
      </Group>
    </div>
  )
}

/** What the lead has left out, to be counted again. */
export function LeftOutTests() {
  const tests = useTests()
  const left = tests ? testsLeftOut(tests.text) : []
  if (!tests || left.length === 0) return null
  return (
    <div className="outliers">
      <p className="soft">{words.mix.leftOut(left.length)}</p>
      <Group gap="sm">
        {left.map(({ line, test }) => (
          <Button key={line} variant="default" onClick={() => tests.write(withTestAgain(tests.text, line))}>
            {words.mix.countAgain(test)}
          </Button>
        ))}
      </Group>
    </div>
  )
}
