import { type Arc, type ArcTask, arcBox, arcOf, arcWords, planes } from './arc.js'
import type { Block } from './check-line.js'
import type { FeedMove, RapidMove } from './machine-run.js'
import {
  type Axis,
  axes,
  isRotary,
  lengthUnit,
  type MachineState,
  pointOf,
  unitOf,
  zeroOf,
} from './machine-state.js'
import type { Report } from './read-line.js'

/** Moves the state along one line and tells the move made, if any. */
export function followMotion(
  state: MachineState,
  block: Block,
  rotary: Axis,
  report: Report,
): RapidMove | FeedMove | undefined {
  const named = axes.filter(axis => block.values[axis] !== undefined)
  const motion = state.motion
  if (motion === undefined || motion === 80) {
    report(
      'rs274/no-motion',
      block.line,
      `${named.join(' ')} stand on the line but no G0, G1, G2 or G3 is in force.`,
    )
    return undefined
  }
  const target = targetOf(state, block, named, report)
  if (!target) return undefined
  return motion === 0 ? rapid(state, target, rotary, block.line) : feed(state, block, target, rotary, report)
}

type Target = Partial<Record<Axis, number>>

function targetOf(
  state: MachineState,
  block: Block,
  named: readonly Axis[],
  report: Report,
): Target | undefined {
  const target: Target = { ...state.at }
  const machineFrame = block.g.includes(53)
  for (const axis of named) {
    const given = block.values[axis]! * unitOf(state, axis)
    if (machineFrame) target[axis] = given
    else if (state.absolute) target[axis] = given + zeroOf(state, axis)
    else if (state.at[axis] === undefined) {
      report(
        'rs274/unknown-place',
        block.line,
        `${axis} moves by a step (G91) before the file says where it is.`,
      )
      return undefined
    } else target[axis] = state.at[axis] + given
  }
  return target
}

function rapid(state: MachineState, target: Target, rotary: Axis, line: number): RapidMove {
  const from = pointOf(state)
  const facts = { line, from, turn: turnOf(state, target, rotary), length: straightLength(state, target) }
  Object.assign(state.at, target)
  return { kind: 'rapid', ...facts, to: pointOf(state), heading: state.at[rotary] }
}

function feed(
  state: MachineState,
  block: Block,
  target: Target,
  rotary: Axis,
  report: Report,
): FeedMove | undefined {
  const arc = state.motion === 1 ? undefined : arcMove(state, block, target, report)
  if (state.motion !== 1 && !arc) {
    // the move is lost, the place is not: later lines are judged from where this one would have ended
    Object.assign(state.at, target)
    return undefined
  }
  const length = arc ? arc.length : straightLength(state, target)
  const pace = paceOf(state, block, target, length, report)
  const from = pointOf(state)
  const turn = turnOf(state, target, rotary)
  const box = arc ? arc.box : straightBox(state, target)
  const directions = arc ? arc.directions : straightDirections(state, target)
  Object.assign(state.at, target)
  return {
    kind: arc ? 'arc' : 'line',
    line: block.line,
    from,
    to: pointOf(state),
    length,
    turn,
    heading: state.at[rotary],
    sweep: arc?.sweep ?? 0,
    directions,
    box,
    ...pace,
    pump: state.pump,
    setting: state.setting,
  }
}

/** F: length per minute along XYZ, degrees per minute for rotary axes alone; with G93 one over the minutes. */
function paceOf(state: MachineState, block: Block, target: Target, length: number, report: Report) {
  const turned = Math.hypot(
    ...axes.filter(isRotary).map(axis => (target[axis] ?? 0) - (state.at[axis] ?? target[axis] ?? 0)),
  )
  const way = length > 0 ? length : turned
  if (state.inverseTime && block.values.F === undefined)
    report('rs274/no-feed', block.line, 'With G93 in force every G1, G2 and G3 line needs its own F.')
  if (!state.feed || state.feed.value === 0) {
    if (!state.inverseTime || state.feed?.value === 0)
      report('rs274/no-feed', block.line, 'The line moves at feed, but no F above zero is in force.')
    return { speed: 0, time: 0 }
  }
  const { value, units } = state.feed
  if (state.inverseTime) return { speed: (way * value) / 60, time: 60 / value }
  const speed = (value * (length > 0 ? lengthUnit(units) : Math.PI / 180)) / 60
  return { speed, time: way / speed }
}

interface ArcMove {
  readonly length: number
  readonly sweep: number
  readonly box: FeedMove['box']
  readonly directions: FeedMove['directions']
}

function arcMove(state: MachineState, block: Block, target: Target, report: Report): ArcMove | undefined {
  const plane = planes[state.plane]
  const task = arcTask(state, block, target)
  if (typeof task === 'string') {
    report('rs274/arc', block.line, task)
    return undefined
  }
  const arc = arcOf(task, state.units)
  if (typeof arc === 'string') {
    report('rs274/arc', block.line, arc)
    return undefined
  }
  const climb = (target[plane.across] ?? 0) - (state.at[plane.across] ?? target[plane.across] ?? 0)
  return {
    length: Math.hypot(arc.radius * arc.sweep, climb),
    sweep: state.plane === 17 ? arc.sweep : 0,
    box: boxOf(state, target, plane, arc),
    directions: state.plane === 17 ? directionsOf(arc) : undefined,
  }
}

function arcTask(state: MachineState, block: Block, target: Target): ArcTask | string {
  const plane = planes[state.plane]
  const [a, b] = plane.axes
  const offset = (letter: string) => {
    const value = block.values[letter]
    return value === undefined ? undefined : value * lengthUnit(state.units)
  }
  if (block.values[a] === undefined && block.values[b] === undefined)
    return `An arc in this plane names neither ${a} nor ${b}.`
  const [fa, fb, ta, tb] = [state.at[a], state.at[b], target[a], target[b]]
  if (fa === undefined || fb === undefined || ta === undefined || tb === undefined)
    return 'An arc begins before the file says where the nozzle is. Move there first.'
  if (!arcWords(block.values)) return 'An arc has neither a centre (I J K of its plane) nor a radius R.'
  return {
    from: [fa, fb],
    to: [ta, tb],
    clockwise: state.motion === 2,
    offsets: [offset(plane.offsets[0]), offset(plane.offsets[1])],
    radius: offset('R'),
  }
}

function boxOf(
  state: MachineState,
  target: Target,
  plane: (typeof planes)[17 | 18 | 19],
  arc: Arc,
): FeedMove['box'] {
  const [a0, a1, b0, b1] = arcBox(arc)
  const across = straightRange(state, target, plane.across)
  const ranges = { [plane.axes[0]]: [a0, a1], [plane.axes[1]]: [b0, b1], [plane.across]: across }
  return (['X', 'Y', 'Z'] as const).flatMap(axis => ranges[axis]!) as unknown as FeedMove['box']
}

const directionsOf = (arc: Arc): readonly [number, number] => {
  const start = arc.startAngle + (Math.sign(arc.sweep) * Math.PI) / 2
  return [start, start + arc.sweep]
}

const straightRange = (state: MachineState, target: Target, axis: Axis): readonly [number, number] => {
  const [from, to] = [state.at[axis] ?? target[axis] ?? Number.NaN, target[axis] ?? Number.NaN]
  return [Math.min(from, to), Math.max(from, to)]
}

function straightBox(state: MachineState, target: Target): FeedMove['box'] {
  const [x0, x1] = straightRange(state, target, 'X')
  const [y0, y1] = straightRange(state, target, 'Y')
  const [z0, z1] = straightRange(state, target, 'Z')
  return [x0, x1, y0, y1, z0, z1]
}

const stepOf = (state: MachineState, target: Target, axis: Axis): number => {
  const from = state.at[axis]
  return from === undefined ? 0 : (target[axis] ?? from) - from
}

const straightLength = (state: MachineState, target: Target): number =>
  Math.hypot(stepOf(state, target, 'X'), stepOf(state, target, 'Y'), stepOf(state, target, 'Z'))

const turnOf = (state: MachineState, target: Target, rotary: Axis): number => stepOf(state, target, rotary)

function straightDirections(state: MachineState, target: Target): FeedMove['directions'] {
  const [dx, dy] = [stepOf(state, target, 'X'), stepOf(state, target, 'Y')]
  if (dx === 0 && dy === 0) return undefined
  const direction = Math.atan2(dy, dx)
  return [direction, direction]
}
