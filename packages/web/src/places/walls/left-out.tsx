import { Button, Group } from '@mantine/core'
import { words } from '../../words/index.js'

/** What the job leaves out of its drawing, each to be brought back. */
export function LeftOut({
  ids,
  bringBack,
}: {
  readonly ids: readonly string[]
  readonly bringBack: (id: string) => void
}) {
  if (ids.length === 0) return null
  return (
    <details className="left-out">
      <summary>{words.walls.leftOut(ids.length)}</summary>
      <Group gap="sm" mt="xs">
        {ids.map(id => (
          <Button key={id} variant="default" onClick={() => bringBack(id)}>
            {words.walls.bringBack(id)}
          </Button>
        ))}
      </Group>
    </details>
  )
}
