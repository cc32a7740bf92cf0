import type { Machine } from '../machine/index.js'
import type { Metres, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { layerRouteOf } from './layer-route.js'
import { type RouteOptions, type RouteRules, routeRules } from './options.js'
import type { LayerRoute, Pass, SectionRoutes, Travel } from './pass.js'
import { chainTimes } from './timed-pass.js'
import { nothingInTheWay, rapidTime, travelOf } from './travel.js'

/** Which layers are run, and from which pass of the first one. */
export interface LiftSpan {
  readonly fromLayer: number
  readonly toLayer: number
  /** Index into the first layer's passes; 0 is the first. */
  readonly fromPass?: number
}

/** One layer as it follows the one really below it: true heights, true first travel. */
export interface LayerRun {
  readonly layer: number
  /** Top of the bead, machine frame [m]. */
  readonly z: Metres
  readonly passes: readonly Pass[]
  readonly travels: readonly Travel[]
  readonly time: Seconds
}

/** A whole lift in the order it is run. The nozzle begins above its first point and ends lifted above its last. */
export interface LiftRun {
  readonly layers: readonly LayerRun[]
  /** Lift after the last pass, and its time. */
  readonly end: { readonly lift: Metres; readonly time: Seconds }
  readonly time: Seconds
}

/** Layers of a section one after another, from any layer and pass. */
export function liftRun(
  routes: SectionRoutes,
  machine: Machine,
  options: RouteOptions,
  span: LiftSpan,
): LiftRun {
  assert(
    span.fromLayer >= 1 && span.toLayer >= span.fromLayer,
    'a lift has at least one layer, counted from 1',
  )
  const rules = routeRules(options)
  const height = layerHeightOf(routes)
  const layers: LayerRun[] = []
  let below: LayerRun | undefined
  for (let layer = span.fromLayer; layer <= span.toLayer; layer++) {
    const skip = layer === span.fromLayer ? (span.fromPass ?? 0) : 0
    const z = rules.origin.z + rules.base + layer * height
    layers.push(layerRun(layerRouteOf(routes, layer), { layer, z, skip }, below, machine, rules))
    if (layers.at(-1)!.passes.length > 0) below = layers.at(-1)
  }
  const lift = machine.travelClearance
  const end = { lift, time: rapidTime({ plan: 0, up: lift, turn: 0 }, machine) }
  return { layers, end, time: layers.reduce((sum, layer) => sum + layer.time, end.time) }
}

function layerRun(
  route: LayerRoute,
  { layer, z, skip }: { readonly layer: number; readonly z: Metres; readonly skip: number },
  below: LayerRun | undefined,
  machine: Machine,
  rules: RouteRules,
): LayerRun {
  if (route.passes.length === 0) return { layer, z, passes: [], travels: [], time: 0 }
  assert(skip < route.passes.length, `layer ${layer} has more than ${skip} passes`)
  const passes = restarted(route, skip, machine)
  const travels = atHeight(skip > 0 ? route.travels.slice(skip) : route.travels, z, machine, rules)
  travels[0] = firstTravel(passes[0]!, z, below, machine, rules)
  const sum = (items: readonly { readonly time: Seconds }[]) =>
    items.reduce((total, item) => total + item.time, 0)
  return { layer, z, passes, travels, time: sum(passes) + sum(travels) }
}

/** All layers of a section are one height. */
function layerHeightOf(routes: SectionRoutes): Metres {
  const pass = routes.routes.find(route => route.passes.length > 0)?.passes[0]
  assert(pass, `section ${routes.section} has at least one bead`)
  return pass.height
}

/** Passes from one on: what followed it without a stop is timed anew from rest. */
function restarted(route: LayerRoute, skip: number, machine: Machine): readonly Pass[] {
  if (skip === 0) return route.passes
  const passes = route.passes.slice(skip)
  const next = route.travels.slice(skip + 1).findIndex(travel => !travel.joined)
  const chain = passes.slice(0, next < 0 ? passes.length : next + 1)
  if (!route.travels[skip]!.joined) return passes
  const times = chainTimes(chain, machine)
  return passes.map((pass, i) => (i < times.length ? { ...pass, time: times[i]! } : pass))
}

function firstTravel(
  first: Pass,
  z: Metres,
  below: LayerRun | undefined,
  machine: Machine,
  rules: RouteRules,
): Travel {
  const to = first.path.points[0]!
  const last = below?.passes.at(-1)
  if (!below || !last) {
    const lift = approachLift(z, machine, rules)
    return { from: to, to, lift, time: rapidTime({ plan: 0, up: lift, turn: 0 }, machine), turn: 0 }
  }
  const turn = first.headings[0]! - last.headings.at(-1)!
  return travelOf({ from: last.path.points.at(-1)!, to, fromZ: below.z, toZ: z, turn }, machine, rules)
}

/** Nobody knows where the nozzle comes from: it comes over everything that stands proud anywhere. */
const approachLift = (z: Metres, machine: Machine, rules: RouteRules): Metres =>
  Math.max(z, ...rules.proud.map(each => rules.origin.z + each.top)) + machine.travelClearance - z

/** Where nothing stands in the way the lift is the clearance at any height, and the travels the route's own. */
function atHeight(travels: readonly Travel[], z: Metres, machine: Machine, rules: RouteRules): Travel[] {
  if (nothingInTheWay(machine, rules)) return [...travels]
  return travels.map(travel =>
    travel.joined ? travel : travelOf({ ...travel, fromZ: z, toZ: z }, machine, rules),
  )
}
