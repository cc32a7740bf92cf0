import type { LiftPin } from '@dawnlift/core/job'
import type { Plan } from '@dawnlift/core/plan'
import { Button, Group } from '@mantine/core'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { editedJob } from '../fields/index.js'
import { dayText } from './day-text.js'
import { editsOf, unpinEdits } from './pin-edits.js'

/** Lifts the lead has settled, each to be let go again. */
export function PinnedList({ plan }: { readonly plan: Plan }) {
  const pins = (plan.job.pins ?? []).filter((pin): pin is LiftPin => pin.kind === 'lift')
  if (pins.length === 0) return null
  const unpin = (pin: LiftPin) => {
    const document = useApp.getState().files?.document ?? ''
    const edited = editedJob(
      document,
      editsOf(document, raw => unpinEdits(raw, pin)),
    )
    if (edited.ok) useApp.getState().edit(edited.value)
  }
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
