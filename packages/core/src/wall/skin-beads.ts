import {
  clipOpenLines,
  fitArcs,
  flattenPath,
  inset,
  intersection,
  offsetPath,
  type Path,
  type Point,
  pathLength,
  pathNormal,
  pathPoint,
  plus,
  type Region,
  type Ring,
  regionRings,
  ringLength,
  subPath,
  times,
  unionRings,
} from '../geometry/index.js'
import type { PrintRules } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { fillPitch, pitchOfNarrowest, type SolidFill, widthForPitch } from './bead-section.js'
import type { Body } from './body.js'
import type { RawBead } from './raw-bead.js'
import { FULL, type Skin, size } from './skin.js'
import { lateralStrip } from './strip.js'

/** The part of the plan that a skin takes up, and up to a distance into the thicker wall on either side of it. */
export const skinRing = (skin: Skin, into: Metres): Ring =>
  ringBetween(skin, [skin.from - (skin.thickerBefore ? into : 0), skin.to + (skin.thickerAfter ? into : 0)])

const ringBetween = ({ wall, reach }: Skin, [from, to]: Stations): Ring =>
  lateralStrip(wall.centreline, from, to, reach.low, reach.high)

type Stations = readonly [Metres, Metres]

/** Where beads lie that go round beside the loops: these reach into the skin where it ends, or goes on thinner. */
const reached = ({ from, to, thickerBefore, thickerAfter }: Skin, side: Metres): Stations => [
  from - (thickerBefore ? side : -side),
  to + (thickerAfter ? side : -side),
]

/**
 * What is left in a skin when the wall's loops have taken what they fill: one bead along its middle, two in a loop, or both,
 * as wide as it takes to fill it; across it behind a recess that is narrow. Where no bead is narrow enough it stays hollow,
 * and is told.
 */
export function skinBeads(
  body: Body,
  skin: Skin,
  { pitch, width }: SolidFill,
  print: PrintRules,
): readonly RawBead[] {
  const side = (width - pitch) / 2 + skin.loops * pitch
  const rest = size(skin) - 2 * side
  if (rest < FULL) return []
  const run = reached(skin, side)
  if (run[1] - run[0] < FULL) return []
  const room = intersection(inset(body.region, side, 'mitre'), unionRings([ringBetween(skin, run)]))
  const own = shareOf(rest, print)
  const isNarrow = run[1] - run[0] < Math.min(rest, 1.5 * own)
  const { paths, share } = isNarrow
    ? acrossSkin(skin, run, room, side, print)
    : alongSkin(skin, run, room, rest, own)
  if (share < pitchOfNarrowest(print.layerHeight) + 1e-9) return []
  const role = skin.loops === 0 && !isNarrow ? 'wythe' : 'fill'
  return paths.map(path => ({ role, path, width: widthForPitch(share, print.layerHeight) }))
}

/** Beads side by side no wider than the nozzle's own. */
const shareOf = (rest: Metres, { beadWidth, layerHeight }: PrintRules): Metres =>
  rest / Math.ceil(rest / fillPitch(beadWidth, layerHeight) - 1e-6)

/** Beads, and the pitch at which they fill. */
interface Filling {
  readonly paths: readonly Path[]
  readonly share: Metres
}

function alongSkin(
  { wall: { centreline }, low, high }: Skin,
  [from, to]: Stations,
  room: Region,
  rest: Metres,
  share: Metres,
): Filling {
  const count = Math.round(rest / share)
  const run = subPath(centreline, Math.max(0, from), Math.min(pathLength(centreline), to))
  const middle = offsetPath(run, (low + high) / 2)
  return {
    share,
    paths: [
      ...(count > 1 ? roundLoops(room, share) : []),
      ...(count % 2 === 1 ? lineIn(flattenPath(middle), room, rest / 2) : []),
    ],
  }
}

function acrossSkin(
  { wall: { centreline }, low, high }: Skin,
  [from, to]: Stations,
  room: Region,
  side: Metres,
  print: PrintRules,
): Filling {
  const share = shareOf(to - from, print)
  const count = Math.round((to - from) / share)
  const paths = Array.from({ length: count }, (_, i) => from + (i + 0.5) * share).flatMap(station => {
    const [middle, left] = [pathPoint(centreline, station), pathNormal(centreline, station)]
    const ends = [low + side, high - side].map(away => plus(middle, times(left, away)))
    return lineIn(ends, room, share / 2)
  })
  return { share, paths }
}

/** What of a line keeps as far from the edges of a room as beads beside it, or its own half, need; but for rounding. */
const lineIn = (line: readonly Point[], room: Region, off: Metres): readonly Path[] =>
  clipOpenLines([line], inset(room, off - ROUNDING, 'mitre'), 'inside')
    .map(part => fitArcs(part, false))
    .filter(path => pathLength(path) > 1e-3)

/** A room exactly as wide as its bead would leave no place for the middle of it. */
const ROUNDING: Metres = 4e-4

const roundLoops = (room: Region, pitch: Metres): readonly Path[] =>
  regionRings(inset(room, pitch / 2, 'mitre'))
    .filter(ring => ringLength(ring) >= 3 * pitch - 1e-6)
    .map(ring => fitArcs(ring, true))
