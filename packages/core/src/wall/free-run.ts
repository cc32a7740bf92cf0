import { dot, pathLength } from '../geometry/index.js'
import type { PrintRules } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { cornersOf, innerReach, tieStart } from './corner.js'
import { embedAt } from './embed-at.js'
import type { Arm, Junction } from './junction.js'
import { slack, standsAt, tieSetback, type WallParts } from './parts.js'
import { foreignOwners, shellKey } from './precedence.js'
import { liesAt, opensAt, shapesPlan } from './recess.js'
import { holdsArm, type PlacedStretch, type SectionPlan } from './section-plan.js'

/** A run of stations, from < to. */
export interface Run {
  readonly from: Metres
  readonly to: Metres
}

/** A run that ends, junctions and columns leave free at every height, and its parts clear of openings and embeds. */
export interface TieRun {
  readonly run: Run
  readonly parts: readonly Run[]
}

/** Where the tie of a double wall may run at height z. */
export function tieRuns(
  parts: WallParts,
  plan: SectionPlan,
  stretch: PlacedStretch,
  z: Metres,
): readonly TieRun[] {
  const back = tieSetback(parts.print)
  const { wall, from, to } = stretch
  const whole = wall.centreline.closed && to - from > pathLength(wall.centreline) - slack
  const lasting = [
    ...columnRuns(parts, stretch, back),
    ...cornerRuns(stretch, parts.print),
    ...plan.junctions.flatMap(junction => junctionRuns(plan, junction, stretch, z, parts.print)),
    ...(whole ? [] : endRuns(plan, stretch, z, back)),
  ]
  const passing = [...openingRuns(parts, stretch, z, back), ...embedRuns(parts, stretch, z)]
  return takeAway({ from, to }, lasting).map(run => ({ run, parts: takeAway(run, passing) }))
}

export function takeAway(run: Run, blocked: readonly Run[]): readonly Run[] {
  const free: Run[] = []
  let from = run.from
  for (const block of [...blocked].sort((a, b) => a.from - b.from)) {
    if (block.to <= from) continue
    if (block.from >= run.to) break
    if (block.from > from + slack) free.push({ from, to: block.from })
    from = block.to
  }
  if (run.to > from + slack) free.push({ from, to: run.to })
  return free
}

const around = (at: Metres, half: Metres): Run => ({ from: at - half, to: at + half })

const openingRuns = (
  { openings }: WallParts,
  { wall }: PlacedStretch,
  z: Metres,
  back: Metres,
): readonly Run[] =>
  openings
    .filter(opening => opening.wall === wall.id && opensAt(opening, z))
    .map(({ at, width }) => around(at, width / 2 + back))

/** The column's void, its closers, and half a tie that laps onto each closer. */
const columnRuns = ({ columns }: WallParts, { wall }: PlacedStretch, back: Metres): readonly Run[] =>
  columns.filter(column => column.wall === wall.id).map(({ at, length }) => around(at, length / 2 + back))

function embedRuns({ embeds, print }: WallParts, { wall }: PlacedStretch, z: Metres): readonly Run[] {
  return embeds
    .filter(embed => embed.wall === wall.id && liesAt(embed, z) && shapesPlan(embed))
    .map(embed => embedAt(embed, z, print))
    .map(({ at, width, method, face }) => {
      // A recess is lined by a wythe of its own; in the cavity or cut later there is none.
      const lined = method === 'gap' && face !== 'middle'
      return around(at, width / 2 + (lined ? tieSetback(print) : print.beadWidth / 2))
    })
}

/** Corners inside the centreline: the run on which the inner faces have already met. */
const cornerRuns = ({ wall: { centreline, thickness } }: PlacedStretch, print: PrintRules): readonly Run[] =>
  cornersOf(centreline, 0.02).map(({ station, turn }) =>
    around(station, innerReach(thickness, turn) + tieStart(Math.PI - Math.abs(turn), print)),
  )

/** What a junction blocks on both sides along a stretch. */
function junctionRuns(
  plan: SectionPlan,
  junction: Junction,
  stretch: PlacedStretch,
  z: Metres,
  print: PrintRules,
): readonly Run[] {
  const standing = junction.arms.filter(({ wall }) => standsAt(wall, z))
  const foreign = foreignOwners(plan, junction, z)
  return standing
    .filter(arm => arm.wall === stretch.wall && holdsArm([stretch], arm))
    .flatMap(arm => {
      const reaches = standing
        .filter(other => other.wall !== arm.wall)
        .map(other => {
          const owner =
            foreign.includes(other) || (holdsArm(plan.stretches, other) && comesBefore(other, arm))
          const joined = holdsArm(plan.stretches, other) && shellKey(other.wall) === shellKey(arm.wall)
          if (owner) return facesMeet(arm, other) + tieSetback(print)
          const opening = Math.acos(Math.min(1, Math.max(-1, dot(arm.out, other.out))))
          return joined ? facesMeet(arm, other) + tieStart(opening, print) : 0
        })
      const reach = Math.max(0, ...reaches)
      if (reach === 0) return []
      return arm.sense > 0
        ? [{ from: arm.station - slack, to: arm.station + reach }]
        : [{ from: arm.station - reach, to: arm.station + slack }]
    })
}

const comesBefore = (a: Arm, b: Arm): boolean => shellKey(a.wall) < shellKey(b.wall)

/** How far along an arm its face and another arm's meet: (h₂ + h₁·cos φ)/sin φ at the angle φ between them. */
export function facesMeet(arm: Arm, other: Arm): Metres {
  const [own, theirs] = [arm.wall.thickness / 2, other.wall.thickness / 2]
  const cosine = Math.min(1, Math.max(-1, dot(arm.out, other.out)))
  const sine = Math.sqrt(1 - cosine * cosine)
  if (sine < 0.05) return cosine > 0 ? 20 * (own + theirs) : 0
  return Math.max(0, (theirs + own * cosine) / sine)
}

/** Ends that no junction of the section joins on to are closed by a jamb. */
function endRuns(plan: SectionPlan, stretch: PlacedStretch, z: Metres, back: Metres): readonly Run[] {
  const { wall, from, to } = stretch
  const joined = (station: Metres): boolean =>
    plan.junctions.some(({ arms }) => {
      const here = arms.some(arm => arm.wall === wall && Math.abs(arm.station - station) < 1e-3)
      const others = arms.filter(arm => arm.wall !== wall && standsAt(arm.wall, z))
      return (
        here &&
        others.some(
          arm =>
            holdsArm(plan.stretches, arm) ||
            foreignOwners(plan, { point: [0, 0], kind: 'corner', arms }, z).length > 0,
        )
      )
    })
  const runs: Run[] = []
  if (!joined(from)) runs.push({ from: from - 1, to: from + back })
  if (!joined(to)) runs.push({ from: to - back, to: to + 1 })
  return runs
}
