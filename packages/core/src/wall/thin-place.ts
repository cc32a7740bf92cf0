import {
  difference,
  flattenPath,
  inflate,
  inset,
  type Path,
  type Point,
  type Polygon,
  polygonArea,
  polygonCentroid,
  type Region,
  regionArea,
  shrinksWhole,
  stroke,
  unionRings,
} from '../geometry/index.js'
import type { PrintRules } from '../job/index.js'
import type { Metres, SquareMetres } from '../quantity/index.js'
import type { Band } from './bead.js'
import type { Body } from './body.js'
import type { RawBead } from './raw-bead.js'
import { remembered } from './remembered.js'
import { size, skinMiddle } from './skin.js'
import { skinRing } from './skin-beads.js'
import { fillOf, solidSkins } from './solid-wall.js'

type ThinPlace = Band['thinPlaces'][number]

/**
 * Where the beads cannot do what the plan asks: material no bead fits into, walls where two beads run into each other,
 * and recesses that leave too little behind them.
 */
export const thinPlaces = (
  body: Body,
  beads: readonly RawBead[],
  print: PrintRules,
): readonly ThinPlace[] => [
  ...narrowPlaces(body, print),
  ...doubledPlaces(body, print),
  ...crowdedPlaces(body, print),
  ...voidPlaces(body, beads, print),
  ...recessPlaces(body),
  ...skinPlaces(body, print),
]

/** Corners sharper than a bead can fill leave scraps; a bead's own corner is (1 − π/4)(w/2)². */
const scrap = ({ beadWidth }: PrintRules): SquareMetres => 0.35 * beadWidth ** 2

/** Whether two beads side by side reach all of a polygon. A wall exactly two beads thick fits them: half a per cent is rounding. */
const fitsTwo = remembered((polygon: Polygon, { beadWidth }) => shrinksWhole(polygon, 0.995 * beadWidth))

/** What one bead reaches of it. */
const reachedByOne = remembered(
  (polygon: Polygon, print): Region =>
    fitsTwo(polygon, print) ? [polygon] : opened(polygon, 0.4975 * print.beadWidth),
)

const narrowIn = remembered(
  (polygon: Polygon, print): Region => lost([polygon], reachedByOne(polygon, print), scrap(print)),
)

const narrowPlaces = remembered((body: Body, print): readonly ThinPlace[] =>
  places(
    body.region.flatMap(polygon => narrowIn(polygon, print)),
    scrap(print),
    'thin',
  ),
)

/** Where one bead fits, but not two side by side. */
const doubledIn = remembered((polygon: Polygon, print): Region => {
  if (fitsTwo(polygon, print)) return []
  const reached = reachedByOne(polygon, print)
  return lost(reached, opened(polygon, 0.995 * print.beadWidth), 4 * scrap(print))
})

const doubledPlaces = remembered((body: Body, print): readonly ThinPlace[] => {
  if (body.kind !== 'double') return []
  const width = print.beadWidth
  const tight = body.region.flatMap(polygon => doubledIn(polygon, print))
  const known = body.cuts.flatMap(cut => (cut.skipped ? [cut.skipped] : []))
  const rest =
    known.length > 0 && tight.length > 0
      ? difference(tight, inflate(unionRings(known), 2 * width, 'square'))
      : tight
  return places(rest, 4 * scrap(print), 'doubled')
})

/** A tenth less than two beads need lets them flow into each other a little higher; below that they lie on each other. */
const CROWDED = 0.9

/** Piers, ends and necks of a solid wall that its outermost loop goes round with its two beads on each other. Behind recesses it does not. */
const crowdedPlaces = remembered((body: Body, print): readonly ThinPlace[] => {
  const { count, pitch, width } = fillOf(body, print)
  if (body.kind !== 'solid' || count === 1) return []
  const need = width + pitch
  const tight = body.region.flatMap(polygon =>
    lost(reachedByOne(polygon, print), opened(polygon, (CROWDED * need) / 2), 4 * scrap(print)),
  )
  const skins = solidSkins(body, print).map(skin => skinRing(skin, width))
  const rest = tight.length > 0 && skins.length > 0 ? difference(tight, unionRings(skins)) : tight
  return places(rest, 4 * scrap(print), 'doubled').map(place => ({ ...place, need }))
})

/** Hollows that the loops of a solid wall, or the line of a single one, leave where walls meet or turn sharply. */
function voidPlaces(body: Body, beads: readonly RawBead[], print: PrintRules): readonly ThinPlace[] {
  if (body.kind === 'double' || beads.length === 0) return []
  const reached = body.region.flatMap(polygon => reachedByOne(polygon, print))
  const strokes = [...new Set(beads.map(({ width }) => width))].map(width => {
    const own = beads.filter(bead => bead.width === width)
    return stroke(
      own.map(({ path }) => lineOf(path)),
      width,
      'round',
      'round',
      1e-4,
    )
  })
  const hollow = difference(reached, ...strokes)
  return places(hollow, scrap(print), 'void')
}

function lineOf(path: Path): readonly Point[] {
  const line = flattenPath(path, 1e-4)
  return path.closed ? [...line, line[0]!] : line
}

/** What a region lost when it was opened; not looked for when all of it together is too little to tell. */
const lost = (region: Region, left: Region, least: SquareMetres): Region =>
  regionArea(region) - regionArea(left) < least / 2 ? [] : difference(region, left)

/** What is left of a polygon shrunk and grown again: parts thinner than twice the distance are lost. Most walls lose nothing. */
const opened = (polygon: Polygon, by: Metres): Region =>
  shrinksWhole(polygon, by) ? [polygon] : inflate(inset([polygon], by, 'mitre'), by, 'mitre')

function places(
  region: Region,
  least: SquareMetres,
  kind: 'thin' | 'doubled' | 'void',
): readonly ThinPlace[] {
  return region
    .map(polygon => ({ point: polygonCentroid(polygon), area: polygonArea(polygon), kind }))
    .filter(({ area }) => area > least)
}

function recessPlaces({ cuts }: Body): readonly ThinPlace[] {
  return cuts
    .filter(({ interrupted, skipped }) => interrupted || skipped)
    .map(({ ref, middle, left, interrupted }) => ({
      point: middle,
      area: 0,
      kind: 'recess',
      recess: { ref, left, interrupted },
    }))
}

/** Skins of a solid wall that recesses beside each other leave thinner than a bead: one alone would have interrupted it. */
function skinPlaces(body: Body, print: PrintRules): readonly ThinPlace[] {
  if (body.kind !== 'solid') return []
  return solidSkins(body, print)
    .filter(skin => size(skin) < print.beadWidth - 1e-9)
    .map(skin => ({
      point: skinMiddle(skin),
      area: size(skin) * (skin.to - skin.from),
      kind: 'recess',
      recess: { ref: skin.refs.join(' and '), left: size(skin), interrupted: true },
    }))
}
