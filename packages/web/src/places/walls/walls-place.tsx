import type { Plan } from '@dawnlift/core/plan'
import { figure } from '@dawnlift/drawing/paper'
import { drawLayerPlan, drawWallElevation } from '@dawnlift/drawing/views'
import { Group, Select } from '@mantine/core'
import { lazy, Suspense, useMemo } from 'react'
import { Picture, WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { sheetWords } from '../sheet-words.js'

/** The plan, wall by wall, and what stands at the moment the campaign clock shows. */
export const WallsPlace = () => <WithPlan>{plan => <Walls plan={plan} />}</WithPlan>

/** Three-dimensional drawing is heavy: loaded when somebody first looks at the walls. */
const SolidView = lazy(() => import('./solid/index.js').then(module => ({ default: module.SolidView })))

function Walls({ plan }: { readonly plan: Plan }) {
  const moment = useApp(state => state.moment)
  const selection = useApp(state => state.selection)
  const wall = selection?.kind === 'wall' ? selection.id : plan.job.walls[0]!.id
  const layer = Math.max(1, topLayer(plan, moment))
  const top = useMemo(() => drawLayerPlan(plan, layer, figure(300, 190, sheetWords(plan))), [plan, layer])
  const elevation = useMemo(
    () => drawWallElevation(plan, wall, figure(300, 95, sheetWords(plan))),
    [plan, wall],
  )
  return (
    <>
      <section className="sheet">
        <Suspense fallback={<p className="soft">Building the solid view …</p>}>
          <SolidView plan={plan} />
        </Suspense>
      </section>
      <section className="sheet" style={{ marginTop: '1rem' }}>
        <Picture drawing={top} label={`Plan of layer ${layer}`} />
      </section>
      <section className="sheet" style={{ marginTop: '1rem' }}>
        <Group mb="sm">
          <Select
            label="Wall, unrolled"
            allowDeselect={false}
            data={plan.job.walls.map(each => ({ value: each.id, label: `${each.id} ${each.name}` }))}
            value={wall}
            onChange={id => id && useApp.getState().select({ kind: 'wall', id })}
          />
        </Group>
        <Picture drawing={elevation} label={`Wall ${wall} unrolled, with lifts, openings and embeds`} />
      </section>
    </>
  )
}

/** The highest layer that any section has at this moment. */
const topLayer = (plan: Plan, moment: number): number =>
  Math.max(
    0,
    ...plan.campaign.days
      .flatMap(day => day.lifts)
      .map(lift => lift.firstLayer - 1 + lift.layerEnds.filter(end => end <= moment).length)
      .filter(Number.isFinite),
  )
