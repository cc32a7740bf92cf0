import type { Point } from '@dawnlift/core/geometry'
import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawWallElevation, elevationMap } from '@dawnlift/drawing/views'
import { Group, SegmentedControl } from '@mantine/core'
import { type PointerEvent, useMemo, useRef, useState } from 'react'
import { Picture } from '../../../parts/index.js'
import { useApp } from '../../../state/index.js'
import { words } from '../../../words/index.js'
import { sheetWords } from '../../sheet-words.js'
import type { Draft } from '../draft.js'
import { withCarry } from '../plan/carry.js'
import type { Thing } from '../thing.js'
import { sayThing } from '../thing-text.js'
import { useElevationHands } from './use-elevation-hands.js'

type Side = 'right' | 'left'

/** The chosen wall unrolled, seen from either side. What is on it can be chosen and moved here too. */
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
  const units = useApp(state => state.units)
  const host = useRef<HTMLDivElement>(null)
  const sheet = useMemo(() => figure(300, 95, sheetWords(plan)), [plan])
  const map = useMemo(
    () => elevationMap({ ...plan, job: { ...plan.job, ...draft } }, wall, sheet, { seenFrom: side }),
    [plan, draft, wall, side, sheet],
  )
  const hands = useElevationHands(
    draft,
    event => {
      const place = paperPlace(event, host.current, sheet.height)
      return place && map.toWall(place)
    },
    choose,
  )
  const shown = useMemo(() => withCarry(draft, hands.carry), [draft, hands.carry])
  // The newest figures under the lifts of the last plan: an edit shows at once.
  const drawing = useMemo(
    () => drawWallElevation({ ...plan, job: { ...plan.job, ...shown } }, wall, sheet, { seenFrom: side }),
    [plan, shown, wall, side, sheet],
  )
  const name = draft.walls.find(each => each.id === wall)?.name ?? wall
  const { walls } = words
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
      <div ref={host} className="unrolled" {...hands.pointer}>
        <Picture drawing={drawing} label={walls.elevation(wall, side)} />
      </div>
      <p className="plan-say" role="status">
        {hands.carry && `${sayThing(shown, hands.carry.thing, units)} — ${hands.carry.to ?? ''}`}
      </p>
      {hands.wrong && (
        <p className="limit" role="alert">
          {hands.wrong}
        </p>
      )}
    </section>
  )
}

/** Where on the paper the pointer is, in millimetres from the lower left. */
function paperPlace(event: PointerEvent, host: HTMLElement | null, height: number): Point | undefined {
  const svg = host?.querySelector('svg')
  const matrix = svg?.getScreenCTM()
  if (!matrix) return undefined
  const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse())
  return [x, height - y]
}
