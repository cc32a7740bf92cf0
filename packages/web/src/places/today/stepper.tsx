import { ActionIcon, Group } from '@mantine/core'
import type { ReactNode } from 'react'

/** One less and one more, large enough for a glove, with what is counted between them. */
export function Stepper({
  value,
  least,
  most,
  names: [less, more],
  change,
  children,
}: {
  readonly value: number
  readonly least: number
  readonly most: number
  readonly names: readonly [less: string, more: string]
  readonly change: (value: number) => void
  readonly children: ReactNode
}) {
  const step = (name: string, sign: string, by: 1 | -1, isEnd: boolean) => (
    <ActionIcon
      variant="default"
      size={56}
      aria-label={name}
      disabled={isEnd}
      onClick={() => change(value + by)}
    >
      {sign}
    </ActionIcon>
  )
  return (
    <Group gap="sm">
      {step(less, '−', -1, value <= least)}
      {children}
      {step(more, '+', 1, value >= most)}
    </Group>
  )
}
