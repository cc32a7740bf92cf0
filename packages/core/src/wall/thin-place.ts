import { difference, inflate, inset, polygonArea, polygonCentroid, type Region } from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'
import type { Band } from './bead.js'
import type { Body } from './body.js'
import type { WallParts } from './parts.js'

type ThinPlace = Band['thinPlaces'][number]

/**
 * Where the beads cannot do what the plan asks: material no bead fits into, walls where two beads run into each other,
 * and recesses that leave too little behind them.
 */
export function thinPlaces({ print }: WallParts, body: Body): readonly ThinPlace[] {
  const width = print.beadWidth
  const reached = opened(body.region, width / 2)
  // A round bead leaves (1 − π/4)(w/2)² free in every square corner; only what is more than a few of them is a place.
  const scrap = 0.35 * width ** 2
  const narrow = places(
    difference(body.region, reached),
    scrap,
    () => `${millimetres(width)} beads do not fit here; widen the wall or move the opening`,
  )
  const doubled =
    body.kind === 'double'
      ? places(
          difference(reached, opened(body.region, width)),
          4 * scrap,
          () =>
            `two beads need ${millimetres(2 * width)}, less is there: they would lie on each other; make the wall thicker here`,
        )
      : []
  return [...narrow, ...doubled, ...recessPlaces(body, width)]
}

/** What a disc of the radius reaches inside the region. */
const opened = (region: Region, radius: Metres): Region =>
  inflate(inset(region, radius, 'mitre'), radius, 'round')

function places(region: Region, least: number, say: () => string): readonly ThinPlace[] {
  return region
    .map(polygon => ({ polygon, area: polygonArea(polygon) }))
    .filter(({ area }) => area > least)
    .map(({ polygon, area }) => ({ point: polygonCentroid(polygon), area, say: say() }))
}

function recessPlaces({ cuts }: Body, width: Metres): readonly ThinPlace[] {
  return cuts.flatMap(({ ref, middle, left, interrupted, skipped }): readonly ThinPlace[] => {
    if (interrupted)
      return [
        {
          point: middle,
          area: 0,
          say: `${ref} leaves ${millimetres(left)} of wall, less than a ${millimetres(width)} bead: the wall is interrupted here; make ${ref} shallower`,
        },
      ]
    if (skipped)
      return [
        {
          point: middle,
          area: 0,
          say: `${ref} leaves ${millimetres(left)} of wall, too little for two ${millimetres(width)} beads: one wythe stops at its sides; make ${ref} shallower or the wall thicker`,
        },
      ]
    return []
  })
}

const millimetres = (length: Metres): string => `${Math.round(length * 1000)} mm`
