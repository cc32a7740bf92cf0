import {
  clipOpenLines,
  distance,
  fitArcs,
  flattenPath,
  inset,
  type Path,
  type Polygon,
  pathNormal,
  pathPoint,
  plus,
  polygonArea,
  polygonRings,
  type Region,
  type Ring,
  times,
  unionRings,
} from '../geometry/index.js'
import type { PrintRules, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import type { Body } from './body.js'
import { type Run, tieRuns } from './free-run.js'
import { loopPath } from './loop.js'
import { contactLap, slack, tieSetback, type WallParts } from './parts.js'
import type { RawBead } from './raw-bead.js'
import { faceSwell, reliefPhase } from './relief.js'
import { printKey, remembered } from './remembered.js'
import type { PlacedStretch, SectionPlan } from './section-plan.js'
import { type TieShape, tieLeg, tiePath } from './tie.js'
import { partPeaks, runPeaks } from './tie-peak.js'
import { wallPath } from './wall-path.js'
import { within } from './within.js'

/** Wythes round the body, the tie in its cavity, and the closers of its columns. */
export function doubleBeads(parts: WallParts, plan: SectionPlan, body: Body, z: Metres): readonly RawBead[] {
  const width = parts.print.beadWidth
  const room = cavity(body, parts.print)
  const ties = body.stretches.flatMap(stretch => tiesOf(parts, plan, stretch, z))
  const closers = body.stretches.flatMap(stretch => closersOf(parts, stretch))
  return [
    ...wythes(body, parts.print).map(path => ({ role: 'wythe' as const, path, width })),
    ...within(ties, room, width).map(path => ({ role: 'web' as const, path, width })),
    ...within(closers, room, width).map(path => ({ role: 'closer' as const, path, width })),
  ]
}

/** Where ties run. A tie may come a little nearer to a wythe than its setback before it is trimmed; a relief slants under it. */
const cavity = (body: Body, print: PrintRules): Region =>
  body.region.flatMap(polygon =>
    body.stretches.some(({ wall }) => wall.relief)
      ? slantingCavity(polygon, print)
      : plainCavity(polygon, print),
  )
const plainCavity = remembered((polygon: Polygon, print) =>
  inset([polygon], tieSetback(print) - 1e-4, 'square'),
)
const slantingCavity = remembered((polygon: Polygon, print) =>
  inset([polygon], tieSetback(print) - 0.1 * print.beadWidth, 'square'),
)

/** The boundary of the body half a bead in; where a recess leaves room for one bead only, the nearer one stops. */
const wythes = remembered((body: Body, print): readonly Path[] => {
  const insides = body.region.flatMap(polygon => halfBeadIn(polygon, print))
  const loops = [...insides]
    .sort((a, b) => polygonArea(a) - polygonArea(b))
    .flatMap(inside => loopsOf(inside, print))
  const skipped = body.cuts.flatMap(cut => (cut.skipped ? [cut.skipped] : []))
  if (skipped.length === 0) return loops
  const gaps = unionRings(skipped)
  return loops.flatMap(loop => openedAt(loop, gaps))
})

const halfBeadIn = remembered((polygon: Polygon, print) => inset([polygon], print.beadWidth / 2, 'mitre'))
const loopsOf = remembered((inside: Polygon, { beadWidth, cornerRadius }): readonly Path[] =>
  polygonRings(inside).map(ring => loopPath(ring, beadWidth, cornerRadius)),
)

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
  const { wall } = stretch
  const reach = tieReach(wall.thickness, parts)
  if (wall.makeUp.kind !== 'double' || reach < 0) return []
  const { webPitch, web } = wall.makeUp
  return tieRuns(parts, plan, stretch, z).flatMap(({ run, parts: free }) =>
    free
      .filter(({ from, to }) => to - from > parts.print.beadWidth)
      .map(part =>
        wallPath(wall, tieKey(parts.print, run, part, reliefPhase(wall, z)), () => {
          const peaks = runPeaks(run, webPitch)
          const own = part.to - part.from > run.to - run.from - slack ? peaks : partPeaks(peaks, part)
          return tiePath(wall.centreline, web, own, reach, tieShape(parts.print, wall, z))
        }),
      ),
  )
}

const tieKey = (print: PrintRules, run: Run, part: Run, phase: number): string =>
  `${printKey(print)} ${run.from} ${run.to} ${part.from} ${part.to} ${phase}`

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
    .map(station =>
      wallPath(wall, `${printKey(print)} closer ${station}`, () => {
        const [middle, left] = [pathPoint(wall.centreline, station), pathNormal(wall.centreline, station)]
        return {
          points: [plus(middle, times(left, -reach)), plus(middle, times(left, reach))],
          bulges: [0],
          closed: false,
        }
      }),
    )
}
