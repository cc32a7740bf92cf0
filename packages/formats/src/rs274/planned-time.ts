import type { Machine } from '@dawnlift/core/machine'
import { turnTime } from '@dawnlift/core/machine'
import { type Move, rapidTime, speedProfile } from '@dawnlift/core/route'
import type { FeedMove, MachineRun, RapidMove, RunStep } from './machine-run.js'

/**
 * Time of every step of a file by the limits of a machine: the moves as parsed, the feed words as speed limits, and
 * the same accelerations, corner speeds and heading limits as the plan. The nozzle rests at rapid moves, dwells, stops,
 * turns on the spot, moves straight up or down, and where the pump starts; it does not where the pump stops.
 *
 * What is compared with a plan is this sum; the feed words alone leave the accelerations out.
 */
export function stepTimes(run: MachineRun, machine: Machine): number[] {
  const times: number[] = new Array(run.steps.length).fill(0)
  let chain: number[] = []
  const finish = () => {
    const moves = chain.map(i => moveOf(run.steps[i] as FeedMove, machine))
    speedProfile(moves, machine).times.forEach((time, k) => {
      times[chain[k]!] = time
    })
    chain = []
  }
  run.steps.forEach((step, i) => {
    if (runsOn(step)) chain.push(i)
    else if (!(step.kind === 'pump' && !step.on)) {
      finish()
      times[i] = timeAlone(step, machine)
    }
  })
  finish()
  return times
}

const runsOn = (step: RunStep): step is FeedMove =>
  (step.kind === 'line' || step.kind === 'arc') &&
  step.directions !== undefined &&
  step.length > 0 &&
  step.speed > 0

function timeAlone(step: RunStep, machine: Machine): number {
  switch (step.kind) {
    case 'rapid':
      return rapidTime({ plan: planLength(step), up: climb(step), turn: step.turn }, machine)
    case 'line':
    case 'arc':
      return alone(step, machine)
    case 'dwell':
      return step.seconds
    case 'pump':
    case 'stop':
      return 0
  }
}

/** Feed moves without a way in plan: up, down, or turning on the spot. */
function alone(step: FeedMove, machine: Machine): number {
  const up = rapidTime({ plan: 0, up: climb(step), turn: 0 }, machine)
  if (step.turn === 0) return Math.max(up, step.time)
  const rate = step.length > 0 ? machine.headingRate : Math.min(machine.headingRate, step.speed)
  return machine.headingRate > 0 && rate > 0
    ? Math.max(up, turnTime(step.turn, rate, machine.headingAcceleration))
    : up
}

function moveOf(step: FeedMove, machine: Machine): Move {
  const [heading, endHeading] = step.directions!
  const turn = machine.headingRate > 0 ? step.turn : 0
  return { length: step.length, speed: step.speed, turn, heading, endHeading, afterStop: false }
}

const between = (a: number | undefined, b: number | undefined): number =>
  a === undefined || b === undefined ? 0 : b - a

const planLength = ({ from, to }: RapidMove): number =>
  Math.hypot(between(from.x, to.x), between(from.y, to.y))
const climb = ({ from, to }: RapidMove | FeedMove): number => between(from.z, to.z)
