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
import type { StandGeometry, StandPanel } from './stand-geometry.js'

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
 * Panels with the pitch their webs really have: ties leave room for boxes, chases and columns and then stand wider apart
 * than the drawing says. A panel takes the widest bay of its wythes at its height; a wider pitch is never narrowed.
 */
export function withPrintedBays(
  geometry: StandGeometry,
  walls: readonly Wall[],
  bands: readonly Band[],
  layerHeight: Metres,
): StandGeometry {
  const bays = bands.flatMap(band => baysOf(band, layerHeight))
  return { ...geometry, panels: geometry.panels.map(panel => widened(panel, walls, bays)) }
}

function widened(panel: StandPanel, walls: readonly Wall[], bays: readonly Bay[]): StandPanel {
  const { make } = panel
  const wall = walls.find(({ id }) => id === panel.wall)
  if (make.kind !== 'double' || !wall) return panel
  const own = bays.filter(bay => bay.bottom < panel.top && bay.top > panel.bottom && liesOn(bay, wall, panel))
  const widest = Math.max(0, ...own.map(({ width }) => width))
  const pitch = Math.max(make.pitch, make.web === 'crosstie' ? 2 * widest : widest)
  return { ...panel, make: { ...make, pitch } }
}

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
