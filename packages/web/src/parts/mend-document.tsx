import { Button, Group, Textarea } from '@mantine/core'
import { useEffect, useRef, useState } from 'react'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'

/** The job’s own text, opened at a line: whatever keeps it from being planned can be mended here. */
export function MendDocument({ line, close }: { readonly line: number; readonly close: () => void }) {
  const document = useApp(state => state.files?.document) ?? ''
  const [text, setText] = useState(document)
  const area = useRef<HTMLTextAreaElement>(null)
  // biome-ignore lint/correctness/useExhaustiveDependencies: the line is gone to when it is asked for, not at every key
  useEffect(() => {
    const found = area.current
    if (!found) return
    const [from, to] = rangeOfLine(text, line)
    found.focus()
    found.setSelectionRange(from, to)
    const height = found.scrollHeight / Math.max(1, text.split('\n').length)
    found.scrollTop = Math.max(0, (line - 4) * height)
  }, [line])
  return (
    <div className="mend">
      <Textarea
        ref={area}
        label={words.mend.label(line)}
        value={text}
        rows={16}
        spellCheck={false}
        onChange={event => setText(event.currentTarget.value)}
      />
      <Group gap="sm" mt="xs">
        <Button
          disabled={text === document}
          onClick={() => {
            useApp.getState().edit(text)
            close()
          }}
        >
          {words.mend.take}
        </Button>
        <Button variant="default" onClick={close}>
          {words.mend.leave}
        </Button>
      </Group>
    </div>
  )
}

/** Where a line, counted from 1, begins and ends in a text. */
export function rangeOfLine(text: string, line: number): readonly [number, number] {
  const lines = text.split('\n')
  const before = lines.slice(0, Math.max(0, line - 1)).reduce((sum, each) => sum + each.length + 1, 0)
  return [Math.min(before, text.length), Math.min(before + (lines[line - 1]?.length ?? 0), text.length)]
}
