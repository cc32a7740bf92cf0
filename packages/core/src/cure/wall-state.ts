import type { Celsius, Instant } from '../quantity/index.js'
import { stepRoom } from './conduction.js'
import { type CoverKind, covers } from './cover.js'
import { type CureTables, cureTables } from './cure-tables.js'
import type { FaceAir } from './face-balance.js'
import { hydrationOf, hydrationStore } from './hydration.js'
import type { WallHeatInput } from './wall-case.js'
import { cellSize, wallCells } from './wall-cells.js'
import { emptyTrace, type Rewetting, type WallTrace } from './wall-trace.js'

export type Side = 'left' | 'right'

/** One face as it is now. */
export interface Face {
  readonly air: { -readonly [Key in keyof FaceAir]: number }
  surface: Celsius
  /** How fast that changed in the last step [K/s]: a guess at the next. */
  drift: number
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
  readonly tables: CureTables
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
    tables: input.tables ?? cureTables(input.mix, input.hydration ?? hydrationOf(input.mix)),
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
  drift: 0,
  flux: 0,
  cloth: 0,
  lost: 0,
})

/** Cloth comes on soaked. */
export function wear(state: WallState, cover: CoverKind): void {
  if (cover === state.worn) return
  state.worn = cover
  // The faces jump: how they moved before says nothing of how they will.
  state.left.drift = state.right.drift = 0
  state.left.cloth = state.right.cloth = covers[cover].store
}

export function recordWall(
  { trace, profile, temperatures, ages, left, right }: WallState,
  at: Instant,
): void {
  // By hand: `Array.from` of a typed array takes as long as the step itself.
  const row: Celsius[] = []
  for (let i = 0; i < temperatures.length; i += 1) row.push(temperatures[i]!)
  profile.push(row)
  trace.at.push(at)
  trace.left.push(left.surface)
  trace.right.push(right.surface)
  let [most, least, age] = [temperatures[0]!, temperatures[0]!, ages[0]!]
  for (let i = 1; i < ages.length; i += 1) {
    if (temperatures[i]! > most) most = temperatures[i]!
    if (temperatures[i]! < least) least = temperatures[i]!
    if (ages[i]! < age) age = ages[i]!
  }
  trace.most.push(most)
  trace.least.push(least)
  trace.age.push(age)
  trace.lostLeft.push(left.lost)
  trace.lostRight.push(right.lost)
}
