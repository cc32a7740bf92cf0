import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawWallElevation } from '@dawnlift/drawing/views'
import { Group, SegmentedControl } from '@mantine/core'
import { type MouseEvent, useMemo, useState } from 'react'
import { Picture } from '../../../parts/index.js'
import { words } from '../../../words/index.js'
import { sheetWords } from '../../sheet-words.js'
import type { Draft } from '../draft.js'
import { findThing, type Thing } from '../thing.js'

type Side = 'right' | 'left'

/** The chosen wall unrolled, seen from either side. What is on it can be chosen here too. */
export function WallUnrolled({
  plan,
  draft,
  wall,
  chosen,
  choose,
}: {
  readonly plan: Plan
  readonly draft: Draft
  readonly wall: string
  readonly chosen: Thing | undefined
  readonly choose: (thing: Thing) => void
}) {
  const [side, setSide] = useState<Side>('right')
  const { walls } = words
  const drawing = useMemo(() => {
    // The newest figures under the lifts of the last plan: an edit shows at once.
    const job = { ...plan.job, ...draft }
    return drawWallElevation({ ...plan, job }, wall, figure(300, 95, sheetWords(plan)), { seenFrom: side })
  }, [plan, draft, wall, side])
  const name = draft.walls.find(each => each.id === wall)?.name ?? wall
  const pick = (event: MouseEvent<HTMLElement>) => {
    const ref = (event.target as Element)
      .closest('[data-layer="openings"] [data-ref], [data-layer="embeds"] [data-ref]')
      ?.getAttribute('data-ref')
    if (!ref) return
    const thing = (['opening', 'embed'] as const)
      .map(kind => ({ kind, id: ref }))
      .find(each => findThing(draft, each))
    if (thing) choose(thing)
  }
  return (
    <section className="sheet" aria-label={`${walls.unrolled} ${wall}`}>
      <Group justify="space-between" mb="xs">
        <h2>
          {walls.unrolled}: {wall}
          {name === wall ? '' : `, ${name}`}
        </h2>
        <SegmentedControl
          aria-label={walls.seenFrom}
          value={side}
          onChange={value => setSide(value as Side)}
          data={(['right', 'left'] as const).map(value => ({
            value,
            label: `${walls.seenFrom} ${walls.seen[value]}`,
          }))}
        />
      </Group>
      {chosen && chosen.kind !== 'wall' && (
        <style>{`.unrolled [data-layer="${chosen.kind}s"] [data-ref=${JSON.stringify(chosen.id)}] { stroke: var(--print) !important; stroke-width: 0.9px; }`}</style>
      )}
      {/* biome-ignore lint/a11y/useKeyWithClickEvents: by keys things are chosen on the plan above */}
      {/* biome-ignore lint/a11y/noStaticElementInteractions: a short cut for the pointer only */}
      <div className="unrolled" onClick={pick}>
        <Picture drawing={drawing} label={walls.elevation(wall, side)} />
      </div>
    </section>
  )
}
