import type { Plan } from '@dawnlift/core/plan'
import { lazy, Suspense } from 'react'
import { ImportDrawing } from '../../import/index.js'
import { WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { PaperElevations } from './elevation/paper-elevations.js'
import { WallUnrolled } from './elevation/wall-unrolled.js'
import { PlanBoard } from './plan/plan-board.js'
import { layerAt } from './standing.js'
import { findThing, type Thing, thingKinds } from './thing.js'
import { useDraft } from './use-draft.js'
import './walls.css'

/** The plan, wall by wall, and what stands at the moment the campaign clock shows. */
export function WallsPlace() {
  const waiting = useApp(state => state.plan === undefined && state.problems.length > 0)
  return (
    <>
      <WithPlan>{plan => <Walls plan={plan} />}</WithPlan>
      {/* A job whose drawing is missing is mended by bringing it in. */}
      {waiting && (
        <div className="inner">
          <ImportDrawing />
        </div>
      )}
    </>
  )
}

/** Three-dimensional drawing is heavy: loaded when somebody first looks at the walls. */
const SolidView = lazy(() => import('./solid/index.js').then(module => ({ default: module.SolidView })))

function Walls({ plan }: { readonly plan: Plan }) {
  const layer = useApp(state => layerAt(plan, state.moment))
  const selection = useApp(state => state.selection)
  const { draft, drawn } = useDraft(plan)
  const { select } = useApp.getState()
  const chosen = asThing(selection)
  const wall = findThing(draft, chosen)?.wall.id ?? draft.walls[0]?.id
  return (
    <div className="walls-place">
      <PlanBoard
        plan={plan}
        draft={draft}
        drawn={drawn}
        layer={layer}
        chosen={chosen}
        choose={select}
        beside={
          <section className="sheet">
            <Suspense fallback={<p className="soft">{words.walls.building}</p>}>
              <SolidView plan={plan} />
            </Suspense>
          </section>
        }
      />
      {wall && <WallUnrolled plan={plan} draft={draft} wall={wall} chosen={chosen} choose={select} />}
      <PaperElevations plan={plan} />
      <ImportDrawing />
    </div>
  )
}

/** Lifts and sections are chosen in other places; on the plan they choose nothing. */
function asThing(selection: ReturnType<typeof useApp.getState>['selection']): Thing | undefined {
  const kind = thingKinds.find(each => each === selection?.kind)
  return selection && kind ? { kind, id: selection.id } : undefined
}
