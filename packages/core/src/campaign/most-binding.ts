import type { LimitKind } from '../limit/index.js'
import type { Campaign } from './campaign.js'

/** Ends that are drawn: no lever moves them. */
const drawnEnds: readonly LimitKind[] = ['top-of-wall', 'lintel-head', 'pour-level']

/** The limit that takes most layers off the lifts; lintels and pours only if there is no other, the top of the wall never. */
export function mostBinding(campaign: Campaign): LimitKind | undefined {
  const lost = new Map<LimitKind, number>()
  for (const lift of campaign.days.flatMap(day => day.lifts)) {
    const missing = lift.wishedLayers - (lift.lastLayer - lift.firstLayer + 1)
    lost.set(lift.binding.kind, (lost.get(lift.binding.kind) ?? 0) + missing + 1e-3)
  }
  lost.delete('top-of-wall')
  const most = [...lost].sort((x, y) => y[1] - x[1]).map(([kind]) => kind)
  return most.find(kind => !drawnEnds.includes(kind)) ?? most[0]
}
