import { Button, NativeSelect, TextInput } from '@mantine/core'
import { type KeyboardEvent, useId, useState } from 'react'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import {
  type Field,
  fieldText,
  plannedText,
  resetField,
  type Standing,
  standingOf,
  typedInto,
} from './field.js'
import { useJobText } from './job-text.js'
import './fields.css'

/** One typed value of the job: what stands, what may be written, and the way back to the default. */
export function JobField({ field, bare = false }: { readonly field: Field; readonly bare?: boolean }) {
  const { document, raw } = useJobText()
  const units = useApp(state => state.units)
  const standing = standingOf(raw, field.path)
  const job = useApp(state => state.job)
  const shown =
    standing.value === undefined && job
      ? plannedText(field, job, units)
      : fieldText(field, standing.value, units)
  const [typed, setTyped] = useState<string>()
  const [problem, setProblem] = useState<string>()
  const id = useId()
  const write = (text: string) => {
    if (text === shown) return forget()
    const edited = typedInto(document, field, text)
    if (!edited.ok) return setProblem(edited.problems[0]?.say)
    useApp.getState().edit(edited.value)
    forget()
  }
  const forget = () => {
    setTyped(undefined)
    setProblem(undefined)
  }
  const reset = () => {
    const edited = standing.usual ? resetField(document, field.path) : typedInto(document, field, '')
    if (!edited.ok) return setProblem(edited.problems[0]?.say)
    useApp.getState().edit(edited.value)
    forget()
  }
  const key = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') write(event.currentTarget.value)
    if (event.key === 'Escape') forget()
  }
  const back = wayBack(field, standing)
  const name = bare ? { 'aria-label': field.label } : { id, 'aria-labelledby': `${id}-name` }
  return (
    <div className="jobfield">
      {!bare && (
        <label id={`${id}-name`} htmlFor={id}>
          {field.label}
        </label>
      )}
      {field.kind.kind === 'yes-no' || field.kind.kind === 'choice' ? (
        <NativeSelect
          {...name}
          data={field.kind.kind === 'choice' ? [...field.kind.options] : ['yes', 'no']}
          value={shown}
          error={problem}
          onChange={event => write(event.currentTarget.value)}
        />
      ) : (
        <TextInput
          {...name}
          value={typed ?? shown}
          error={problem}
          onChange={event => setTyped(event.currentTarget.value)}
          onBlur={event => typed !== undefined && write(event.currentTarget.value)}
          onKeyDown={key}
        />
      )}
      <span className="standing">
        {!standing.given ? (
          <span className="soft">
            {standing.usual ? words.field.assumed : (field.without ?? words.field.fromProfile)}
          </span>
        ) : back ? (
          <Button
            variant="subtle"
            size="compact-sm"
            onClick={reset}
            aria-label={`${field.label}: ${back}`}
            title={back}
          >
            {words.field.reset}
          </Button>
        ) : null}
      </span>
    </div>
  )
}

/** What the job’s own value can be given up for, in words; nothing where the job must say something. */
function wayBack(field: Field, { usual }: Standing): string | undefined {
  if (usual) return words.field.usual(usual.text)
  if (field.planned) return words.field.asProfile
  return field.without === undefined ? undefined : words.field.without(field.without)
}
