import type { SiteEvent } from '@dawnlift/core/log'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import { ActionIcon, Button, Group, SegmentedControl } from '@mantine/core'
import { useState } from 'react'
import { words } from '../../words/index.js'

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
  const standing = plan.soFar?.standing.find(each => each.section === section)?.layers ?? 0
  const all = plan.bands[plan.sections.findIndex(({ id }) => id === section)]?.layers ?? 0
  // Counted on from what stands, so that it is right again as soon as a layer is written down.
  const [more, setMore] = useState({ on: standing, layers: 1 })
  const layers = more.on === standing ? more.layers : 1
  const layer = Math.min(all, standing + layers)
  const step = (by: number) => setMore({ on: standing, layers: layers + by })
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
        <ActionIcon
          variant="default"
          size={56}
          aria-label={log.less}
          disabled={layer <= 1}
          onClick={() => step(-1)}
        >
          −
        </ActionIcon>
        <Button disabled={layer <= standing} onClick={() => write({ kind: 'layer', at, section, layer })}>
          {log.layerDown(section, layer)}
        </Button>
        <ActionIcon
          variant="default"
          size={56}
          aria-label={log.more}
          disabled={layer >= all}
          onClick={() => step(1)}
        >
          +
        </ActionIcon>
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

/** The section that is printed at this moment, or next. */
function likelySection({ campaign, sections }: Plan, at: Instant): string {
  const lifts = campaign.days.flatMap(day => day.lifts)
  return (lifts.find(lift => lift.end > at) ?? lifts.at(-1))?.section ?? sections[0]?.id ?? ''
}
