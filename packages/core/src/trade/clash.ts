import { pathLength } from '../geometry/index.js'
import type { Job, Wall } from '../job/index.js'
import { formatQuantity, type Metres } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { checkReach } from './box-reach.js'
import { cornersOf } from './corner.js'
import { checkBearings } from './lintel-bearing.js'
import { placeAt } from './station.js'
import { gapBetween, itemsOf, type WallItem } from './wall-item.js'

/** Blocks that share less than this touch, they do not overlap [m]. */
const touching = 0.001
const practice = 'common practice, no source'

/** Everything in the walls that gets in the way of something else, or that cannot be built where it is drawn. */
export function checkClashes(job: Job): readonly Finding[] {
  return job.walls.flatMap(wall => {
    const items = itemsOf(job, wall)
    return [
      ...insideWall(job, wall, items),
      ...overlaps(job, wall, items),
      ...edges(job, wall, items),
      ...checkBearings(job, wall, items),
      ...checkReach(wall, items),
    ]
  })
}

const isEmbed = (item: WallItem): boolean => !['opening', 'lintel', 'bearing', 'column'].includes(item.what)
const said = (length: Metres, job: Job): string => formatQuantity(length, 'length', job.units)
const centre = (wall: Wall, item: WallItem) =>
  placeAt(wall.centreline, (item.along[0] + item.along[1]) / 2).point

/** Sticking out of the wall's ends, top, base or thickness. */
function insideWall(job: Job, wall: Wall, items: readonly WallItem[]): Finding[] {
  const length = pathLength(wall.centreline)
  return items
    .filter(item => item.what !== 'bearing' && item.what !== 'lintel')
    .flatMap(item => {
      const out = Math.max(
        -item.along[0],
        item.along[1] - length,
        wall.base - item.up[0],
        item.up[1] - wall.top,
        -item.through[0],
        item.through[1] - wall.thickness,
      )
      if (out <= touching) return []
      return [
        {
          check: 'inside-wall',
          at: item.id,
          point: centre(wall, item),
          demand: out,
          capacity: 0,
          unit: 'm',
          source: 'the job',
          verdict: 'fail' as const,
          say: `${item.id} sticks ${said(out, job)} out of wall ${wall.name}; move it or make it smaller.`,
        },
      ]
    })
}

/** Pairs that claim the same room. A box, sleeve, pipe or strap may run into a chase: that is what a chase is for. */
function overlaps(job: Job, wall: Wall, items: readonly WallItem[]): Finding[] {
  const findings: Finding[] = []
  items.forEach((a, index) => {
    for (const b of items.slice(index + 1)) {
      if (a.id === b.id || mayMeet(a, b) || mayMeet(b, a)) continue
      const along = -gapBetween(a.along, b.along)
      const up = -gapBetween(a.up, b.up)
      const through = -gapBetween(a.through, b.through)
      const shared = Math.min(along, up, through)
      if (shared <= touching) continue
      findings.push({
        check: 'clash',
        at: `${a.id} ${b.id}`,
        point: centre(wall, a),
        demand: shared,
        capacity: 0,
        unit: 'm',
        source: 'the job',
        verdict: 'fail',
        say: `${title(a)} and ${title(b)} in wall ${wall.name} share ${said(along, job)} along, ${said(up, job)} up and ${said(through, job)} of its thickness; move one of them.`,
      })
    }
  })
  return findings
}

function mayMeet(a: WallItem, b: WallItem): boolean {
  if (b.what === 'chase') return ['box', 'sleeve', 'pipe', 'strap'].includes(a.what)
  // Anchors and plates of the structure are cast into its columns on purpose.
  return b.what === 'column' && a.trade === 'structure'
}

const title = (item: WallItem): string =>
  item.what === 'bearing' ? `the lintel bearing of ${item.id}` : `${item.what} ${item.id}`

/** Cut or left-out places need a sound strip of two beads' width to the next jamb and to the next corner of their face. */
function edges(job: Job, wall: Wall, items: readonly WallItem[]): Finding[] {
  const least = 2 * job.print.beadWidth
  const corners = cornersOf(wall, job.walls)
  const jambs = items.filter(item => item.what === 'opening')
  return items.filter(isEmbed).flatMap(item => {
    const besides = jambs.filter(jamb => -gapBetween(jamb.up, item.up) > touching)
    const toJamb = besides.map(jamb => ({
      name: `the jamb of ${jamb.id}`,
      gap: gapBetween(jamb.along, item.along),
    }))
    const toCorner = corners
      .filter(c => item.face === 'through' || item.face === 'middle' || c.face === item.face)
      .map(c => ({
        name: `the ${c.name}`,
        gap: c.towards === 1 ? item.along[0] - c.station : c.station - item.along[1],
      }))
      .filter(c => c.gap > -touching)
    const close = [...toJamb, ...toCorner]
      .filter(edge => edge.gap > -touching && edge.gap < least - touching)
      .sort((a, b) => a.gap - b.gap)[0]
    if (!close) return []
    return [
      {
        check: 'edge-distance',
        at: item.id,
        point: centre(wall, item),
        demand: least,
        capacity: close.gap,
        unit: 'm',
        source: practice,
        verdict: 'warn' as const,
        say: `${title(item)} lies ${said(close.gap, job)} from ${close.name}; a strip under ${said(least, job)} (two beads) breaks away easily. Move it, or tell the engineer.`,
      },
    ]
  })
}
