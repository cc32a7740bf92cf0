import { pathLength } from '../geometry/index.js'
import type { Job, Wall } from '../job/index.js'
import { formatQuantity } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { gapBetween, type WallItem } from './wall-item.js'

/** Least bearing of a lintel on masonry, 4 in [m]. TMS 402; read second-hand, see docs/references/trade.md. */
export const leastBearing = 0.1
const caution =
  'A screening value: a licensed engineer designs the lintel and its bearing, and local code rules.'

/** Bearings must lie inside the wall, be long enough, and be free of openings. Embeds in them are clashes already. */
export function checkBearings(job: Job, wall: Wall, items: readonly WallItem[]): readonly Finding[] {
  const length = pathLength(wall.centreline)
  return items
    .filter(item => item.what === 'bearing')
    .flatMap(seat => {
      const out = Math.max(-seat.along[0], seat.along[1] - length, seat.up[1] - wall.top)
      const bearing = seat.along[1] - seat.along[0]
      return [
        ...(out > 0.001 ? [outside(job, wall, seat, out)] : []),
        ...(bearing < leastBearing - 1e-9 ? [short(job, seat, bearing)] : []),
        ...weakened(job, wall, seat, items),
      ]
    })
}

function outside(job: Job, wall: Wall, seat: WallItem, out: number): Finding {
  return {
    check: 'lintel-bearing',
    at: seat.id,
    demand: out,
    capacity: 0,
    unit: 'm',
    source: 'the job',
    verdict: 'fail',
    say: `The lintel over ${seat.id} reaches ${formatQuantity(out, 'length', job.units)} beyond wall ${wall.name}; move the opening or shorten the bearing. ${caution}`,
  }
}

function short(job: Job, seat: WallItem, bearing: number): Finding {
  return {
    check: 'lintel-bearing',
    at: seat.id,
    demand: leastBearing,
    capacity: bearing,
    unit: 'm',
    source: '[TMS402]',
    verdict: 'fail',
    say: `The lintel over ${seat.id} bears on ${formatQuantity(bearing, 'length', job.units)}; masonry practice asks for at least ${formatQuantity(leastBearing, 'length', job.units)}. ${caution}`,
  }
}

/** Anything cut out right below a bearing takes away what it rests on: look one bearing height of three beads down. */
function weakened(job: Job, wall: Wall, seat: WallItem, items: readonly WallItem[]): Finding[] {
  const depth = 3 * job.print.beadWidth
  const below = { along: seat.along, up: [seat.up[0] - depth, seat.up[0]] as const }
  return items
    .filter(item => item.id !== seat.id && item.what !== 'bearing' && item.what !== 'column')
    .filter(item => -gapBetween(item.along, below.along) > 0.001 && -gapBetween(item.up, below.up) > 0.001)
    .filter(item => -gapBetween(item.up, seat.up) <= 0.001)
    .map(item => ({
      check: 'lintel-bearing',
      at: `${seat.id} ${item.id}`,
      demand: depth,
      capacity: Math.max(0, seat.up[0] - item.up[1]),
      unit: 'm',
      source: 'common practice, no source',
      verdict: 'warn' as const,
      say: `${item.what} ${item.id} in wall ${wall.name} lies right below the lintel bearing of ${seat.id}. Move it down or aside. ${caution}`,
    }))
}
