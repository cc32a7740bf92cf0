import type { Plan } from '@dawnlift/core/plan'
import { WithPlan } from '../../parts/index.js'
import { useApp } from '../../state/index.js'
import { words } from '../../words/index.js'
import { Quiet } from '../quiet.js'
import { FitSheet } from './fit-sheet.js'
import { PumpSheet } from './pump-sheet.js'
import { TestsSheet } from './tests-sheet.js'
import { WaterThroughTheDay } from './water-chart.js'
import './mix.css'

/** What the material does: stiffening with age, the water it needs through the day, and its way through the hose. */
export const MixPlace = () => <WithPlan>{plan => <Mix plan={plan} />}</WithPlan>

function Mix({ plan }: { readonly plan: Plan }) {
  const fit = useApp(state => state.mixFit)
  return (
    <>
      <Quiet>{words.quiet.mix}</Quiet>
      <div className="stack">
        <FitSheet mix={plan.job.mix} fit={fit} />
        <div className="columns">
          <TestsSheet fit={fit} />
          <div className="stack">
            <WaterThroughTheDay plan={plan} />
            <PumpSheet plan={plan} />
          </div>
        </div>
      </div>
    </>
  )
}
