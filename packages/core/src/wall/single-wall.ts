import {
  clipOpenLines,
  dot,
  filletPath,
  fitArcs,
  flattenPath,
  inflate,
  type Path,
  type Point,
  pathLength,
  type Region,
  reversePath,
  subPath,
} from '../geometry/index.js'
import type { Metres } from '../quantity/index.js'
import type { Body } from './body.js'
import { type Run, takeAway } from './free-run.js'
import type { Arm, Junction } from './junction.js'
import { contactLap, slack, standsAt, type WallParts } from './parts.js'
import { foreignOwners } from './precedence.js'
import type { RawBead } from './raw-bead.js'
import { liesAt, opensAt } from './recess.js'
import { holdsArm, type PlacedStretch, type SectionPlan } from './section-plan.js'

/** The centrelines themselves, run on through corners, stopped half a bead short of openings and free ends. */
export function singleBeads(
  parts: WallParts,
  plan: SectionPlan,
  body: Body,
  others: Region,
  z: Metres,
): readonly RawBead[] {
  const { beadWidth, cornerRadius } = parts.print
  const pieces = body.stretches.flatMap(stretch => piecesOf(parts, plan, body, stretch, z))
  const lines = chainPieces(pieces).map(path => filletPath(path, () => cornerRadius))
  const clear = others.length > 0 ? inflate(others, beadWidth / 2 - contactLap(parts.print), 'round') : []
  return lines
    .flatMap(path => (clear.length > 0 ? outside(path, clear) : [path]))
    .filter(path => pathLength(path) > slack)
    .map(path => ({ role: 'line', path, width: beadWidth }))
}

/** A piece of centreline, and the junction each of its ends runs on through, if any. */
interface Piece {
  readonly path: Path
  readonly start?: Junction
  readonly end?: Junction
}

function piecesOf(
  parts: WallParts,
  plan: SectionPlan,
  body: Body,
  stretch: PlacedStretch,
  z: Metres,
): readonly Piece[] {
  const { wall, from, to } = stretch
  const half = parts.print.beadWidth / 2
  const links = new Map<Metres, Junction>()
  const blocked: Run[] = [...cutRuns(parts, stretch, z)]
  const ends = new Set<Metres>()
  for (const junction of plan.junctions)
    for (const arm of junction.arms.filter(arm => arm.wall === wall && holdsArm([stretch], arm))) {
      const passes = runsThrough(plan, body, junction, arm, z)
      const station = arm.sense > 0 ? Math.max(from, arm.station) : Math.min(to, arm.station)
      if (arm.station < from + 1e-3 || arm.station > to - 1e-3) ends.add(station)
      if (passes === 'link') links.set(station, junction)
      else if (passes === 'stop') blocked.push(stopAt(parts, arm, junction))
    }
  const whole = wall.centreline.closed && to - from > pathLength(wall.centreline) - slack
  if (whole && blocked.length === 0) return [{ path: wall.centreline }]
  if (!whole && !ends.has(from)) blocked.push({ from: from - 1, to: from + half })
  if (!whole && !ends.has(to)) blocked.push({ from: to - half, to: to + 1 })
  return takeAway({ from, to }, blocked).map(run => {
    const [start, end] = [links.get(run.from), links.get(run.to)]
    return { path: subPath(wall.centreline, run.from, run.to), ...(start && { start }), ...(end && { end }) }
  })
}

/** Openings, and recesses of any depth: one bead has nothing to leave behind them. */
function cutRuns({ openings, embeds, print }: WallParts, { wall }: PlacedStretch, z: Metres): readonly Run[] {
  const around = (at: Metres, width: Metres): Run => {
    const half = width / 2 + print.beadWidth / 2
    return { from: at - half, to: at + half }
  }
  return [
    ...openings.filter(opening => opening.wall === wall.id && opensAt(opening, z)),
    ...embeds.filter(embed => embed.wall === wall.id && liesAt(embed, z) && embed.method === 'gap'),
  ].map(({ at, width }) => around(at, width))
}

/**
 * `link`: goes on into the one other wall that ends here. `stop`: butts against a single wall that goes on.
 * `free`: nothing of our own kind in the way; butting against other kinds of wall is a matter of clipping.
 */
function runsThrough(
  plan: SectionPlan,
  body: Body,
  junction: Junction,
  arm: Arm,
  z: Metres,
): 'link' | 'stop' | 'free' {
  const ours = junction.arms.filter(other => holdsArm(body.stretches, other) && standsAt(other.wall, z))
  if (foreignOwners(plan, junction, z).length > 0) return 'free'
  const pair = straightestPair(ours)
  if (!pair) return 'free'
  if (!pair.includes(arm)) return 'stop'
  return pair[0]!.wall === pair[1]!.wall ? 'free' : 'link'
}

/** The two arms that go straightest on into each other; a wall that itself goes on comes first. */
function straightestPair(arms: readonly Arm[]): readonly [Arm, Arm] | undefined {
  let best: readonly [Arm, Arm] | undefined
  let least = Infinity
  arms.forEach((a, i) => {
    for (const b of arms.slice(i + 1)) {
      const bend = dot(a.out, b.out) - (a.wall === b.wall ? 2 : 0)
      if (bend < least - 1e-9) [best, least] = [[a, b], bend]
    }
  })
  return best
}

/** A stem ends where its bead laps onto the side of the wall that goes on: (w − lap)/sin φ from its centreline. */
function stopAt({ print }: WallParts, arm: Arm, junction: Junction): Run {
  const pair = straightestPair(junction.arms.filter(other => other.wall !== arm.wall))
  const cosine = pair ? dot(arm.out, pair[0].out) : 0
  const reach =
    (print.beadWidth - contactLap(print)) / Math.max(0.3, Math.sqrt(Math.max(0, 1 - cosine * cosine)))
  return arm.sense > 0
    ? { from: arm.station - slack, to: arm.station + reach }
    : { from: arm.station - reach, to: arm.station + slack }
}

/** Joins pieces end to end through their junctions; a chain that comes back to its start is closed. */
function chainPieces(pieces: readonly Piece[]): readonly Path[] {
  const left = [...pieces]
  const paths: Path[] = []
  while (left.length > 0) {
    let piece = left.shift()!
    for (let more = true; more; ) {
      more = false
      for (const flip of [false, true]) {
        const own = flip ? turned(piece) : piece
        const next = own.end ? left.findIndex(other => other.start === own.end || other.end === own.end) : -1
        if (next < 0) continue
        const [other] = left.splice(next, 1)
        piece = joinPieces(own, other!.start === own.end ? other! : turned(other!))
        more = true
      }
    }
    paths.push(piece.start && piece.start === piece.end ? closePath(piece.path) : piece.path)
  }
  return paths
}

const turned = ({ path, start, end }: Piece): Piece => ({
  path: reversePath(path),
  ...(end && { start: end }),
  ...(start && { end: start }),
})

/** Both ends move to the junction's point, so that ends drawn a hair apart become one. */
function joinPieces(a: Piece, b: Piece): Piece {
  const meeting: Point = a.end!.point
  return {
    path: {
      points: [...a.path.points.slice(0, -1), meeting, ...b.path.points.slice(1)],
      bulges: [...a.path.bulges, ...b.path.bulges],
      closed: false,
    },
    ...(a.start && { start: a.start }),
    ...(b.end && { end: b.end }),
  }
}

const closePath = ({ points, bulges }: Path): Path => ({ points: points.slice(0, -1), bulges, closed: true })

function outside(path: Path, region: Region): readonly Path[] {
  const line = flattenPath(path)
  const closed = path.closed ? [...line, line[0]!] : line
  const parts = clipOpenLines([closed], region, 'outside')
  const total = parts.reduce((sum, part) => sum + pathLength(fitArcs(part, false)), 0)
  return Math.abs(total - pathLength(path)) < 1e-4 ? [path] : parts.map(part => fitArcs(part, false))
}
