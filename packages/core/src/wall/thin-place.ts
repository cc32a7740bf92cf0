import {
  difference,
  flattenPath,
  inflate,
  inset,
  polygonArea,
  polygonCentroid,
  type Region,
  regionArea,
  stroke,
  unionRings,
} from '../geometry/index.js'
import type { Metres, SquareMetres } from '../quantity/index.js'
import type { Band } from './bead.js'
import type { Body } from './body.js'
import type { WallParts } from './parts.js'
import type { RawBead } from './raw-bead.js'

type ThinPlace = Band['thinPlaces'][number]

/**
 * Where the beads cannot do what the plan asks: material no bead fits into, walls where two beads run into each other,
 * and recesses that leave too little behind them.
 */
export function thinPlaces(
  { print }: WallParts,
  body: Body,
  beads: readonly RawBead[],
): readonly ThinPlace[] {
  const width = print.beadWidth
  // A wall exactly one bead thick fits its bead: half a per cent is rounding.
  const reached = opened(body.region, width * 0.4975)
  // Corners sharper than a bead can fill leave scraps; a bead's own corner is (1 − π/4)(w/2)².
  const scrap = 0.35 * width ** 2
  const narrow = places(lost(body.region, reached, scrap), scrap, 'thin', narrowWords(width))
  return [
    ...narrow,
    ...doubledPlaces(body, reached, width, 4 * scrap),
    ...voidPlaces(body, reached, beads, scrap),
    ...recessPlaces(body, width),
  ]
}

const narrowWords = (width: Metres) =>
  `a ${millimetres(width)} bead does not fit here; widen the wall or move the opening`

function doubledPlaces(
  body: Body,
  reached: Region,
  width: Metres,
  least: SquareMetres,
): readonly ThinPlace[] {
  if (body.kind !== 'double') return []
  const tight = lost(reached, opened(body.region, width * 0.995), least)
  const known = body.cuts.flatMap(cut => (cut.skipped ? [cut.skipped] : []))
  const rest = known.length > 0 ? difference(tight, inflate(unionRings(known), 2 * width, 'square')) : tight
  return places(
    rest,
    least,
    'doubled',
    `two beads need ${millimetres(2 * width)}, less is there: they lie on each other; make the wall thicker`,
  )
}

/** Hollows that the loops of a solid wall, or the line of a single one, leave where walls meet or turn sharply. */
function voidPlaces(body: Body, reached: Region, beads: readonly RawBead[], least: SquareMetres) {
  const [first] = beads
  if (body.kind === 'double' || !first) return []
  const lines = beads.map(({ path }) => {
    const line = flattenPath(path, 1e-4)
    return path.closed ? [...line, line[0]!] : line
  })
  const hollow = difference(reached, stroke(lines, first.width, 'round', 'round', 1e-4))
  return places(hollow, least, 'void', 'the beads leave a hollow here; fill it by hand or open the angle')
}

/** What a region lost when it was opened; not looked for when all of it together is too little to tell. */
const lost = (region: Region, left: Region, least: SquareMetres): Region =>
  regionArea(region) - regionArea(left) < least / 2 ? [] : difference(region, left)

/** What is left of a region shrunk and grown again: parts thinner than twice the distance are lost. */
const opened = (region: Region, by: Metres): Region => inflate(inset(region, by, 'mitre'), by, 'mitre')

function places(
  region: Region,
  least: SquareMetres,
  kind: 'thin' | 'doubled' | 'void',
  say: string,
): readonly ThinPlace[] {
  return region
    .map(polygon => ({ point: polygonCentroid(polygon), area: polygonArea(polygon), kind, say }))
    .filter(({ area }) => area > least)
}

function recessPlaces({ cuts }: Body, width: Metres): readonly ThinPlace[] {
  return cuts
    .filter(({ interrupted, skipped }) => interrupted || skipped)
    .map(({ ref, middle, left, interrupted }) => {
      const found = `${ref} leaves ${millimetres(left)} of wall`
      return {
        point: middle,
        area: 0,
        kind: 'recess' as const,
        say: interrupted
          ? `${found}, less than a ${millimetres(width)} bead: the wall is interrupted here; make ${ref} shallower`
          : `${found}, too little for two ${millimetres(width)} beads: one wythe stops at its sides; make ${ref} shallower or the wall thicker`,
      }
    })
}

const millimetres = (length: Metres): string => `${Math.round(length * 1000)} mm`
