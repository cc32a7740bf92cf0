import type { Path, Point } from '../geometry/index.js'
import type { Machine } from '../machine/index.js'
import type { Radians } from '../quantity/index.js'
import type { Bead } from '../wall/index.js'
import { headingRange, shortestTurn, turnsToFit, unwrappedHeadings } from './heading.js'
import type { RouteRules } from './options.js'
import { ledInFrom, openedAt, type Place, reversed, withoutTinyPieces } from './path-edit.js'
import { distance, segmentsOf } from './segment.js'
import { joiningGap, type Way } from './way.js'
import { type WoundBead, windBack } from './wind-back.js'

/** One bead as it will be run: its open path with its heading; `joined`: without a stop after the one before. */
export interface Strand {
  readonly bead: Bead
  readonly path: Path
  readonly joined: boolean
  /** Unwrapped, in the machine frame. */
  readonly headings: readonly Radians[]
  /** Closed beads: run against the bead's own direction. */
  readonly backwards: boolean
}

/** Strands that follow one another without a stop. */
export type Chain = readonly Strand[]

/** What the strands of one layer are made from. */
export interface StrandTask {
  readonly beads: readonly Bead[]
  readonly order: readonly Way[]
  readonly rules: RouteRules
  readonly machine: Machine
  /** Heading of the axis before the first strand, machine frame. */
  readonly heading: Radians
  /** Direction each closed bead has to be run in, by bead index; missing: whichever turns least. */
  readonly backwards?: ReadonlyMap<number, boolean>
}

/** Ordered ways → chains, wound so that the axis stays within its travel; a chain that cannot is broken in two. */
export function chainsOf(task: StrandTask): { chains: Chain[]; wound: WoundBead[] } {
  const chains: Strand[][] = []
  for (const way of task.order) {
    const chain = chains.at(-1)
    const next = chain && joinedStrand(task, way, chain.at(-1)!)
    if (chain && next && fits(task, [...chain, next])) chain.push(next)
    else chains.push([startingStrand(task, way)])
  }
  return wind(task, chains)
}

function joinedStrand(task: StrandTask, way: Way, before: Strand): Strand | undefined {
  const bead = task.beads[way.bead]!
  const end = before.path.points.at(-1)!
  const gap = distance(end, way.enter)
  if (gap > joiningGap(before.bead, bead, task.rules)) return undefined
  const heading = before.headings.at(-1)!
  const backwards = directionOf(task, way, heading)
  const path = pathOf(bead, way, backwards, end)
  return { bead, path, joined: true, headings: headingsOf(task, path, heading), backwards }
}

function startingStrand(task: StrandTask, way: Way): Strand {
  const bead = task.beads[way.bead]!
  const backwards = directionOf(task, way, task.heading)
  const path = pathOf(bead, way, backwards)
  return { bead, path, joined: false, headings: headingsOf(task, path, 0), backwards }
}

/** Ends nearer than this are the same point and need no piece between them. */
const touching = 1e-6

function directionOf(task: StrandTask, way: Way, heading: Radians): boolean {
  if (!way.place) return way.backwards
  const told = task.backwards?.get(way.bead)
  if (told !== undefined) return told
  const bead = task.beads[way.bead]!
  const turn = (backwards: boolean) => {
    const first = segmentsOf(pathOf(bead, way, backwards))[0]!
    return Math.abs(shortestTurn(heading, first.heading + task.rules.origin.turn))
  }
  return turn(true) < turn(false) - 1e-6
}

/** Beads as they are run, by place, direction and where from: band after band runs the same ones. */
const runs = new WeakMap<Path, Map<string, Path>>()

/** `from`: where the nozzle comes from without a stop. */
function pathOf({ path }: Bead, { place }: Way, backwards: boolean, from?: Point): Path {
  const known = runs.get(path) ?? new Map<string, Path>()
  runs.set(path, known)
  const key = `${place?.segment} ${place?.share} ${backwards} ${from}`
  const run = known.get(key) ?? pathRun(path, place, backwards, from)
  known.set(key, run)
  return run
}

function pathRun(path: Path, place: Place | undefined, backwards: boolean, from: Point | undefined): Path {
  const forwards = place ? openedAt(path, place) : path
  const body = withoutTinyPieces(backwards ? reversed(forwards) : forwards)
  if (!from) return body
  return distance(from, body.points[0]!) > touching ? ledInFrom(from, body) : startingAt(from, body)
}

const startingAt = (start: Point, path: Path): Path => ({ ...path, points: [start, ...path.points.slice(1)] })

/** Headings in the machine frame, where the axis has its home and its stops. */
function headingsOf(task: StrandTask, path: Path, near: Radians): Radians[] {
  const turn = task.rules.origin.turn
  return unwrappedHeadings(path, near - turn).map(heading => heading + turn)
}

function fits(task: StrandTask, chain: readonly Strand[]): boolean {
  return turnsToFit(headingRange(chain), chain[0]!.headings[0]!, task.heading, task.machine) !== undefined
}

function wind(task: StrandTask, chains: readonly Strand[][]): { chains: Chain[]; wound: WoundBead[] } {
  const wound: WoundBead[] = []
  let now = task.heading
  const turned = chains.map(chain => {
    const turns = turnsToFit(headingRange(chain), chain[0]!.headings[0]!, now, task.machine)
    const fitted =
      turns === undefined ? chain.map(strand => unwound(strand, task.machine, wound)) : shifted(chain, turns)
    now = fitted.at(-1)!.headings.at(-1)!
    return fitted
  })
  return { chains: turned, wound }
}

const shifted = (chain: Chain, turns: number): Strand[] =>
  chain.map(strand => ({
    ...strand,
    headings: strand.headings.map(heading => heading + 2 * Math.PI * turns),
  }))

function unwound(strand: Strand, machine: Machine, wound: WoundBead[]): Strand {
  const { headings, pieces, impossible } = windBack(strand.path, strand.headings, machine)
  const [least, most] = headingRange([strand])
  const stops = pieces.map(piece => strand.path.points[piece]!)
  wound.push({ bead: strand.bead.id, span: most - least, stops, impossible })
  return { ...strand, headings }
}
