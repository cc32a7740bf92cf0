import { parseQuantity } from '@dawnlift/core/quantity'
import type { Problem } from '@dawnlift/core/result'
import { TextInput } from '@mantine/core'
import { useEffect, useState } from 'react'

/**
 * A length typed as people write it, in any unit. Committed on Enter or on leaving the field; Escape brings the old
 * one back. What is wrong, with the value or with the job it would make, stands under the field.
 */
export function LengthField({
  label,
  value,
  hint,
  commit,
  onEnterOnly = false,
}: {
  readonly label: string
  /** As it stands now, in the job's units. */
  readonly value: string
  readonly hint?: string
  /** Takes the text as typed, which has been read; answers with what stands against it. */
  readonly commit: (text: string, metres: number) => Promise<readonly Problem[]>
  /** For fields that do something each time: leaving them does nothing. */
  readonly onEnterOnly?: boolean
}) {
  const [text, setText] = useState(value)
  const [wrong, setWrong] = useState<string>()
  useEffect(() => {
    setText(value)
    setWrong(undefined)
  }, [value])
  const send = async () => {
    if (text.trim() === value && !onEnterOnly) return setWrong(undefined)
    const read = parseQuantity(text, 'length')
    const problems = read.ok ? await commit(text.trim(), read.value) : read.problems
    setWrong(problems.length > 0 ? problems.map(each => each.say).join(' ') : undefined)
  }
  return (
    <TextInput
      label={label}
      className="fact"
      value={text}
      description={hint}
      error={wrong}
      inputWrapperOrder={['label', 'input', 'description', 'error']}
      autoComplete="off"
      spellCheck={false}
      onChange={event => setText(event.currentTarget.value)}
      onBlur={() => {
        if (!onEnterOnly) void send()
      }}
      onKeyDown={event => {
        if (event.key === 'Enter') void send()
        if (event.key === 'Escape') {
          setText(value)
          setWrong(undefined)
        }
      }}
    />
  )
}
