import type { Machine } from '../machine/index.js'
import { assert, type Finding } from '../result/index.js'
import type { Band, SectionBands } from '../wall/index.js'
import { checkFlow } from './check-flow.js'
import { checkReach } from './check-reach.js'
import { checkTravels } from './check-travels.js'
import { headingRange } from './heading.js'
import { type RouteCache, type RouteOptions, type RouteRules, routeRules } from './options.js'
import type { LayerRoute, SectionRoutes } from './pass.js'
import { routeBand } from './route-band.js'
import type { Strand } from './strand.js'

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
  const overwound: Finding[] = []
  const routes = bands.bands.flatMap(band => {
    assert(band.beads.every(isRunnable), 'bead points are finite and beads have pieces')
    const key = keyOf(band, machine, rules)
    const known = cache.get(key)
    if (known) return known.routes.map(route => renamed(route, known.beads, bands.section, band))
    const routed = routeBand(bands.section, band, machine, rules)
    overwound.push(...routed.overwound.map(strand => overwoundFinding(bands.section, strand, machine)))
    if (routed.overwound.length === 0)
      cache.set(key, { beads: band.beads.map(bead => bead.id), routes: routed.routes })
    return routed.routes
  })
  const section = { section: bands.section, routes }
  const findings = [
    ...checkReach(bands, machine, rules),
    ...checkFlow(section, rules.speed, machine),
    ...checkTravels(section, machine, rules),
    ...overwound,
  ]
  return { routes: section, findings }
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

/** The same routes under the names of another band. */
function renamed(
  route: LayerRoute,
  names: readonly string[],
  section: string,
  { fromLayer, toLayer, beads }: Band,
): LayerRoute {
  const newName = new Map(names.map((name, i) => [name, beads[i]!.id]))
  const passes = route.passes.map(pass => ({ ...pass, bead: newName.get(pass.bead)! }))
  return { ...route, section, fromLayer, toLayer, passes }
}

const isRunnable = ({ path, width, height }: Band['beads'][number]): boolean =>
  path.bulges.length > 0 &&
  path.bulges.every(Number.isFinite) &&
  path.points.flat().every(Number.isFinite) &&
  Number.isFinite(width) &&
  Number.isFinite(height)

function overwoundFinding(section: string, strand: Strand, machine: Machine): Finding {
  const [least, most] = headingRange([strand])
  const demand = degrees(most - least)
  const capacity = degrees(2 * machine.headingTravel)
  return {
    check: 'heading-travel',
    at: `${section}/${strand.bead.id}`,
    point: strand.path.points[0]!,
    demand,
    capacity,
    unit: 'deg',
    source: 'the job',
    verdict: 'fail',
    say: `Bead ${strand.bead.id} winds the nozzle through ${demand.toFixed(0)}°; the axis has ${capacity.toFixed(0)}° between its stops. Split the bead or use a round nozzle.`,
  }
}

const degrees = (angle: number): number => (angle * 180) / Math.PI
