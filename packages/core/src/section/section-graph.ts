import { pathLength, pathPoint } from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import type { Metres, Seconds } from '../quantity/index.js'
import { findJunctions, type Junction, type LayerRange, solidLayers } from '../wall/index.js'
import { type Cut, STUMP, wallCuts } from './cut.js'
import { layerTimePerMetre } from './layer-time.js'
import { mergeStretches } from './merge-stretches.js'
import type { Stretch } from './section.js'
import { type SectionJob, type SectionOptions, START_TIME, solidParts } from './section-job.js'

/** What always stays together: stretches that no allowed cut divides. */
export interface Block {
  readonly stretches: readonly Stretch[]
  readonly time: Seconds
  /** Layers on which it has something to print. */
  readonly solid: readonly LayerRange[]
  /** Middle of its stretches by length, for order in space. */
  readonly x: Metres
  readonly y: Metres
}

/** A cut between two blocks (by number). */
export interface Tie {
  readonly a: number
  readonly b: number
  readonly cut: Cut
}

/** The plan as blocks and the cuts between them. */
export interface SectionGraph {
  readonly blocks: readonly Block[]
  readonly ties: readonly Tie[]
}

/** A stretch between two neighbouring stations of interest. */
interface Atom extends Stretch {
  readonly time: Seconds
  readonly x: Metres
  readonly y: Metres
}

const NEAR = 1e-6

/** `anywhere`: corners and crossings may be divided too, for sections set by hand. */
export function sectionGraph(
  job: SectionJob,
  options: SectionOptions,
  divide: 'where-allowed' | 'anywhere' = 'where-allowed',
): SectionGraph {
  const junctions = findJunctions(job.walls)
  const clear = (cut: Cut) => cut.isPinned || !nearJunction(cut, junctions)
  const cuts = wallCuts(job, options).filter(clear)
  const atoms = job.walls.flatMap(wall => wallAtoms(job, options, wall, cuts, junctions))
  const at = atomFinder(atoms, job.walls)
  const groups = new Groups(atoms.length)
  const links: { a: number; b: number; cut: Cut }[] = []
  for (const cut of cuts) {
    const [a, b] = [at(cut.wall, cut.at, -1), at(cut.wall, cut.at, 1)]
    if (a !== undefined && b !== undefined) links.push({ a, b, cut })
  }
  for (const wall of job.walls) joinThrough(wall, cuts, atoms, at, groups)
  for (const junction of junctions) joinArms(junction, { job, options, divide }, at, groups, links)
  const parts = solidParts(job)
  return gather(atoms, groups, links, stretches => solidLayers(parts, stretches, junctions))
}

function nearJunction(cut: Cut, junctions: readonly Junction[]): boolean {
  return junctions.some(({ arms }) =>
    arms.some(arm => arm.wall.id === cut.wall && Math.abs(arm.station - cut.at) < STUMP),
  )
}

function wallAtoms(
  job: SectionJob,
  options: SectionOptions,
  wall: Wall,
  cuts: readonly Cut[],
  junctions: readonly Junction[],
): readonly Atom[] {
  const length = pathLength(wall.centreline)
  const stations = [
    0,
    length,
    ...cuts.filter(cut => cut.wall === wall.id).map(cut => cut.at),
    ...junctions.flatMap(({ arms }) => arms.filter(arm => arm.wall.id === wall.id).map(arm => arm.station)),
  ].sort((a, b) => a - b)
  const perMetre =
    (options.timeFactor ?? 1) * layerTimePerMetre(wall, job.print, job.machine, options.beadLengthOf?.(wall))
  const openings = job.openings.filter(opening => opening.wall === wall.id)
  // An opening stops and starts the bead on the layers it is open on.
  const startsIn = (from: Metres, to: Metres) =>
    openings
      .filter(opening => opening.at >= from && opening.at < to)
      .reduce((sum, opening) => sum + (opening.head - opening.sill) / (wall.top - wall.base), 0)
  return stations.slice(1).flatMap((to, i) => {
    const from = stations[i]!
    if (to - from < NEAR) return []
    const [x, y] = pathPoint(wall.centreline, (from + to) / 2)
    return [
      {
        wall: wall.id,
        from,
        to,
        time: perMetre * (to - from) + startsIn(from, to) * (options.startTime ?? START_TIME),
        x,
        y,
      },
    ]
  })
}

type AtomAt = (wall: string, station: Metres, side: 1 | -1) => number | undefined

/** The atom just before (−1) or after (+1) a station; round the seam of a closed wall. */
function atomFinder(atoms: readonly Atom[], walls: readonly Wall[]): AtomAt {
  const byWall = new Map<string, number[]>()
  for (const [i, atom] of atoms.entries()) byWall.set(atom.wall, [...(byWall.get(atom.wall) ?? []), i])
  const closed = new Set(walls.filter(wall => wall.centreline.closed).map(wall => wall.id))
  return (wall, station, side) => {
    const own = byWall.get(wall) ?? []
    const found = own.find(i => Math.abs((side < 0 ? atoms[i]!.to : atoms[i]!.from) - station) < NEAR * 10)
    if (found !== undefined || !closed.has(wall)) return found
    return side < 0 ? own.at(-1) : own[0]
  }
}

/** Where a wall goes on uncut, its atoms stay together. */
function joinThrough(
  wall: Wall,
  cuts: readonly Cut[],
  atoms: readonly Atom[],
  at: AtomAt,
  groups: Groups,
): void {
  const own = atoms.flatMap((atom, i) => (atom.wall === wall.id ? [i] : []))
  for (const i of own) {
    const station = atoms[i]!.to
    const isCut = cuts.some(cut => cut.wall === wall.id && Math.abs(cut.at - station) < NEAR * 10)
    const next = isCut ? undefined : at(wall.id, station, 1)
    if (next !== undefined) groups.join(i, next)
  }
}

interface DivideRules {
  readonly job: SectionJob
  readonly options: SectionOptions
  readonly divide: 'where-allowed' | 'anywhere'
}

/** Corners and crossings hold together. A stem may be cut off the wall it meets, if that is allowed. */
function joinArms(
  junction: Junction,
  { job, options, divide }: DivideRules,
  at: AtomAt,
  groups: Groups,
  links: { a: number; b: number; cut: Cut }[],
): void {
  const members = junction.arms.flatMap(arm => {
    const atom = at(arm.wall.id, arm.station, arm.sense)
    return atom === undefined ? [] : [{ arm, atom }]
  })
  const first = members.find(({ arm }) => isThrough(junction, arm.wall.id)) ?? members[0]
  for (const { arm, atom } of members) {
    if (!first || atom === first.atom) continue
    const isStem = junction.kind === 'tee' && !isThrough(junction, arm.wall.id)
    const mayCut = isStem && (options.teesAllowed ?? true) && !job.noCutAt.includes(arm.wall.id)
    const isOtherWall = arm.wall.id !== first.arm.wall.id
    if (!mayCut && !(divide === 'anywhere' && isOtherWall)) groups.join(first.atom, atom)
    else links.push({ a: first.atom, b: atom, cut: teeCut(arm.wall, arm.station, first.arm.wall) })
  }
}

const isThrough = ({ arms }: Junction, wall: string): boolean =>
  arms.filter(arm => arm.wall.id === wall).length > 1

const teeCut = (stem: Wall, at: Metres, main: Wall): Cut => ({
  wall: stem.id,
  at,
  point: pathPoint(stem.centreline, at),
  kind: 'tee',
  ref: main.id,
  cost: 1.5,
  isPinned: false,
  why: `a butt joint against wall ${main.id}, to be tied`,
})

function gather(
  atoms: readonly Atom[],
  groups: Groups,
  links: readonly { a: number; b: number; cut: Cut }[],
  solidOf: (stretches: readonly Stretch[]) => readonly LayerRange[],
): SectionGraph {
  const roots = [...new Set(atoms.map((_, i) => groups.rootOf(i)))]
  const number = new Map(roots.map((root, i) => [root, i]))
  const blocks = roots.map(root =>
    blockOf(
      atoms.filter((_, i) => groups.rootOf(i) === root),
      solidOf,
    ),
  )
  const ties = links
    .map(({ a, b, cut }) => ({ a: number.get(groups.rootOf(a))!, b: number.get(groups.rootOf(b))!, cut }))
    .filter(tie => tie.a !== tie.b)
  return { blocks, ties }
}

function blockOf(
  atoms: readonly Atom[],
  solidOf: (stretches: readonly Stretch[]) => readonly LayerRange[],
): Block {
  const length = atoms.reduce((sum, atom) => sum + atom.to - atom.from, 0)
  const mean = (of: (atom: Atom) => number) =>
    atoms.reduce((sum, atom) => sum + of(atom) * (atom.to - atom.from), 0) / length
  const stretches = atoms.map(({ wall, from, to }) => ({ wall, from, to }))
  return {
    stretches,
    solid: solidOf(mergeStretches(stretches)),
    time: atoms.reduce((sum, atom) => sum + atom.time, 0),
    x: mean(atom => atom.x),
    y: mean(atom => atom.y),
  }
}

/** Union–find over atoms. */
class Groups {
  private readonly parent: number[]
  constructor(count: number) {
    this.parent = Array.from({ length: count }, (_, i) => i)
  }
  rootOf(i: number): number {
    let root = i
    while (this.parent[root] !== root) root = this.parent[root]!
    this.parent[i] = root
    return root
  }
  join(a: number, b: number): void {
    const [low, high] = [this.rootOf(a), this.rootOf(b)].sort((x, y) => x - y)
    this.parent[high!] = low!
  }
}
