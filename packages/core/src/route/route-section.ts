import type { Machine } from '../machine/index.js'
import { assert, type Finding } from '../result/index.js'
import type { Band, SectionBands } from '../wall/index.js'
import { checkFlow } from './check-flow.js'
import { checkReach } from './check-reach.js'
import { checkTravels } from './check-travels.js'
import { checkWinding } from './check-winding.js'
import { type RouteCache, type RouteOptions, type RouteRules, routeRules } from './options.js'
import type { LayerRoute, SectionRoutes } from './pass.js'
import { type RoutedBand, routeBand } from './route-band.js'
import type { WoundBead } from './wind-back.js'

/**
 * Routes of a section: for each band one for odd and one for even layers, with the fewest starts of the pump and the
 * least travel, timed by the machine's own limits; and what stands against them.
 *
 * Lead-in: the pump starts at the first point and the nozzle waits there for the pump's start lag.
 * Lead-out: the machine file stops the pump its stop lag before the end; the nozzle runs on to the end.
 */
export function routeSection(
  bands: SectionBands,
  machine: Machine,
  options: RouteOptions,
): { readonly routes: SectionRoutes; readonly findings: readonly Finding[] } {
  const rules = routeRules(options)
  const cache: RouteCache = options.cache ?? new Map()
  const wound: WoundBead[] = []
  const routes = bands.bands.flatMap(band => {
    const routed = routedBand(bands.section, band, machine, rules, cache)
    wound.push(...routed.wound)
    return routed.routes
  })
  const section = { section: bands.section, routes }
  const findings = [
    ...checkReach(bands, machine, rules),
    ...checkFlow(section, rules.speed, machine),
    ...checkTravels(section, machine, rules),
    ...checkWinding(section, wound, machine),
  ]
  return { routes: section, findings }
}

/** From the cache under the band's own names, or made now. */
function routedBand(
  section: string,
  band: Band,
  machine: Machine,
  rules: RouteRules,
  cache: RouteCache,
): RoutedBand {
  assert(band.beads.every(isRunnable), 'bead points are finite and beads have pieces')
  const key = keyOf(band, machine, rules)
  const known = cache.get(key)
  if (known) {
    // Set anew: the map's order tells its owner what was asked for last.
    cache.delete(key)
    cache.set(key, known)
    return renamed(known, section, band)
  }
  const routed = routeBand(section, band, machine, rules)
  cache.set(key, { ...routed, beads: band.beads.map(bead => bead.id) })
  return routed
}

/** All that a band's routes depend on: not its name, and its level only where something stands proud. */
function keyOf(band: Band, machine: Machine, rules: RouteRules): string {
  const level = rules.proud.length + machine.keepOut.length > 0 ? band.fromLayer : 0
  return JSON.stringify([
    band.beads.map(({ path, width, height }) => [path, width, height]),
    machine,
    rules,
    level,
  ])
}

function renamed(
  { beads, routes, wound }: RoutedBand & { readonly beads: readonly string[] },
  section: string,
  band: Band,
): RoutedBand {
  const { fromLayer, toLayer } = band
  const names = new Map(beads.map((name, i) => [name, band.beads[i]!.id]))
  const named = <T extends { readonly bead: string }>(each: T): T => ({
    ...each,
    bead: names.get(each.bead)!,
  })
  const renew = (route: LayerRoute): LayerRoute => ({
    ...route,
    section,
    fromLayer,
    toLayer,
    passes: route.passes.map(named),
  })
  return { routes: [renew(routes[0]), renew(routes[1])], wound: wound.map(named) }
}

const isRunnable = ({ path, width, height }: Band['beads'][number]): boolean =>
  path.bulges.length > 0 &&
  path.bulges.every(Number.isFinite) &&
  path.points.flat().every(Number.isFinite) &&
  Number.isFinite(width) &&
  Number.isFinite(height)
