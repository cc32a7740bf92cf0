import type { Point } from '../geometry/index.js'
import type { Machine } from '../machine/index.js'
import type { Radians } from '../quantity/index.js'
import type { Band } from '../wall/index.js'
import type { RouteRules } from './options.js'
import { orderBeads } from './order.js'
import type { LayerRoute, Pass, Travel } from './pass.js'
import { distance } from './segment.js'
import { type Chain, chainsOf, type Strand } from './strand.js'
import type { PassTimer } from './timed-pass.js'
import { travelOf } from './travel.js'
import { joiningGap, type Way, waysOf } from './way.js'
import type { WoundBead } from './wind-back.js'

type Ways = readonly (readonly Way[])[]

/** How one parity of a band is run. */
interface Half {
  readonly order: readonly Way[]
  readonly chains: readonly Chain[]
  readonly wound: readonly WoundBead[]
}

/** Both routes of a band, and the beads in which the nozzle has to stop and turn back. */
export interface RoutedBand {
  readonly routes: readonly [odd: LayerRoute, even: LayerRoute]
  readonly wound: readonly WoundBead[]
}

/** Both routes of a band: odd layers one way, even layers back, so that the axis winds back and ends meet starts. */
export function routeBand(
  section: string,
  band: Band,
  machine: Machine,
  rules: RouteRules,
  timer: PassTimer,
): RoutedBand {
  const ways = waysOf(band.beads, rules)
  const odd = oddHalf(band, ways, machine, rules)
  const even = evenHalf(band, ways, odd, machine, rules)
  const routes = [
    layerRoute(section, band, 1, odd.chains.flatMap(timer), travelsOf(band, odd, even, machine, rules)),
    layerRoute(section, band, 0, even.chains.flatMap(timer), travelsOf(band, even, odd, machine, rules)),
  ] as const
  return { routes, wound: [...odd.wound, ...even.wound] }
}

function oddHalf(band: Band, ways: Ways, machine: Machine, rules: RouteRules): Half {
  const { beads } = band
  const gap = gapsOf(band, rules)
  const order = orderBeads({ ways, gap })
  return { order, ...chainsOf({ beads, order, rules, machine, heading: 0 }) }
}

/**
 * The even layers begin where the odd ones end and lead back. Loops are run the other way round; in staggered mode
 * they also start elsewhere, unless that costs a start of the pump.
 */
function evenHalf(band: Band, ways: Ways, odd: Half, machine: Machine, rules: RouteRules): Half {
  const { beads } = band
  if (odd.order.length === 0) return odd
  const order = orderBeads({
    ways: rules.start.kind === 'staggered' ? staggered(ways, odd.order) : ways,
    gap: gapsOf(band, rules),
    from: odd.order.at(-1)!.leave,
    to: odd.order[0]!.enter,
    like: odd.order.map(way => way.bead).reverse(),
  })
  const backwards = new Map(odd.chains.flat().map(strand => [beads.indexOf(strand.bead), !strand.backwards]))
  const heading = odd.chains.at(-1)!.at(-1)!.headings.at(-1)!
  return { order, ...chainsOf({ beads, order, rules, machine, heading, backwards }) }
}

/** Worth this much travel [m] to move a start away from the one below: more than a site, less than a start. */
const staggerWorth = 1000

/** Starts nearer to the one below than this count as the same seam [m]. */
const sameSeam = 0.3

function staggered(ways: Ways, below: readonly Way[]): Way[][] {
  const seams = new Map(below.map(way => [way.bead, way.enter]))
  const nearSeam = (way: Way) => distance(way.enter, seams.get(way.bead)!) < sameSeam
  return ways.map(each =>
    each.map(way => (way.place && nearSeam(way) ? { ...way, dislike: way.dislike + staggerWorth } : way)),
  )
}

const gapsOf = (band: Band, rules: RouteRules) => (a: number, b: number) =>
  joiningGap(band.beads[a]!, band.beads[b]!, rules)

function layerRoute(
  section: string,
  band: Band,
  parity: 0 | 1,
  passes: readonly Pass[],
  travels: readonly Travel[],
): LayerRoute {
  const sum = (of: (pass: Pass) => number) => passes.reduce((total, pass) => total + of(pass), 0)
  return {
    section,
    fromLayer: band.fromLayer,
    toLayer: band.toLayer,
    parity,
    passes,
    travels,
    printTime: sum(pass => pass.time),
    travelTime: travels.reduce((total, travel) => total + travel.time, 0),
    length: sum(pass => pass.length),
    volume: sum(pass => pass.volume),
  }
}

/** The first travel leads over from the layer below; lifts are those of the band's lowest layer, the highest ones. */
function travelsOf(band: Band, half: Half, before: Half, machine: Machine, rules: RouteRules): Travel[] {
  const strands = half.chains.flat()
  const last = before.chains.flat().at(-1)
  return strands.map((strand, i) => {
    const from = strands[i - 1] ?? last!
    const height = strand.bead.height
    const z = rules.origin.z + rules.base + band.fromLayer * height
    const task = {
      from: endOf(from),
      to: strand.path.points[0]!,
      fromZ: i === 0 ? z - height : z,
      toZ: z,
      turn: strand.headings[0]! - endHeading(from),
    }
    return strand.joined ? joint(task.to, task.turn) : travelOf(task, machine, rules)
  })
}

const endOf = (strand: Strand): Point => strand.path.points.at(-1)!
const endHeading = (strand: Strand): Radians => strand.headings.at(-1)!
const joint = (at: Point, turn: Radians): Travel => ({
  from: at,
  to: at,
  lift: 0,
  time: 0,
  turn,
  joined: true,
})
