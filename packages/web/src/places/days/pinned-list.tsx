import type { LiftPin } from '@dawnlift/core/job'
import type { Plan } from '@dawnlift/core/plan'
import { Button, Group } from '@mantine/core'
import { words } from '../../words/index.js'
import { dayText } from './day-text.js'
import { unpinEdits, writeEdits } from './pin-edits.js'

/** Lifts the lead has settled, each to be let go again. */
export function PinnedList({ plan }: { readonly plan: Plan }) {
  const pins = (plan.job.pins ?? []).filter((pin): pin is LiftPin => pin.kind === 'lift')
  if (pins.length === 0) return null
  const unpin = (pin: LiftPin) => void writeEdits(raw => unpinEdits(raw, pin))
  return (
    <Group gap="sm" mb="sm">
      <span className="soft">{words.moving.pinned}:</span>
      {pins.map(pin => (
        <span key={`${pin.section} ${pin.lift}`}>
          {pin.section}
          {pin.lift} {dayText(pin.date)}{' '}
          <Button variant="default" onClick={() => unpin(pin)}>
            {words.moving.unpin(`${pin.section}${pin.lift}`)}
          </Button>
        </span>
      ))}
    </Group>
  )
}
