import type { RunPoint } from './machine-run.js'

export type Axis = 'X' | 'Y' | 'Z' | 'A' | 'B' | 'C'
export const axes: readonly Axis[] = ['X', 'Y', 'Z', 'A', 'B', 'C']

/** Everything that stays in force from line to line. Lengths in metres, rotary axes in radians. */
export interface MachineState {
  units: 'mm' | 'in'
  absolute: boolean
  plane: 17 | 18 | 19
  inverseTime: boolean
  /** Length per second, radians per second for a rotary axis alone; none until an F word. */
  feed: { readonly value: number; readonly units: 'mm' | 'in' } | undefined
  setting: number | undefined
  pump: boolean
  motion: 0 | 1 | 2 | 3 | 80 | undefined
  /** In the machine frame; missing: not known yet. */
  readonly at: Partial<Record<Axis, number>>
  /** G92 and work systems: program coordinate + both = machine coordinate. */
  readonly shift: Partial<Record<Axis, number>>
  savedShift: Partial<Record<Axis, number>>
  readonly systems: Partial<Record<Axis, number>>[]
  system: number
  message: string | undefined
}

/** As a controller stands after start: millimetres until told otherwise, nothing known of where it is. */
export const initialState = (): MachineState => ({
  units: 'mm',
  absolute: true,
  plane: 17,
  inverseTime: false,
  feed: undefined,
  setting: undefined,
  pump: false,
  motion: undefined,
  at: {},
  shift: {},
  savedShift: {},
  systems: Array.from({ length: 9 }, () => ({})),
  system: 0,
  message: undefined,
})

export const isRotary = (axis: Axis): boolean => axis === 'A' || axis === 'B' || axis === 'C'

/** One file unit of an axis in metres or radians. */
export const unitOf = (state: MachineState, axis: Axis): number =>
  isRotary(axis) ? Math.PI / 180 : lengthUnit(state.units)

export const lengthUnit = (units: 'mm' | 'in'): number => (units === 'mm' ? 1e-3 : 0.0254)

/** Where the program's zero lies on an axis. */
export const zeroOf = (state: MachineState, axis: Axis): number =>
  (state.shift[axis] ?? 0) + (state.systems[state.system]?.[axis] ?? 0)

export const pointOf = (state: MachineState): RunPoint => ({
  x: state.at.X,
  y: state.at.Y,
  z: state.at.Z,
})
