import type { Path } from '../geometry/index.js'
import type { Machine } from '../machine/index.js'
import { arcSpeed, turnTime } from '../machine/index.js'
import type { MetresPerSecond, Radians, Seconds } from '../quantity/index.js'
import { beadArea } from '../wall/index.js'
import { type BeadSize, beadFlow } from './bead-flow.js'
import { headingTarget, headingTargets, isSharp } from './heading.js'
import type { Pass } from './pass.js'
import { type Segment, segmentsOf } from './segment.js'
import type { Chain, Strand } from './strand.js'
import { lastPeak, type Move, speedProfile } from './velocity.js'

/** What timing needs of a pass. */
type PassMotion = Pick<Pass, 'path' | 'speeds' | 'headings'>

/** Chain → passes with speeds, time and volume. */
export type PassTimer = (chain: Chain) => readonly Pass[]

/** For one machine and speed; a chain that recurs in another band, or in every other layer, is timed once. */
export function passTimer(machine: Machine, speed: MetresPerSecond): PassTimer {
  const timed = new Map<Path, { readonly chain: Chain; readonly passes: readonly Pass[] }[]>()
  return chain => {
    const begun = timed.get(chain[0]!.path) ?? []
    timed.set(chain[0]!.path, begun)
    const known = begun.find(each => runsAlike(each.chain, chain))
    if (known) return known.passes.map((pass, i) => ({ ...pass, bead: chain[i]!.bead.id }))
    const passes = timedPasses(chain, speed, machine)
    begun.push({ chain, passes })
    return passes
  }
}

const runsAlike = (a: Chain, b: Chain): boolean =>
  a.length === b.length &&
  a.every(({ bead, path, headings }, i) => {
    const other = b[i]!
    return (
      path === other.path &&
      bead.width === other.bead.width &&
      bead.height === other.bead.height &&
      headings.every((heading, k) => heading === other.headings[k])
    )
  })

function timedPasses(chain: Chain, speed: MetresPerSecond, machine: Machine): readonly Pass[] {
  const untimed = chain.map((strand, i) => passOf(strand, chain[i + 1], speed, machine))
  const times = chainTimes(untimed, machine)
  return untimed.map((pass, i) => ({ ...pass, time: times[i]! }))
}

/** The same passes at another speed asked for: the ways stay, the machine's limits are asked anew. */
export function retimedPasses(passes: readonly Pass[], speed: MetresPerSecond, machine: Machine): Pass[] {
  const faster = passes.map((pass, i) => {
    const { path, headings } = pass
    const speeds = pieceSpeeds({ bead: pass, path, headings }, passes[i + 1]?.headings[0], speed, machine)
    return { ...pass, speeds, flow: beadFlow(pass, Math.max(...speeds)) }
  })
  const times = chainTimes(faster, machine)
  return faster.map((pass, i) => ({ ...pass, time: times[i]! }))
}

/** Time of each pass of a chain that runs without a stop of the pump, its start lag with the first. */
export function chainTimes(passes: readonly PassMotion[], machine: Machine): Seconds[] {
  const moves = passes.map((pass, i) => movesOf(pass, passes[i + 1], passes[i - 1], machine))
  const { times } = speedProfile(moves.flat(), machine)
  let at = 0
  return passes.map((pass, i) => {
    const own = times.slice(at, at + moves[i]!.length)
    at += moves[i]!.length
    const turns = stopTurns(pass, passes[i - 1], machine)
    const stops = turns.reduce(
      (sum, turn) =>
        sum + turnTime(turn, machine.headingRate, machine.headingAcceleration) + machine.pump.startLag,
      i === 0 ? machine.pump.startLag : 0,
    )
    return own.reduce((sum, time) => sum + time, stops)
  })
}

/** Turns of the axis made at rest: at sharp corners inside a pass and where it follows another at an angle. */
export function stopTurns(pass: PassMotion, before: PassMotion | undefined, machine: Machine): Radians[] {
  if (machine.headingRate === 0) return []
  const segments = segmentsOf(pass.path)
  const jumps = segments
    .slice(1)
    .map((_, i) => pass.headings[i + 1]! - pass.headings[i]! - segments[i]!.sweep)
  const first = before ? [pass.headings[0]! - before.headings.at(-1)!] : []
  return [...first, ...jumps].filter(isSharp)
}

/** The pieces of a pass as moves between the passes it follows and leads to without a stop. */
export const movesOf = (
  pass: PassMotion,
  next: PassMotion | undefined,
  before: PassMotion | undefined,
  machine: Machine,
): Move[] => segmentsOf(pass.path).map(moveMaker(pass, next, before, machine))

/** Peak speed in the last piece of passes that follow one another without a stop. */
export const peakAtEnd = (passes: readonly PassMotion[], machine: Machine): MetresPerSecond =>
  lastPeak(movesBackwards(passes, machine), machine)

function* movesBackwards(passes: readonly PassMotion[], machine: Machine): Generator<Move> {
  for (let p = passes.length - 1; p >= 0; p--) {
    const segments = segmentsOf(passes[p]!.path)
    const make = moveMaker(passes[p]!, passes[p + 1], passes[p - 1], machine)
    for (let i = segments.length - 1; i >= 0; i--) yield make(segments[i]!, i)
  }
}

function moveMaker(
  pass: PassMotion,
  next: PassMotion | undefined,
  before: PassMotion | undefined,
  machine: Machine,
): (segment: Segment, i: number) => Move {
  const axis = machine.headingRate > 0
  const segments = segmentsOf(pass.path)
  return (segment, i) => {
    const end = i === 0 ? before?.headings.at(-1) : pass.headings[i - 1]! + segments[i - 1]!.sweep
    return {
      length: segment.length,
      speed: pass.speeds[i]!,
      turn: axis ? headingTarget(segment, pass.headings, i, next?.headings[0]) - pass.headings[i]! : 0,
      heading: segment.heading,
      endHeading: segment.heading + segment.sweep,
      afterStop: axis && end !== undefined && isSharp(pass.headings[i]! - end),
    }
  }
}

function passOf(strand: Strand, next: Strand | undefined, speed: MetresPerSecond, machine: Machine): Pass {
  const { bead, path, headings } = strand
  const length = segmentsOf(path).reduce((sum, segment) => sum + segment.length, 0)
  const speeds = pieceSpeeds(strand, next?.headings[0], speed, machine)
  return {
    bead: bead.id,
    path,
    width: bead.width,
    height: bead.height,
    length,
    volume: beadArea(bead.width, bead.height) * length,
    flow: beadFlow(bead, Math.max(...speeds)),
    speeds,
    time: 0,
    headings,
  }
}

/** Fastest on each piece: asked, the machine's own, the pump's most, the arc's and the axis's. */
function pieceSpeeds(
  { bead, path, headings }: Pick<Strand, 'path' | 'headings'> & { readonly bead: BeadSize },
  next: Radians | undefined,
  asked: MetresPerSecond,
  machine: Machine,
): MetresPerSecond[] {
  const straight = Math.min(
    asked,
    machine.printSpeedMost,
    machine.pump.flowMost / beadArea(bead.width, bead.height),
  )
  const targets = headingTargets(path, headings, next)
  return segmentsOf(path).map((segment, i) => {
    const turn = Math.abs(targets[i]! - headings[i]!)
    const axis =
      machine.headingRate > 0 && turn > 0 ? (machine.headingRate * segment.length) / turn : straight
    return Math.min(straight, arcSpeed(segment.radius, machine.acceleration, 0), axis)
  })
}
