import type { Machine } from '../machine/index.js'
import { formatPlace, formatQuantity, type Metres } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import type { RouteRules } from './options.js'
import type { LayerRoute, SectionRoutes, Travel } from './pass.js'
import { obstaclesUnder } from './travel.js'

/** Travels that would have to lift above the machine's reach to clear what is in the way; the worst of each section. */
export function checkTravels(routes: SectionRoutes, machine: Machine, rules: RouteRules): Finding[] {
  const capacity = machine.reach.z[1]
  const tried = routes.routes.flatMap(route => {
    const least = leastLift(route)
    return route.travels.flatMap((travel, i) =>
      travel.joined ? [] : highestTravel(route, travel, least, i, rules),
    )
  })
  const highest = tried.reduce<(typeof tried)[number] | undefined>(
    (so, each) => (so && so.z >= each.z ? so : each),
    undefined,
  )
  if (!highest || highest.z <= capacity + 1e-9) return []
  const { travel, z, layerZ } = highest
  const blocking = obstaclesUnder({ ...travel, fromZ: layerZ, toZ: layerZ }, machine, rules).map(
    each => each.name,
  )
  const over = blocking.length > 0 ? `over ${blocking.join(', ')} ` : ''
  return [
    {
      check: 'travel-height',
      at: routes.section,
      point: travel.from,
      demand: z,
      capacity,
      unit: 'm',
      source: 'the job',
      verdict: 'fail',
      say: `The travel ${over}from ${formatPlace(travel.from, rules.units)} to ${formatPlace(travel.to, rules.units)} needs the nozzle at ${formatQuantity(z, 'length', rules.units)}; the machine reaches ${formatQuantity(capacity, 'length', rules.units)}. Move the obstacle, raise the machine or divide the section there.`,
    },
  ]
}

/** Obstacles are cleared at their own height in every layer; plain clearance is highest over the top layer. */
function highestTravel(route: LayerRoute, travel: Travel, least: Metres, i: number, rules: RouteRules) {
  const height = route.passes[i]!.height
  const level = (layer: number) => rules.origin.z + rules.base + layer * height
  const [low, high] = [level(route.fromLayer), level(route.toLayer)]
  return [{ travel, layerZ: low, z: low + travel.lift }].concat(
    route.toLayer > route.fromLayer ? [{ travel, layerZ: high, z: high + least }] : [],
  )
}

const leastLift = (route: LayerRoute): Metres =>
  Math.min(...route.travels.filter(travel => !travel.joined).map(travel => travel.lift))
