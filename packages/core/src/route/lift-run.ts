import type { Machine } from '../machine/index.js'
import type { Metres, Seconds } from '../quantity/index.js'
import { assert } from '../result/index.js'
import { layerRouteOf } from './layer-route.js'
import { type Proud, type RouteOptions, type RouteRules, routeRules } from './options.js'
import type { LayerRoute, Pass, SectionRoutes, Travel } from './pass.js'
import { type StandingWalls, standingWalls } from './standing-walls.js'
import { chainTimes } from './timed-pass.js'
import { nothingInTheWay, rapidTime, type TravelTask, travelAt, travelOf } from './travel.js'

/** Which layers are run, and from which pass of the first one. */
export interface LiftSpan {
  readonly fromLayer: number
  readonly toLayer: number
  /** Index into the first layer's passes; 0 is the first. */
  readonly fromPass?: number
  /** Walls of other sections by then: the nozzle comes in, travels and leaves above them. */
  readonly standing?: readonly Proud[]
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

/** A whole lift in the order it is run. The nozzle comes in above all that stands, and ends lifted above it. */
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
  const site: Site = { machine, rules, standing: standingWalls(span.standing ?? [], rules) }
  const height = layerHeightOf(routes)
  const layers: LayerRun[] = []
  let below: LayerRun | undefined
  for (let layer = span.fromLayer; layer <= span.toLayer; layer++) {
    const skip = layer === span.fromLayer ? (span.fromPass ?? 0) : 0
    const z = rules.origin.z + rules.base + layer * height
    layers.push(layerRun(layerRouteOf(routes, layer), { layer, z, skip }, below, site))
    if (layers.at(-1)!.passes.length > 0) below = layers.at(-1)
  }
  const lift = liftTo(site.standing.top, layers.at(-1)!.z, machine)
  const end = { lift, time: rapidTime({ plan: 0, up: lift, turn: 0 }, machine) }
  return { layers, end, time: layers.reduce((sum, layer) => sum + layer.time, end.time) }
}

/** What a lift is run with and among. */
interface Site {
  readonly machine: Machine
  readonly rules: RouteRules
  readonly standing: StandingWalls
}

/** Over something that high, and never less than the clearance. */
const liftTo = (top: Metres, z: Metres, machine: Machine): Metres =>
  Math.max(top - z, 0) + machine.travelClearance

function layerRun(
  route: LayerRoute,
  { layer, z, skip }: { readonly layer: number; readonly z: Metres; readonly skip: number },
  below: LayerRun | undefined,
  site: Site,
): LayerRun {
  if (route.passes.length === 0) return { layer, z, passes: [], travels: [], time: 0 }
  assert(skip < route.passes.length, `layer ${layer} has more than ${skip} passes`)
  const passes = restarted(route, skip, site.machine)
  const travels = atHeight(skip > 0 ? route.travels.slice(skip) : route.travels, z, site)
  travels[0] = firstTravel(passes[0]!, z, below, site)
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

function firstTravel(first: Pass, z: Metres, below: LayerRun | undefined, site: Site): Travel {
  const { machine, rules } = site
  const to = first.path.points[0]!
  const last = below?.passes.at(-1)
  if (!below || !last) {
    const lift = liftTo(highestOf(site), z, machine)
    return { from: to, to, lift, time: rapidTime({ plan: 0, up: lift, turn: 0 }, machine), turn: 0 }
  }
  const turn = first.headings[0]! - last.headings.at(-1)!
  const task = { from: last.path.points.at(-1)!, to, fromZ: below.z, toZ: z, turn }
  return overStanding(travelOf(task, machine, rules), task, site)
}

/** Nobody knows where the nozzle comes from: it comes over everything that stands anywhere. */
const highestOf = ({ rules, standing }: Site): Metres =>
  Math.max(standing.top, ...rules.proud.map(each => rules.origin.z + each.top))

/** Where nothing stands in the way the lift is the clearance at any height, and the travels the route's own. */
function atHeight(travels: readonly Travel[], z: Metres, site: Site): Travel[] {
  const { machine, rules } = site
  const clear = nothingInTheWay(machine, rules)
  if (clear && (site.standing.top <= z || site.standing.topUnderAll(travels) <= z)) return [...travels]
  return travels.map(travel => {
    if (travel.joined || (clear && travel.lift >= liftOverStanding(travel, z, site))) return travel
    const task = { ...travel, fromZ: z, toZ: z }
    return overStanding(clear ? travel : travelOf(task, machine, rules), task, site)
  })
}

function overStanding(travel: Travel, task: TravelTask, site: Site): Travel {
  const lift = liftOverStanding(task, task.toZ, site)
  return lift <= travel.lift ? travel : travelAt(lift, task, site.machine)
}

const liftOverStanding = (
  way: Pick<Travel, 'from' | 'to'>,
  z: Metres,
  { machine, standing }: Site,
): Metres => (standing.top <= z ? 0 : liftTo(standing.topUnder(way), z, machine))
