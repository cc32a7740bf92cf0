import type { Path, Point } from '@dawnlift/core/geometry'
import { sayQuantity, type Units } from '@dawnlift/core/limit'
import { type Machine, sameFrame } from '@dawnlift/core/machine'
import { movesOf, type Pass, routeSection, speedProfile } from '@dawnlift/core/route'
import type { Bead } from '@dawnlift/core/wall'
import { writeLift } from '../rs274/index.js'
import type { TrialFile, TrialPrint } from './trial-wall.js'

type BeadPrint = Pick<TrialPrint, 'beadWidth' | 'layerHeight' | 'speed' | 'units'>

/** Shares of the speed the job prints at; measured twice it is known how far one bead can be trusted. */
const LADDER = [0.5, 0.75, 1, 1.25] as const
const STRAIGHT = 1.5
/** Turns of the sampler [°], and the run between them: long enough to come up to speed on the slowest machine of the profiles. */
const TURNS = [30, 60, 90, 120] as const
const RUN = 0.8

/** One straight bead a file, each at a speed of its own: lay all of them, and measure width and height in the middle. */
export function speedLadder(machine: Machine, print: BeadPrint): readonly TrialFile[] {
  const said = wordsIn(print.units)
  const speeds = [...new Set(LADDER.map(share => Math.min(machine.printSpeedMost, share * print.speed)))]
  return speeds.map((speed, index) => {
    const across = (index - (speeds.length - 1) / 2) * 4 * print.beadWidth
    const laid = trialBead(machine, { ...print, speed }, [
      [-STRAIGHT / 2, across],
      [STRAIGHT / 2, across],
    ])
    // what goes into the sheet is the flow pumped: of it the bead's own is the share that trials found before
    const flow = laid.pass.flow / (machine.laying?.fill ?? 1)
    const fastest = Math.max(...laid.pass.speeds)
    const words = [
      `bead ${index + 1} of ${speeds.length}: ${said.speed(fastest)}, ${said.flow(flow)}`,
      `predicted before the trial: ${said.size(print.beadWidth)} wide, ${said.size(print.layerHeight)} high where pump and nozzle are as set`,
      'when it has come to rest measure width and height in the middle, the bare length at its start and the tail past its end',
    ]
    const name = `ladder-${index + 1}-${Math.round(fastest * 1000)}-mm-s.ngc`
    return { name, title: `Speed ladder, ${said.speed(fastest)}`, words, text: laid.text(words) }
  })
}

/** One bead round four corners, each sharper than the last; how slow the nozzle gets in each is said beforehand. */
export function cornerSampler(machine: Machine, print: BeadPrint): TrialFile {
  const laid = trialBead(machine, print, cornerPoints())
  const said = wordsIn(print.units)
  const words = [
    `corners of ${TURNS.join(', ')} degrees, ${said.size(RUN)} of straight before each`,
    `predicted before the trial: the nozzle slows to ${cornerSpeeds(laid.pass, machine).map(said.speed).join(', ')} in them, from ${said.speed(Math.max(...laid.pass.speeds))}`,
    'measure the width in each corner and a hand before it',
  ]
  return { name: 'corner-sampler.ngc', title: 'Corner sampler', words, text: laid.text(words) }
}

/** Left and right in turn, so that the bead keeps clear of itself. */
function cornerPoints(): readonly Point[] {
  const points: Point[] = [[0, 0]]
  let heading = 0
  ;[0, ...TURNS].forEach((turn, i) => {
    heading += ((i % 2 === 0 ? -turn : turn) * Math.PI) / 180
    const [x, y] = points[points.length - 1]!
    points.push([x + RUN * Math.cos(heading), y + RUN * Math.sin(heading)])
  })
  const middle = (axis: 0 | 1) =>
    (Math.min(...points.map(point => point[axis])) + Math.max(...points.map(point => point[axis]))) / 2
  const [x, y] = [middle(0), middle(1)]
  return points.map(point => [point[0] - x, point[1] - y])
}

/** Speed at each corner of a bead; 0 where a nozzle with a heading stops to turn. */
function cornerSpeeds(pass: Pass, machine: Machine): readonly number[] {
  const moves = movesOf(pass, undefined, undefined, machine)
  const { ends } = speedProfile(moves, machine)
  return moves.slice(1).map((move, i) => (move.afterStop ? 0 : ends[i + 1]!))
}

/** A bead through points about the middle of the machine's reach. */
function trialBead(machine: Machine, print: BeadPrint, points: readonly Point[]) {
  const [x, y] = [machine.reach.x, machine.reach.y].map(([least, most]) => (least + most) / 2)
  const path: Path = {
    points: points.map(([along, across]) => [x! + along, y! + across] as const),
    bulges: points.slice(1).map(() => 0),
    closed: false,
  }
  const bead: Bead = { id: 'trial', role: 'line', path, width: print.beadWidth, height: print.layerHeight }
  const band = { fromLayer: 1, toLayer: 1, body: [], bodyArea: 0, beads: [bead], thinPlaces: [] }
  const options = { speed: print.speed, origin: sameFrame, ...(print.units ? { units: print.units } : {}) }
  const { routes } = routeSection({ section: 'T', layers: 1, bands: [band], volume: 0 }, machine, options)
  const file = { job: 'trial', lift: 'T1', machine, options, routes, fromLayer: 1, toLayer: 1 }
  const text = (words: readonly string[]) => words.map(each => `(MSG, ${each})\n`).join('') + writeLift(file)
  return { pass: routes.routes[0]!.passes[0]!, text }
}

const wordsIn = (units: Units = 'metric') => ({
  speed: (speed: number) => sayQuantity(speed * 1000, 'mm/s', units),
  flow: (flow: number) => sayQuantity(flow * 60_000, 'L/min', units),
  size: (size: number) => sayQuantity(size * 1000, 'mm', units),
})
