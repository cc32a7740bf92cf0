import type { Problem } from '@dawnlift/core/result'
import { NativeSelect } from '@mantine/core'
import { useEffect, useState } from 'react'

/** One of a few words; what stands against the choice is said under it, and the old one stays. */
export function ChoiceField<T extends string>({
  label,
  value,
  options,
  commit,
}: {
  readonly label: string
  readonly value: T
  readonly options: readonly { readonly value: T; readonly label: string }[]
  readonly commit: (value: T) => Promise<readonly Problem[]>
}) {
  const [wrong, setWrong] = useState<string>()
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new value makes the old complaint void
  useEffect(() => setWrong(undefined), [value])
  const choose = async (chosen: T) => {
    const problems = await commit(chosen)
    setWrong(problems.length > 0 ? problems.map(each => each.say).join(' ') : undefined)
  }
  return (
    <NativeSelect
      label={label}
      className="fact"
      value={value}
      error={wrong}
      data={[...options]}
      onChange={event => void choose(event.currentTarget.value as T)}
    />
  )
}
