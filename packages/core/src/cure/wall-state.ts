import type { Celsius, Instant } from '../quantity/index.js'
import { stepRoom } from './conduction.js'
import { type CoverKind, covers } from './cover.js'
import type { FaceAir } from './face-balance.js'
import { type Hydration, hydrationOf, hydrationStore } from './hydration.js'
import type { WallHeatInput } from './wall-case.js'
import { cellSize, wallCells } from './wall-cells.js'
import { emptyTrace, type Rewetting, type WallTrace } from './wall-trace.js'

export type Side = 'left' | 'right'

/** One face as it is now. */
export interface Face {
  readonly air: { -readonly [Key in keyof FaceAir]: number }
  surface: Celsius
  /** Heat it took in at the end of the last step [W/m²]. */
  flux: number
  /** Water left in the cloth [kg/m²]. */
  cloth: number
  /** Water lost since the start [kg/m²]. */
  lost: number
}

/** A wall on its way; changed in place by each step, seen by nobody outside `wallHeat`. */
export interface WallState {
  readonly wall: ReturnType<typeof wallCells>
  readonly room: ReturnType<typeof stepRoom>
  readonly temperatures: Float64Array
  readonly old: Float64Array
  readonly ages: Float64Array
  readonly hydrated: Float64Array
  readonly heat: Float64Array
  readonly hydration: Hydration
  /** Binder heat of one cell [J/m²]. */
  readonly store: number
  readonly left: Face
  readonly right: Face
  readonly rewettings: Rewetting[]
  readonly trace: WallTrace
  readonly profile: Celsius[][]
  worn: CoverKind
  balanceError: number
}

export function freshWall(input: WallHeatInput): WallState {
  const wall = wallCells(input.build, input.mix)
  const cells = wall.capacities.length
  return {
    wall,
    room: stepRoom(cells),
    temperatures: new Float64Array(cells).fill(input.mixTemperature),
    old: new Float64Array(cells),
    ages: new Float64Array(cells),
    hydrated: new Float64Array(cells),
    heat: new Float64Array(cells),
    hydration: input.hydration ?? hydrationOf(input.mix),
    store: hydrationStore(input.mix) * cellSize(input.build, cells),
    left: freshFace(input.mixTemperature),
    right: freshFace(input.mixTemperature),
    rewettings: [],
    trace: emptyTrace(),
    profile: [],
    worn: 'bare',
    balanceError: 0,
  }
}

const freshFace = (surface: Celsius): Face => ({
  air: { air: 0, vapour: 0, film: 0, surroundings: 0, sun: 0, pressure: 0 },
  surface,
  flux: 0,
  cloth: 0,
  lost: 0,
})

/** Cloth comes on soaked. */
export function wear(state: WallState, cover: CoverKind): void {
  if (cover === state.worn) return
  state.worn = cover
  state.left.cloth = state.right.cloth = covers[cover].store
}

export function recordWall(
  { trace, profile, temperatures, ages, left, right }: WallState,
  at: Instant,
): void {
  profile.push(Array.from(temperatures))
  trace.at.push(at)
  trace.left.push(left.surface)
  trace.right.push(right.surface)
  trace.most.push(temperatures.reduce((a, b) => Math.max(a, b)))
  trace.least.push(temperatures.reduce((a, b) => Math.min(a, b)))
  trace.age.push(ages.reduce((a, b) => Math.min(a, b)))
  trace.lostLeft.push(left.lost)
  trace.lostRight.push(right.lost)
}
