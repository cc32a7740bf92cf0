import { type Point, pathNormal, pathPoint, plus, type Ring, times } from '../geometry/index.js'
import type { Embed, Opening, PrintRules, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { lateralStrip } from './strip.js'

/** Recess cutters stand this far proud of the face, so that no skin of the chords' rounding is left on it. */
const proud: Metres = 1e-4

/** What an opening or an embed takes out of the body, and what is left behind it. */
export interface Cut {
  readonly ref: string
  readonly ring: Ring
  readonly middle: Point
  /** Thickness left behind a recess; 0 where nothing is left. */
  readonly left: Metres
  /** The recess was to leave something, but less than a bead: the wythe stops at its sides. */
  readonly interrupted: boolean
  /** Where two beads would not fit behind the recess: the strip in which the nearer one is left out. */
  readonly skipped?: Ring
  readonly taken: Taken
}

/** A part of a wall in plan: stations along it, and distances left of its centreline. */
export interface Taken {
  readonly wall: Wall
  readonly from: Metres
  readonly to: Metres
  readonly low: Metres
  readonly high: Metres
}

export const opensAt = ({ sill, head, lintel }: Opening, z: Metres): boolean =>
  sill < z && z <= head + (lintel?.height ?? 0)

export const liesAt = ({ bottom, height }: Embed, z: Metres): boolean => bottom < z && z <= bottom + height

/** Laid on a layer and printed over, it leaves the plan alone; all else cuts the body or keeps the tie away. */
export const shapesPlan = (embed: Embed): boolean =>
  embed.method === 'gap' || embed.face === 'middle' || keepsTieAway.has(embed.kind)

const keepsTieAway: ReadonlySet<Embed['kind']> = new Set(['box', 'pipe', 'sleeve', 'niche', 'chase'])

export function openingCut({ id, at, width }: Opening, wall: Wall, outermost: Metres): Cut {
  const reach = outermost + proud
  const ring = lateralStrip(wall.centreline, at - width / 2, at + width / 2, -reach, reach)
  const taken = wholeOf(wall, at - width / 2, at + width / 2)
  return { ref: id, ring, middle: pathPoint(wall.centreline, at), left: 0, interrupted: false, taken }
}

/** A wall between two stations, from face to face. */
export const wholeOf = (wall: Wall, from: Metres, to: Metres): Taken => ({
  wall,
  from,
  to,
  low: -wall.thickness / 2,
  high: wall.thickness / 2,
})

/** Wall left behind a `gap` embed in a face, or on either side of one in the middle [m]. */
const leftBy = ({ face, depth }: Embed, { thickness }: Wall): Metres =>
  face === 'middle' ? (thickness - depth) / 2 : thickness - depth

/** Whether a `gap` embed interrupts its wall: right through, or for want of a bead's width behind it. */
export function cutsThrough(embed: Embed, wall: Wall, print: PrintRules): boolean {
  if (embed.method !== 'gap') return false
  if (embed.face === 'through') return true
  if (embed.face === 'middle' && wall.makeUp.kind === 'double') return false
  return leftBy(embed, wall) < print.beadWidth - 1e-9
}

/** What a `gap` embed takes away; nothing when it lies in an open cavity. */
export function embedCut(embed: Embed, wall: Wall, outermost: Metres, print: PrintRules): Cut | undefined {
  if (embed.method !== 'gap') return undefined
  const { id, at, width, depth, face } = embed
  const middle = embedMiddle(embed, wall)
  const strip = (low: Metres, high: Metres, wider = 0) =>
    lateralStrip(wall.centreline, at - width / 2 - wider, at + width / 2 + wider, low, high)
  const through = strip(-outermost - proud, outermost + proud)
  const whole = wholeOf(wall, at - width / 2, at + width / 2)
  if (face === 'through') return { ref: id, ring: through, middle, left: 0, interrupted: false, taken: whole }
  if (face === 'middle' && wall.makeUp.kind === 'double') return undefined
  const left = leftBy(embed, wall)
  if (cutsThrough(embed, wall, print))
    return {
      ref: id,
      ring: through,
      middle,
      left: face === 'middle' ? 2 * left : left,
      interrupted: true,
      taken: whole,
    }
  const taken = { ...whole, ...takenAcross(embed, wall) }
  if (face === 'middle')
    return { ref: id, ring: strip(taken.low, taken.high), middle, left, interrupted: false, taken }
  const [back, out] = [wall.thickness / 2 - depth, outermost + proud]
  const banded = (low: Metres, high: Metres, wider = 0) =>
    face === 'left' ? strip(low, high, wider) : strip(-high, -low, wider)
  const cut = { ref: id, ring: banded(back, out), middle, left, interrupted: false, taken }
  const halfBead = print.beadWidth / 2
  const doubled = wall.makeUp.kind === 'double' && left < 2 * print.beadWidth - 1e-9
  return doubled ? { ...cut, skipped: banded(back - halfBead - 1e-5, back, halfBead + 1e-5) } : cut
}

function takenAcross({ face, depth }: Embed, { thickness }: Wall): Pick<Taken, 'low' | 'high'> {
  const half = thickness / 2
  if (face === 'middle') return { low: -depth / 2, high: depth / 2 }
  return face === 'left' ? { low: half - depth, high: half } : { low: -half, high: depth - half }
}

function embedMiddle({ at, face, depth }: Embed, { centreline, thickness }: Wall): Point {
  const lateral = { left: 1, right: -1, middle: 0, through: 0 }[face] * ((thickness - depth) / 2)
  return plus(pathPoint(centreline, at), times(pathNormal(centreline, at), lateral))
}
