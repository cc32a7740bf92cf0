import type { Block } from './check-line.js'
import { type Axis, axes, type MachineState, unitOf, zeroOf } from './machine-state.js'
import type { Report } from './read-line.js'

/** Words that set how later words are read, in the order of NISTIR 6556, table 8. */
export function applyModes(state: MachineState, block: Block, report: Report): void {
  const has = (g: number) => block.g.includes(g)
  if (has(93)) state.inverseTime = true
  if (has(94)) state.inverseTime = false
  if (block.values.F !== undefined) state.feed = { value: block.values.F, units: unitsAfter(state, block) }
  if (block.values.S !== undefined) state.setting = block.values.S
  for (const plane of [17, 18, 19] as const) if (has(plane)) state.plane = plane
  state.units = unitsAfter(state, block)
  const system = block.g.map(g => systems.indexOf(g)).find(index => index >= 0)
  if (system !== undefined) state.system = system
  if (has(90)) state.absolute = true
  if (has(91)) state.absolute = false
  if (has(10)) setSystem(state, block, report)
  applyShift(state, block, report)
}

const systems: readonly number[] = [54, 55, 56, 57, 58, 59, 59.1, 59.2, 59.3]

/** A unit word counts for the whole line: F on the line of G20 is in inches. */
const unitsAfter = (state: MachineState, block: Block): 'mm' | 'in' =>
  block.g.includes(20) ? 'in' : block.g.includes(21) ? 'mm' : state.units

/** G10 L2 Pn: where work system n begins. */
function setSystem(state: MachineState, block: Block, report: Report): void {
  const { L, P } = block.values
  if (L !== 2 || P === undefined || !Number.isInteger(P) || P < 1 || P > 9) {
    report('rs274/g10', block.line, 'G10 is read as G10 L2 P1 to P9 only.')
    return
  }
  for (const axis of axes)
    if (block.values[axis] !== undefined)
      state.systems[P - 1]![axis] = block.values[axis]! * unitOf(state, axis)
}

/** G92 calls the present place by other coordinates; G92.1 and G92.2 end that, G92.3 takes it up again. */
function applyShift(state: MachineState, block: Block, report: Report): void {
  if (block.g.includes(92.1)) clearShift(state, true)
  if (block.g.includes(92.2)) clearShift(state, false)
  if (block.g.includes(92.3)) Object.assign(state.shift, state.savedShift)
  if (!block.g.includes(92)) return
  const named = axes.filter(axis => block.values[axis] !== undefined)
  if (named.length === 0) report('rs274/no-axis', block.line, 'G92 names no axis.')
  for (const axis of named) shiftAxis(state, axis, block, report)
  state.savedShift = { ...state.shift }
}

function shiftAxis(state: MachineState, axis: Axis, block: Block, report: Report): void {
  const at = state.at[axis]
  const wanted = block.values[axis]! * unitOf(state, axis)
  if (at !== undefined) state.shift[axis] = (state.shift[axis] ?? 0) + at - (wanted + zeroOf(state, axis))
  else if (wanted === 0) state.at[axis] = zeroOf(state, axis)
  else
    report(
      'rs274/unknown-place',
      block.line,
      `G92 renames ${axis} before the file says where ${axis} is. Move there first.`,
    )
}

function clearShift(state: MachineState, forGood: boolean): void {
  for (const axis of axes) delete state.shift[axis]
  if (forGood) state.savedShift = {}
}
