import { type Point, pathLength, pathPoint } from '../geometry/index.js'
import type { Opening, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Joint } from './section.js'
import type { SectionJob, SectionOptions } from './section-job.js'

/** A place where the plan may be divided. `cost`: how unwelcome the joint is, 1 for an ordinary one. */
export interface Cut {
  readonly wall: string
  readonly at: Metres
  readonly point: Point
  readonly kind: Joint['kind']
  readonly ref: string
  readonly cost: number
  readonly isPinned: boolean
  readonly why: string
}

/** Cuts nearer than this to a wall's end, or to a junction, leave a stump nobody wants [m]. */
export const STUMP: Metres = 0.15

/**
 * Cuts within walls: marked joints, and openings.
 *
 * An opening up to the top of the wall is cut in its middle: nothing is printed there. Any other opening is cut in line
 * with a jamb, either of the two: sill and head then stay in one section, no joint runs through the middle of a lintel or a
 * sill panel, and masonry puts its control joints there for the same reason (common practice, no source).
 */
export function wallCuts(job: SectionJob, options: SectionOptions): readonly Cut[] {
  const forbidden = new Set(job.noCutAt)
  return job.walls.flatMap(wall => {
    const pinned = options.pinned?.filter(pin => pin.wall === wall.id) ?? []
    const pins = pinned.map(pin => cutAt(wall, pin.at, 'marked', wall.id, 0, 'the lead wants it'))
    if (forbidden.has(wall.id)) {
      return pins.map(pin => ({ ...pin, isPinned: true })).filter(cut => isWithin(wall, cut))
    }
    const marked = wall.joints.map(at => cutAt(wall, at, 'marked', wall.id, 0.8, 'marked in the wall'))
    const atOpenings = job.openings
      .filter(opening => opening.wall === wall.id && !forbidden.has(opening.id))
      .flatMap(opening => openingCuts(wall, opening))
    const free = [...marked, ...atOpenings].filter(
      cut => !pins.some(pin => Math.abs(pin.at - cut.at) < STUMP),
    )
    return [...pins.map(pin => ({ ...pin, isPinned: true })), ...distinct(free)].filter(cut =>
      isWithin(wall, cut),
    )
  })
}

function openingCuts(wall: Wall, opening: Opening): readonly Cut[] {
  const isThrough = opening.head >= wall.top - 1e-6 && opening.sill <= wall.base + 1e-6
  if (isThrough)
    return [cutAt(wall, opening.at, 'opening', opening.id, 0.2, 'nothing is printed in this opening')]
  return [-1, 1].map(side =>
    cutAt(wall, opening.at + (side * opening.width) / 2, 'opening', opening.id, 1, 'in line with a jamb'),
  )
}

const cutAt = (wall: Wall, at: Metres, kind: Joint['kind'], ref: string, cost: number, why: string): Cut => ({
  wall: wall.id,
  at,
  point: pathPoint(wall.centreline, Math.min(Math.max(at, 0), pathLength(wall.centreline))),
  kind,
  ref,
  cost,
  isPinned: false,
  why,
})

/** A marked joint at a jamb is one cut, the marked one. */
function distinct(cuts: readonly Cut[]): readonly Cut[] {
  return cuts.filter((cut, i) => !cuts.slice(0, i).some(other => Math.abs(other.at - cut.at) < STUMP / 3))
}

const isWithin = (wall: Wall, { at, isPinned }: Cut): boolean => {
  const stump = isPinned ? 1e-3 : STUMP
  return at > stump && at < pathLength(wall.centreline) - stump
}
