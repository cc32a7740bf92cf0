import {
  clipOpenLines,
  distance,
  fitArcs,
  flattenPath,
  inset,
  type Path,
  type Point,
  pathLength,
  pathNormal,
  pathPoint,
  plus,
  type Region,
  type Ring,
  regionRings,
  times,
  unionRings,
} from '../geometry/index.js'
import type { PrintRules, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Body } from './body.js'
import { tieRuns } from './free-run.js'
import { loopPath } from './loop.js'
import { contactLap, slack, tieSetback, type WallParts } from './parts.js'
import type { RawBead } from './raw-bead.js'
import { faceSwell } from './relief.js'
import type { PlacedStretch, SectionPlan } from './section-plan.js'
import { type TieShape, tieLeg, tiePath } from './tie.js'
import { partPeaks, runPeaks } from './tie-peak.js'

/** Wythes round the body, the tie in its cavity, and the closers of its columns. */
export function doubleBeads(parts: WallParts, plan: SectionPlan, body: Body, z: Metres): readonly RawBead[] {
  const width = parts.print.beadWidth
  const room = inset(body.region, tieSetback(parts.print) - tieMargin(body, width), 'square')
  const ties = body.stretches.flatMap(stretch => tiesOf(parts, plan, stretch, z))
  const closers = body.stretches.flatMap(stretch => closersOf(parts, stretch))
  return [
    ...wythes(parts, body).map(path => ({ role: 'wythe' as const, path, width })),
    ...within(ties, room, width).map(path => ({ role: 'web' as const, path, width })),
    ...within(closers, room, width).map(path => ({ role: 'closer' as const, path, width })),
  ]
}

/** How much nearer than its setback a tie may come to a wythe before it is trimmed; a relief slants under it. */
const tieMargin = ({ stretches }: Body, width: Metres): Metres =>
  stretches.some(({ wall }) => wall.relief) ? 0.1 * width : 1e-4

/** The boundary of the body half a bead in; where a recess leaves room for one bead only, the nearer one stops. */
export function wythes(parts: WallParts, body: Body): readonly Path[] {
  const rings = regionRings(inset(body.region, parts.print.beadWidth / 2, 'mitre'))
  const loops = rings.map(ring => loopPath(ring, parts.print.beadWidth, parts.print.cornerRadius))
  const skipped = body.cuts.flatMap(cut => (cut.skipped ? [cut.skipped] : []))
  if (skipped.length === 0) return loops
  const gaps = unionRings(skipped)
  return loops.flatMap(loop => openedAt(loop, gaps))
}

function openedAt(loop: Path, gaps: Region): readonly Path[] {
  const ring = flattenPath(loop)
  const seam = ring[0]!
  const parts = joinAtSeam(clipOpenLines([[...ring, seam]], gaps, 'outside'), seam)
  const whole =
    parts.length === 1 && distance(parts[0]![0]!, seam) < 1e-8 && distance(parts[0]!.at(-1)!, seam) < 1e-8
  return whole ? [loop] : parts.map(line => fitArcs(line, false))
}

/** The cut ring falls apart at its first point too, where nothing was cut: those two pieces are one. */
function joinAtSeam(parts: readonly (readonly Ring[number][])[], seam: Ring[number]) {
  const near = (point: Ring[number] | undefined) =>
    point !== undefined && Math.hypot(point[0] - seam[0], point[1] - seam[1]) < 1e-8
  const first = parts.find(part => near(part[0]))
  const last = parts.find(part => near(part.at(-1)))
  if (!first || !last || first === last) return parts
  return [[...last, ...first.slice(1)], ...parts.filter(part => part !== first && part !== last)]
}

function tiesOf(parts: WallParts, plan: SectionPlan, stretch: PlacedStretch, z: Metres): readonly Path[] {
  const { centreline, makeUp, thickness } = stretch.wall
  const reach = tieReach(thickness, parts)
  if (makeUp.kind !== 'double' || reach < 0) return []
  return tieRuns(parts, plan, stretch, z).flatMap(({ run, parts: free }) => {
    const peaks = runPeaks(run, makeUp.webPitch)
    return free
      .filter(({ from, to }) => to - from > parts.print.beadWidth)
      .map(part => (part.to - part.from > run.to - run.from - slack ? peaks : partPeaks(peaks, part)))
      .map(part => tiePath(centreline, makeUp.web, part, reach, tieShape(parts.print, stretch.wall, z)))
  })
}

/** Where the job rounds corners the tie goes round too: at a sharp one a nozzle with an axis stops and turns. */
const tieShape = (print: PrintRules, wall: Wall, z: Metres): TieShape => ({
  swell: faceSwell(wall, z),
  ...(print.cornerRadius > 0 ? { leg: tieLeg(print) } : {}),
})

/** How far from the centreline a tie bead runs where it laps onto a wythe; negative: no room for a tie. */
export const tieReach = (thickness: Metres, { print }: Pick<WallParts, 'print'>): Metres =>
  thickness / 2 - tieSetback(print)

function closersOf({ columns, print }: WallParts, { wall, from, to }: PlacedStretch): readonly Path[] {
  const reach = wall.thickness / 2 - 1.5 * print.beadWidth + contactLap(print)
  if (reach <= 0) return []
  return columns
    .filter(column => column.wall === wall.id)
    .flatMap(({ at, length }) => [
      at - length / 2 - print.beadWidth / 2,
      at + length / 2 + print.beadWidth / 2,
    ])
    .filter(station => station > from && station < to)
    .map(station => {
      const [middle, left] = [pathPoint(wall.centreline, station), pathNormal(wall.centreline, station)]
      return {
        points: [plus(middle, times(left, -reach)), plus(middle, times(left, reach))],
        bulges: [0],
        closed: false,
      }
    })
}

/** The paths where they stay in the room; whole when none leaves it. Scraps shorter than a bead are dropped. */
function within(paths: readonly Path[], room: Region, beadWidth: Metres): readonly Path[] {
  const lines = paths.map(path => flattenPath(path))
  const parts = clipOpenLines(lines, room, 'inside')
  const lost = totalLength(lines) - totalLength(parts)
  if (Math.abs(lost) < 1e-3) return paths
  if (paths.length > 1) return paths.flatMap(path => within([path], room, beadWidth))
  return parts.map(part => fitArcs(part, false)).filter(part => pathLength(part) > beadWidth)
}

const totalLength = (lines: readonly (readonly Point[])[]): Metres =>
  lines.reduce(
    (sum, line) => sum + line.slice(1).reduce((run, point, i) => run + distance(line[i]!, point), 0),
    0,
  )
