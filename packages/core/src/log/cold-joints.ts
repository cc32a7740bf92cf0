import type { CampaignInput, Lift } from '../campaign/index.js'
import { clockText } from '../clock/index.js'
import type { Finding } from '../result/index.js'
import { inOrder, type LayerDown, type SiteEvent } from './site-event.js'

/**
 * Layers that lay bare longer than bond allows before the next one came, within one lift. Only neighbouring layers that
 * were both logged count: between others nothing is known of the rest.
 *
 * Assumes  a layer lies bare until the next one is down at the same place, one layer time later at the most.
 */
export function coldJoints(
  input: CampaignInput,
  events: readonly SiteEvent[],
  built: readonly Lift[],
): readonly Finding[] {
  const logged = new Set(
    inOrder(events)
      .filter((event): event is LayerDown => event.kind === 'layer')
      .map(event => `${event.section} ${event.layer} ${event.at}`),
  )
  return built.flatMap(lift =>
    lift.layerEnds.slice(1).flatMap((end, i) => {
      const layer = lift.firstLayer + i
      const since = lift.layerEnds[i]!
      const known =
        logged.has(`${lift.section} ${layer} ${since}`) && logged.has(`${lift.section} ${layer + 1} ${end}`)
      return known ? coldJoint(input, lift, layer, since, end) : []
    }),
  )
}

function coldJoint(
  { physics, timeZone }: CampaignInput,
  lift: Lift,
  layer: number,
  since: number,
  end: number,
): readonly Finding[] {
  const { seconds, limit } = physics.longestRest(since)
  const bare = end - since
  if (bare <= seconds) return []
  const minutes = (time: number) => `${Math.round(time / 60)} min`
  return [
    {
      check: 'cold-joint',
      at: lift.id,
      demand: bare,
      capacity: seconds,
      unit: 's',
      source: limit.source,
      verdict: 'warn',
      say: `Layer ${layer} of section ${lift.section} lay bare ${minutes(bare)} from ${clockText(since, timeZone)}; bond allows ${minutes(seconds)}. Record it as a cold joint and show it to the engineer: wet and key it before anything is printed on it.`,
    },
  ]
}
