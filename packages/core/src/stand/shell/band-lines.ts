import {
  clipOpenLines,
  flattenPath,
  inflate,
  nearestOnPath,
  type Path,
  type Polygon,
  pathLength,
  pathPoint,
  type Region,
  subPath,
} from '../../geometry/index.js'
import type { Wall } from '../../job/index.js'
import type { Metres } from '../../quantity/index.js'
import type { Section } from '../../section/index.js'
import type { Band, Bead } from '../../wall/index.js'
import type { ShellLine } from './line-mesh.js'

/**
 * What stands in a band as middle lines: its beads, but a solid wall as one line along its centreline with its full
 * thickness, for its beads act as one. It ends where its body does: at openings, under its base, over its top, and at the
 * face of another make-up. What a recess takes from its thickness is not taken off.
 */
export function bandLines(section: Section, walls: readonly Wall[], band: Band): readonly ShellLine[] {
  const solids = section.stretches.flatMap(({ wall: id, from, to }): SolidRun[] => {
    const wall = walls.find(candidate => candidate.id === id)
    if (wall?.makeUp.kind !== 'solid') return []
    const { centreline, thickness } = wall
    const whole = centreline.closed && to - from > pathLength(centreline) - NEAR
    return [{ path: whole ? centreline : subPath(centreline, from, to), thickness }]
  })
  const own = band.beads.filter(bead => isOf(bead, solids))
  const body = band.body.filter(polygon => own.some(({ path }) => runsIn(path, polygon)))
  return [
    ...solids.flatMap(({ path, thickness }) =>
      within(path, body).map(part => ({ path: part, thickness, solid: true })),
    ),
    ...band.beads
      .filter(bead => !own.includes(bead))
      .map(({ path, width, role }) => ({ path, thickness: width, hangs: role === 'web' })),
  ]
}

interface SolidRun {
  readonly path: Path
  readonly thickness: Metres
}

/** Whether most of a bead lies in the thickness of a solid wall. */
function isOf({ path }: Bead, solids: readonly SolidRun[]): boolean {
  if (solids.length === 0) return false
  const length = pathLength(path)
  const points = Array.from({ length: SAMPLES }, (_, i) => pathPoint(path, (length * (i + 0.5)) / SAMPLES))
  const inside = points.filter(point =>
    solids.some(run => nearestOnPath(run.path, point).distance < run.thickness / 2),
  )
  return inside.length > SAMPLES / 2
}

const SAMPLES = 24

const runsIn = (path: Path, polygon: Polygon): boolean =>
  clipOpenLines([flattenPath(path)], [polygon], 'inside').length > 0

/** Stretches of a path inside a body, or on its edge: another make-up may cut it back to the very middle. */
function within(path: Path, body: Region): readonly Path[] {
  const [line, total] = [flattenPath(path), pathLength(path)]
  const parts = clipOpenLines(
    [path.closed ? [...line, line[0]!] : line],
    inflate(body, EDGE, 'mitre'),
    'inside',
  )
  return parts.flatMap(points => {
    const start = nearestOnPath(path, points[0]!).station
    const end = nearestOnPath(path, points[points.length - 1]!).station
    const from = start < NEAR || start > total - NEAR ? 0 : start + EDGE
    const to = end < NEAR || end > total - NEAR ? total : end - EDGE
    if (to - from < NEAR) return []
    return [to - from > total - NEAR ? path : subPath(path, from, to)]
  })
}

const EDGE: Metres = 2e-3
const NEAR: Metres = 1e-3
