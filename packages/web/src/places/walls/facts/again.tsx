import { parseQuantity } from '@dawnlift/core/quantity'
import { Button, Group, NumberInput, TextInput } from '@mantine/core'
import { useState } from 'react'
import { words } from '../../../words/index.js'
import { lengthText, type Units } from '../edits/length-text.js'
import { type Found, widthOf } from '../thing.js'

const most = 50

/** The same thing again in a row: how often, and how far from one to the next. */
export function Again({
  units,
  found,
  make,
}: {
  readonly units: Units
  readonly found: Found
  readonly make: (times: number, every: number) => Promise<void>
}) {
  const [times, setTimes] = useState<number | string>(2)
  const usual =
    found.kind === 'wall' ? found.part.thickness + 3 : Math.max(0.6, Math.ceil(widthOf(found) * 2 * 10) / 10)
  const [every, setEvery] = useState(() => lengthText(usual, units))
  const read = parseQuantity(every, 'length')
  const count = Math.min(most, Math.round(Number(times)))
  const { array } = words.walls
  return (
    <details className="again">
      <summary>{array.title}</summary>
      <Group gap="md" align="flex-end">
        <NumberInput
          className="fact"
          label={array.times}
          value={times}
          min={1}
          max={most}
          allowDecimal={false}
          hideControls
          onChange={setTimes}
        />
        <TextInput
          className="fact"
          label={array.every}
          value={every}
          error={read.ok ? undefined : read.problems.map(each => each.say).join(' ')}
          onChange={event => setEvery(event.currentTarget.value)}
        />
        <Button
          variant="default"
          disabled={!read.ok || !(count >= 1) || read.value === 0}
          onClick={() => {
            if (read.ok) void make(count, read.value)
          }}
        >
          {array.make}
        </Button>
      </Group>
    </details>
  )
}
