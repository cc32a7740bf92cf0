import {
  difference,
  distance,
  flattenPath,
  inflate,
  inset,
  type Path,
  type Point,
  pathLength,
  pathNormal,
  pathPoint,
  plus,
  polygonArea,
  polygonCentroid,
  type Region,
  regionContains,
  regionRings,
  ringArea,
  ringLength,
  selfCrossings,
  stroke,
  times,
  union,
} from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'
import { bandLayerVolume } from './band-volume.js'
import type { Band, Bead } from './bead.js'
import { faceLoss } from './bead-section.js'

/**
 * What must hold of every band, by name; each answers in sentences about what does not, with none when all is well.
 */
export const bandInvariants: Readonly<Record<string, (band: Band) => readonly string[]>> = {
  'bodies have area': ({ body }) =>
    regionRings(body).flatMap((ring, i) =>
      Math.abs(ringArea(ring)) > 0 ? [] : [`body ring ${i} has no area`],
    ),
  'paths are whole, loops closed, simple and turned with the face on their right': band =>
    band.beads.flatMap(bead => validateBead(band, bead)),
  'no bead leaves the body': beadsInside,
  'faces are covered, or the thin place is told': facesCovered,
  'solid walls hold the volume of their body': solidFull,
}

/** All that does not hold of a band; empty when all is well. */
export const validateBand = (band: Band): readonly string[] =>
  Object.values(bandInvariants).flatMap(invariant => invariant(band))

function validateBead(band: Band, { id, role, path, width, height }: Bead): readonly string[] {
  const wrong: string[] = []
  if (path.points.flat().some(value => !Number.isFinite(value)))
    wrong.push(`${id} has a coordinate that is no number`)
  if (path.bulges.length !== path.points.length - (path.closed ? 0 : 1))
    return [...wrong, `${id} misses a bulge`]
  if (width < height) wrong.push(`${id} is narrower than it is high`)
  const crossed = selfCrossings(path)[0]
  if (crossed) wrong.push(`${id} crosses itself at ${at(crossed)}`)
  if (role === 'wythe' && !faceOnRight(band.body, path, width)) wrong.push(`${id} has its face on the left`)
  return wrong
}

/** Where only one side of a wythe, a little over half a bead away, is material, it is the left more often than not. */
function faceOnRight(body: Region, path: Path, width: Metres): boolean {
  const length = pathLength(path)
  const stations = [0.07, 0.21, 0.34, 0.48, 0.55, 0.69, 0.83, 0.94].map(share => share * length)
  const inside = (station: Metres, side: 1 | -1) => {
    const away = side * (width / 2 + 1e-3)
    return regionContains(body, plus(pathPoint(path, station), times(pathNormal(path, station), away)))
  }
  const votes = stations.map(station => Number(inside(station, 1)) - Number(inside(station, -1)))
  return votes.reduce((sum, vote) => sum + vote, 0) >= 0
}

/** Half a millimetre: chords, fitted arcs and the engine's rounding together stay well below. */
const printTolerance: Metres = 5e-4
/** Chords of the strokes that are compared with the body. */
const coarse: Metres = 2e-4

/** All beads at once, for speed; only when something sticks out is it looked for bead by bead. */
function beadsInside({ body, beads }: Band): readonly string[] {
  const wide = inflate(body, printTolerance, 'mitre')
  const out = difference(strokeOf(beads), wide).filter(polygon => polygonArea(polygon) > 1e-6)
  if (out.length === 0) return []
  return beads.flatMap(bead =>
    difference(strokeOf([bead]), wide)
      // A single bead that laps onto another wall may bulge beside that wall's rounded corner.
      .filter(polygon => polygonArea(polygon) > (bead.role === 'line' ? 0.15 * bead.width ** 2 : 1e-6))
      .map(polygon => `${bead.id} leaves the body at ${at(polygonCentroid(polygon))}`),
  )
}

function facesCovered({ body, beads, thinPlaces }: Band): readonly string[] {
  const width = Math.max(...beads.map(bead => bead.width), 0)
  if (width === 0) return body.length > 0 ? ['the body has no beads'] : []
  const skin = body.flatMap(polygon => difference([polygon], inset([polygon], 0.98 * width, 'round')))
  const told = (point: Point) => thinPlaces.some(place => distance(place.point, point) < 12 * width)
  return (
    withoutHairs(difference(skin, strokeOf(beads)))
      .map(polygon => ({ area: polygonArea(polygon), point: polygonCentroid(polygon) }))
      // Two scraps, each too small to be told of as a thin place, may touch.
      .filter(({ area, point }) => area > 0.9 * width ** 2 && !told(point))
      .map(({ area, point }) => `${(area * 1e4).toFixed(1)} cm² of face at ${at(point)} have no bead`)
  )
}

/** Scraps hang together by hairs along a face that is covered but for rounding. */
function withoutHairs(region: Region): Region {
  const half = printTolerance / 2
  return inflate(inset(region, half, 'mitre'), half, 'mitre')
}

/** A solid wall holds as much as its body, less what the rounded sides leave along its faces, and what is told to stay hollow. */
function solidFull(band: Band): readonly string[] {
  const { body, bodyArea, beads, thinPlaces } = band
  const height = beads[0]?.height ?? 0
  const isSolid =
    beads.some(({ role }) => role === 'fill') &&
    beads.every(({ role }) => role === 'fill' || role === 'wythe')
  if (!isSolid) return []
  const faces = regionRings(body).reduce((sum, ring) => sum + ringLength(ring), 0)
  const wanted = bodyArea * height - faces * faceLoss(height)
  const told = thinPlaces.reduce((sum, { area }) => sum + area, 0) * height
  const off = bandLayerVolume(band) - wanted
  return Math.abs(off) > 0.04 * wanted + told
    ? [`the beads hold ${((100 * off) / wanted).toFixed(1)} % more than the body`]
    : []
}

function strokeOf(beads: readonly Bead[]): Region {
  const widths = [...new Set(beads.map(({ width }) => width))]
  return union(
    ...widths.map(width => {
      const lines = beads.filter(bead => bead.width === width).map(({ path }) => lineOf(path))
      return stroke(lines, width, 'round', 'round', coarse)
    }),
  )
}

function lineOf(path: Path): readonly Point[] {
  const line = flattenPath(path, coarse)
  return path.closed ? [...line, line[0]!] : line
}

const at = (point: Point): string => `(${point[0].toFixed(3)}, ${point[1].toFixed(3)})`
