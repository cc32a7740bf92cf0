import type { SiteEvent } from '@dawnlift/core/log'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import { Button, Group, SegmentedControl } from '@mantine/core'
import { useState } from 'react'
import { words } from '../../words/index.js'
import { layersOf, likelySection, standingIn } from './likely-section.js'
import { Stepper } from './stepper.js'

/** Which layer is down: the next one of the section being printed, unless the crew says another. */
export function LayerDown({
  plan,
  at,
  write,
}: {
  readonly plan: Plan
  readonly at: Instant
  readonly write: (event: SiteEvent) => void
}) {
  const [picked, setPicked] = useState<string>()
  const section = picked ?? likelySection(plan, at)
  const standing = standingIn(plan, section)
  const all = layersOf(plan, section)
  // Counted on from what stands, so that it is right again as soon as a layer is written down.
  const [more, setMore] = useState({ on: standing, layers: 1 })
  const layers = more.on === standing ? more.layers : 1
  const layer = Math.min(all, standing + layers)
  const { log } = words
  return (
    <>
      <Group gap="sm" mt="sm">
        {plan.sections.length > 1 && (
          <SegmentedControl
            aria-label={log.section}
            value={section}
            onChange={setPicked}
            data={plan.sections.map(({ id }) => id)}
          />
        )}
        <Stepper
          value={layer}
          least={1}
          most={all}
          names={[log.less, log.more]}
          change={value => setMore({ on: standing, layers: value - standing })}
        >
          <Button disabled={layer <= standing} onClick={() => write({ kind: 'layer', at, section, layer })}>
            {log.layerDown(section, layer)}
          </Button>
        </Stepper>
      </Group>
      {standing > 0 && (
        <details>
          <summary>{log.takenDown}</summary>
          <Button
            variant="default"
            disabled={layer >= standing}
            onClick={() => write({ kind: 'taken-down', at, section, layer })}
          >
            {log.takenDownTo(section, layer)}
          </Button>{' '}
          <Button variant="default" onClick={() => write({ kind: 'taken-down', at, section, layer: 0 })}>
            {log.takenDownTo(section, 0)}
          </Button>
        </details>
      )}
    </>
  )
}
