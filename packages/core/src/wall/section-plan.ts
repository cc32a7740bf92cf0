import { type Point, pathLength, pathPoint } from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { assert } from '../result/index.js'
import type { Section, Stretch } from '../section/index.js'
import { type Arm, findJunctions, type Junction } from './junction.js'
import { slack } from './parts.js'

/** A stretch with its wall at hand. */
export interface PlacedStretch {
  readonly wall: Wall
  readonly from: Metres
  readonly to: Metres
}

/** A section as its geometry sees it: its stretches, and the junctions they reach. */
export interface SectionPlan {
  readonly stretches: readonly PlacedStretch[]
  readonly junctions: readonly Junction[]
  /** Place of a wall in the plan, by id: at a junction between sections the earlier wall keeps the corner. */
  readonly order: ReadonlyMap<string, number>
}

/** The whole plan as one list of stretches, one to a wall. */
export const stretchesOfWholePlan = (walls: readonly Wall[]): readonly Stretch[] =>
  walls.map(wall => ({ wall: wall.id, from: 0, to: pathLength(wall.centreline) }))

export function placeSection(
  walls: readonly Wall[],
  section: Section,
  junctions: readonly Junction[] = findJunctions(walls),
): SectionPlan {
  const stretches = section.stretches.map(stretch => placeStretch(walls, stretch))
  const plan = { stretches, order: new Map(walls.map((wall, i) => [wall.id, i])) }
  return { ...plan, junctions: junctions.filter(({ arms }) => arms.some(arm => holdsArm(stretches, arm))) }
}

function placeStretch(walls: readonly Wall[], { wall: id, from, to }: Stretch): PlacedStretch {
  const wall = walls.find(other => other.id === id)
  assert(wall, `section stretches name walls of the plan: ${id}`)
  const length = pathLength(wall.centreline)
  assert(to - from > slack, `a stretch of wall ${id} ends after it starts`)
  return { wall, from: Math.max(0, from), to: Math.min(length, to) }
}

/** Whether the wall, going out of a junction along an arm, belongs to one of the stretches. */
export function holdsArm(stretches: readonly PlacedStretch[], { wall, station, sense }: Arm): boolean {
  const step = 1e-4
  const length = pathLength(wall.centreline)
  const probe = station + sense * step
  const inside = wall.centreline.closed ? (probe + length) % length : probe
  return stretches.some(other => other.wall === wall && other.from < inside && inside < other.to)
}

export const stretchMiddle = ({ wall, from, to }: PlacedStretch): Point =>
  pathPoint(wall.centreline, (from + to) / 2)
