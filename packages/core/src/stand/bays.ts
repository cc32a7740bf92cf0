import {
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
  readonly bottom: Metres
  readonly top: Metres
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
  const bays = bands.map(band => baysOf(band, layerHeight))
  return { ...geometry, panels: geometry.panels.map(panel => withBays(panel, walls, bays)) }
}

function withBays(
  panel: StandPanel,
  walls: readonly Wall[],
  byBand: readonly (readonly Bay[])[],
): StandPanel {
  const wall = walls.find(({ id }) => id === panel.wall)
  if (panel.make.kind !== 'double' || !wall) return panel
  const bays = byBand.flatMap(bays => {
    const own = bays.filter(
      bay => bay.bottom < panel.top && bay.top > panel.bottom && liesOn(bay, wall, panel),
    )
    if (own.length === 0) return []
    const { bottom, top } = own[0]!
    return [{ bottom, top, width: Math.max(...own.map(({ width }) => width)) }]
  })
  return { ...panel, bays }
}

/**
 * The make-up of a panel in a lift between two heights, its pitch widened to its widest bay. A bay counts once bays as
 * wide stand over at least half their width: the ties over and under a box hold what the box leaves free.
 */
export function makeInLift({ make, bays = [] }: StandPanel, foot: Metres, top: Metres): StandMake {
  if (make.kind !== 'double') return make
  const inLift = bays
    .map(({ bottom, top: end, width }) => ({ width, height: Math.min(end, top) - Math.max(bottom, foot) }))
    .filter(({ height }) => height > 0)
  const standing = (width: Metres) =>
    inLift.filter(bay => bay.width >= 0.9 * width).reduce((sum, { height }) => sum + height, 0)
  const widest = Math.max(
    0,
    ...inLift.filter(({ width }) => standing(width) >= width / 2).map(({ width }) => width),
  )
  const pitch = make.web === 'crosstie' ? 2 * widest : widest
  // up to whole steps, so that panels that hardly differ share an answer
  return { ...make, pitch: Math.max(make.pitch, Math.ceil(pitch / PITCH_STEP - 1e-9) * PITCH_STEP) }
}

const PITCH_STEP: Metres = 0.02

function liesOn({ point }: Bay, wall: Wall, { from, to, make }: StandPanel): boolean {
  const near = nearestOnPath(wall.centreline, point)
  const length = pathLength(wall.centreline)
  const within = [0, length].some(lap => near.station + lap >= from && near.station + lap <= to)
  return within && near.distance < 0.6 * make.thickness
}

function baysOf(band: Band, layerHeight: Metres): readonly Bay[] {
  const beads = band.beads.filter(({ role }) => role !== 'fill')
  const touched = touchedStations(beads.map(({ path, width }) => ({ path, thickness: width })))
  const heights = { bottom: (band.fromLayer - 1) * layerHeight, top: band.toLayer * layerHeight }
  return beads.flatMap(({ role, path }, i) => {
    if (role !== 'wythe') return []
    return freeRuns(path, touched[i]!).map(run => ({ ...heights, ...run }))
  })
}

/** Runs between ties and folds, one end after the other round a closed wythe. */
function freeRuns(path: Path, ties: readonly Metres[]): readonly Pick<Bay, 'point' | 'width'>[] {
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
