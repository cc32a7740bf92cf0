import {
  type NearestOnPath,
  nearestOnPath,
  type Path,
  pathLength,
  pathPoint,
  pathTangent,
  pointStations,
} from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Band } from '../wall/index.js'
import { turnBetween } from './centreline.js'
import { touchedStations } from './shell/line-mesh.js'
import type { StandGeometry, StandMake, StandPanel } from './stand-geometry.js'

/** A run of a wythe that nothing ties, as it is printed. */
interface Bay {
  readonly point: readonly [number, number]
  /** Free width of a plate simply supported at both ends that bears as much. */
  readonly width: Metres
}

/** A fold clamps the end of a bay: a plate clamped at one end bears what one of 0.85 of its width does when it is not. */
const FOLDED_END = 0.85
const FOLD = Math.PI / 6
/** A fillet this tight is a fold. */
const TIGHT: Metres = 0.15

/**
 * Panels with the bays their wythes really have, band by band: ties leave room for boxes, chases and columns and then
 * stand wider apart than the drawing says.
 */
export function withPrintedBays(
  geometry: StandGeometry,
  walls: readonly Wall[],
  bands: readonly Band[],
  layerHeight: Metres,
): StandGeometry {
  if (bands.length === 0) return geometry
  const byBand = bands.map(band => ({
    bottom: (band.fromLayer - 1) * layerHeight,
    top: band.toLayer * layerHeight,
    bays: keptBays(band),
  }))
  const stationsOn = new Map<string, Stations>()
  const panels = geometry.panels.map(panel => {
    const wall = walls.find(({ id }) => id === panel.wall)
    if (panel.make.kind !== 'double' || !wall) return panel
    const stations = stationsOn.get(wall.id) ?? stationsAlong(wall)
    stationsOn.set(wall.id, stations)
    return { ...panel, bays: baysOf(panel, pathLength(wall.centreline), stations, byBand) }
  })
  return { ...geometry, panels }
}

interface BandOfBays {
  readonly bottom: Metres
  readonly top: Metres
  readonly bays: readonly Bay[]
}

/** Where a bay comes nearest to a wall. */
type Stations = (bay: Bay) => NearestOnPath

/** The panels of a wall, one over the other, ask for the same bays: each is looked up once. */
function stationsAlong({ centreline }: Wall): Stations {
  const known = new Map<Bay, NearestOnPath>()
  return bay => {
    const near = known.get(bay) ?? nearestOnPath(centreline, bay.point)
    known.set(bay, near)
    return near
  }
}

function baysOf(
  panel: StandPanel,
  wallLength: Metres,
  stations: Stations,
  byBand: readonly BandOfBays[],
): NonNullable<StandPanel['bays']> {
  return byBand.flatMap(({ bottom, top, bays }) => {
    if (bottom >= panel.top || top <= panel.bottom) return []
    const own = bays.filter(bay => liesOn(stations(bay), wallLength, panel))
    return own.length === 0 ? [] : [{ bottom, top, width: Math.max(...own.map(({ width }) => width)) }]
  })
}

/**
 * The make-up of a panel in a lift between two heights, its pitch widened to its widest bay. A bay counts once bays as
 * wide stand over at least half their width, or over a quarter of it up to the lift's top: the ties over and under a box
 * hold what the box leaves free, but nothing is over the top yet. A bay from foot to top counts however low the lift.
 */
export function makeInLift({ make, bays = [] }: StandPanel, foot: Metres, top: Metres): StandMake {
  if (make.kind !== 'double') return make
  const inLift = bays
    .map(({ bottom, top: end, width }) => ({ width, from: Math.max(bottom, foot), to: Math.min(end, top) }))
    .filter(({ from, to }) => to > from + 1e-9)
  const counts = (width: Metres): boolean => {
    const asWide = inLift.filter(bay => bay.width >= 0.9 * width)
    const free = freeUnderTop(asWide, top)
    const standing = asWide.reduce((sum, { from, to }) => sum + to - from, 0)
    return standing >= width / 2 || free >= Math.min(width / 4, top - foot) - 1e-9
  }
  const widest = Math.max(0, ...inLift.filter(({ width }) => counts(width)).map(({ width }) => width))
  const pitch = make.web === 'crosstie' ? 2 * widest : widest
  // up to whole steps, so that panels that hardly differ share an answer
  return { ...make, pitch: Math.max(make.pitch, Math.ceil(pitch / PITCH_STEP - 1e-9) * PITCH_STEP) }
}

/** How far down from a lift's top bays stand over each other without a break. */
function freeUnderTop(bays: readonly { readonly from: Metres; readonly to: Metres }[], top: Metres): Metres {
  let reached = top
  for (const { from, to } of bays.slice().sort((a, b) => b.to - a.to))
    if (to >= reached - 1e-9) reached = Math.min(reached, from)
  return top - reached
}

const PITCH_STEP: Metres = 0.02

function liesOn(
  { station, distance }: NearestOnPath,
  length: Metres,
  { from, to, make }: StandPanel,
): boolean {
  const within = [0, length].some(lap => station + lap >= from && station + lap <= to)
  return within && distance < 0.6 * make.thickness
}

interface KnownBays {
  readonly beads: Band['beads']
  readonly bays: readonly Bay[]
}

/**
 * Bays by the first path of a band: bands of one plan share their paths, which never change, from lift to lift and from
 * one plan of the job to the next; forgotten with the path.
 */
const known = new WeakMap<Path, readonly KnownBays[]>()

function keptBays({ beads }: Band): readonly Bay[] {
  const first = beads[0]
  if (!first) return []
  const same = (known.get(first.path) ?? []).find(one => areSame(one.beads, beads))
  if (same) return same.bays
  const bays = baysBetween(beads)
  known.set(first.path, [...(known.get(first.path) ?? []), { beads, bays }])
  return bays
}

const areSame = (a: Band['beads'], b: Band['beads']): boolean =>
  a.length === b.length &&
  a.every(({ path, role, width }, i) => {
    const other = b[i]!
    return path === other.path && role === other.role && width === other.width
  })

function baysBetween(all: Band['beads']): readonly Bay[] {
  const beads = all.filter(({ role }) => role !== 'fill')
  const touched = touchedStations(beads.map(({ path, width }) => ({ path, thickness: width })))
  return beads.flatMap(({ role, path }, i) => (role === 'wythe' ? freeRuns(path, touched[i]!) : []))
}

/** Runs between ties and folds, one end after the other round a closed wythe. */
function freeRuns(path: Path, ties: readonly Metres[]): readonly Bay[] {
  const length = pathLength(path)
  const ends = [
    ...ties.map(station => ({ station, folded: false })),
    ...folds(path).map(station => ({ station, folded: true })),
  ].sort((a, b) => a.station - b.station)
  return ends.flatMap((end, i) => {
    const next =
      ends[i + 1] ?? (path.closed ? { ...ends[0]!, station: ends[0]!.station + length } : undefined)
    if (!next) return []
    const run = next.station - end.station
    const share = (end.folded ? FOLDED_END : 1) * (next.folded ? FOLDED_END : 1)
    return [{ point: pathPoint(path, ((end.station + next.station) / 2) % length), width: run * share }]
  })
}

/** Stations at which a wythe turns sharply: corners, and the middles of tight fillets. */
function folds(path: Path): readonly Metres[] {
  const stations = pointStations(path)
  return stations.flatMap((station, i) => {
    const next = stations[i + 1]
    const bulge = path.bulges[i] ?? 0
    const tight =
      next !== undefined &&
      Math.abs(4 * Math.atan(bulge)) > FOLD &&
      next - station < TIGHT * Math.abs(4 * Math.atan(bulge))
    const inside = path.closed ? next !== undefined : i > 0 && next !== undefined
    const corner = inside && headingChange(path, station) > FOLD
    return [...(corner ? [station] : []), ...(tight ? [(station + next) / 2] : [])]
  })
}

function headingChange(path: Path, station: Metres): number {
  const length = pathLength(path)
  const [before, after] = [station - 1e-5 + length, station + 1e-5].map(at => pathTangent(path, at % length))
  return turnBetween(Math.atan2(before![1], before![0]), Math.atan2(after![1], after![0]))
}
