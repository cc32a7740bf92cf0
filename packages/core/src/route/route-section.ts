import type { Machine } from '../machine/index.js'
import { assert, type Finding } from '../result/index.js'
import type { Band, SectionBands } from '../wall/index.js'
import { checkFlow } from './check-flow.js'
import { checkReach } from './check-reach.js'
import { checkTravels } from './check-travels.js'
import { checkWinding } from './check-winding.js'
import { newRouteCache, type RouteCache, type RouteOptions, type RouteRules, routeRules } from './options.js'
import type { LayerRoute, SectionRoutes } from './pass.js'
import { type RoutedBand, routeBand } from './route-band.js'
import { type PassTimer, passTimer } from './timed-pass.js'

/**
 * Routes of a section: for each band one for odd and one for even layers, with the fewest starts of the pump and the
 * least travel, timed by the machine's own limits; and what stands against them.
 *
 * Lead-in: the pump starts at the first point and the nozzle waits there for the pump's start lag.
 * Lead-out: the machine file stops the pump its stop lag before the end; the nozzle runs on to the end.
 */
export function routeSection(bands: SectionBands, machine: Machine, options: RouteOptions): RoutedSection {
  const rules = routeRules(options)
  const cache = options.cache ?? newRouteCache()
  const common = JSON.stringify([machine, rules])
  const levels = rules.proud.length + machine.keepOut.length > 0
  const tasks = bands.bands.map(band => pooledBand(band, cache, `${levels ? band.fromLayer : 0}${common}`))
  const key = sectionKey(bands, tasks)
  const section = cache.sections.get(key) ?? routedSection(bands, tasks, machine, rules, cache)
  // Set anew: the map's order tells its owner what was asked for last.
  cache.sections.delete(key)
  cache.sections.set(key, section)
  return section
}

/** Routes of a section and what stands against them. */
export interface RoutedSection {
  readonly routes: SectionRoutes
  readonly findings: readonly Finding[]
}

/** A band over shared paths, and all that its routes depend on: not its name, its level only where something stands proud. */
interface BandTask {
  readonly band: Band
  readonly key: string
}

function pooledBand(band: Band, { paths }: RouteCache, common: string): BandTask {
  const pooled = band.beads.map(bead => paths.pooled(bead.path))
  assert(
    band.beads.every(({ width, height }) => Number.isFinite(width + height)),
    'beads have a width and a height',
  )
  const sizes = band.beads.map(({ width, height }, i) => `${pooled[i]!.id} ${width} ${height}`)
  return {
    band: { ...band, beads: band.beads.map((bead, i) => ({ ...bead, path: pooled[i]!.path })) },
    key: `${sizes.join()}${common}`,
  }
}

/** Names and levels too: a section found by it is the section itself. */
const sectionKey = ({ section }: SectionBands, tasks: readonly BandTask[]): string =>
  [
    section,
    ...tasks.map(({ band, key }) =>
      [band.fromLayer, band.toLayer, ...band.beads.map(bead => bead.id), key].join(' '),
    ),
  ].join('\n')

function routedSection(
  bands: SectionBands,
  tasks: readonly BandTask[],
  machine: Machine,
  rules: RouteRules,
  cache: RouteCache,
): RoutedSection {
  const timer = passTimer(machine, rules.speed)
  const routed = tasks.map(task => routedBand(bands.section, task, machine, rules, timer, cache.bands))
  const routes = { section: bands.section, routes: routed.flatMap(each => each.routes) }
  const findings = [
    ...checkReach({ ...bands, bands: tasks.map(({ band }) => band) }, machine, rules),
    ...checkFlow(routes, rules.speed, machine, rules.units),
    ...checkTravels(routes, machine, rules),
    ...checkWinding(
      routes,
      routed.flatMap(each => each.wound),
      machine,
      rules.units,
    ),
  ]
  return { routes, findings }
}

/** From the cache under the band's own names, or made now. */
function routedBand(
  section: string,
  { band, key }: BandTask,
  machine: Machine,
  rules: RouteRules,
  timer: PassTimer,
  cache: RouteCache['bands'],
): RoutedBand {
  const known = cache.get(key) ?? {
    ...routeBand(section, band, machine, rules, timer),
    beads: band.beads.map(bead => bead.id),
  }
  cache.delete(key)
  cache.set(key, known)
  return renamed(known, section, band)
}

type KnownBand = RoutedBand & { readonly beads: readonly string[] }

const renamedBands = new WeakMap<KnownBand, { readonly key: string; readonly band: RoutedBand }>()

/** The same objects for the same names: a section with one band changed keeps the routes of the others. */
function renamed(known: KnownBand, section: string, band: Band): RoutedBand {
  const key = [section, band.fromLayer, band.toLayer, ...band.beads.map(bead => bead.id)].join(' ')
  const before = renamedBands.get(known)
  if (before?.key === key) return before.band
  const made = withNames(known, section, band)
  renamedBands.set(known, { key, band: made })
  return made
}

function withNames({ beads, routes, wound }: KnownBand, section: string, band: Band): RoutedBand {
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
