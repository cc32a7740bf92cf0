import type { Point } from '../geometry/index.js'
import { type Machine, machinePoint, trapezoidTime, turnTime } from '../machine/index.js'
import type { Metres, Radians, Seconds } from '../quantity/index.js'
import { comesNear, type Obstacle, obstaclesOf } from './obstacle.js'
import type { RouteRules } from './options.js'
import type { Travel } from './pass.js'
import { distance } from './segment.js'

/** A travel to be made: between which points, from which height to which (machine frame), turning by how much. */
export interface TravelTask {
  readonly from: Point
  readonly to: Point
  readonly fromZ: Metres
  readonly toZ: Metres
  readonly turn: Radians
}

/** Up, over, down; the axis turns on the way over. Each of the three from rest to rest. */
export const travelOf = (task: TravelTask, machine: Machine, rules: RouteRules): Travel =>
  travelAt(liftOver(task, machine, rules), task, machine)

/** The same at a lift that is known. */
export function travelAt(lift: Metres, task: TravelTask, machine: Machine): Travel {
  const { from, to, turn } = task
  const over = rapidTime({ plan: distance(from, to), up: 0, turn }, machine)
  const raise = rapidTime({ plan: 0, up: task.toZ + lift - task.fromZ, turn: 0 }, machine)
  const lower = rapidTime({ plan: 0, up: lift, turn: 0 }, machine)
  return { from, to, lift, time: raise + over + lower, turn }
}

/** Time of one rapid move from rest to rest: the slowest of plan, height and heading, which run together. */
export function rapidTime(
  move: { readonly plan: Metres; readonly up: Metres; readonly turn: Radians },
  machine: Machine,
): Seconds {
  const { acceleration, travelSpeed, liftSpeed, headingRate, headingAcceleration } = machine
  return Math.max(
    trapezoidTime({ distance: move.plan, speed: travelSpeed, acceleration }),
    trapezoidTime({ distance: Math.abs(move.up), speed: liftSpeed, acceleration }),
    headingRate > 0 ? turnTime(move.turn, headingRate, headingAcceleration) : 0,
  )
}

/** Height above the layer that clears everything under the way. */
function liftOver(task: TravelTask, machine: Machine, rules: RouteRules): Metres {
  const clearance = machine.travelClearance
  const inTheWay = obstaclesUnder(task, machine, rules)
  const height = inTheWay.reduce(
    (highest, obstacle) =>
      obstacle.bottom <= highest + clearance ? Math.max(highest, obstacle.top) : highest,
    Math.max(task.toZ, task.fromZ),
  )
  return height + clearance - task.toZ
}

/** Obstacles the straight way passes over, lowest underside first so that clearing one may meet the next. */
export function obstaclesUnder(task: TravelTask, machine: Machine, rules: RouteRules): Obstacle[] {
  if (nothingInTheWay(machine, rules)) return []
  const [from, to] = [machinePoint(rules.origin, task.from), machinePoint(rules.origin, task.to)]
  return obstaclesOf(machine, rules)
    .filter(obstacle => obstacle.top > Math.min(task.toZ, task.fromZ))
    .filter(obstacle => comesNear(from, to, obstacle.outline, rules.nozzleRadius))
    .sort((a, b) => a.bottom - b.bottom)
}

/** Nothing stands proud, and the machine keeps out of nothing. */
export const nothingInTheWay = (machine: Machine, rules: Pick<RouteRules, 'proud'>): boolean =>
  rules.proud.length === 0 && machine.keepOut.length === 0
