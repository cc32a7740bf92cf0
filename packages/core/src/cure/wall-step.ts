import type { Instant, Seconds } from '../quantity/index.js'
import { conductionStep, type FaceLaw, faceFlux, faceTemperature } from './conduction.js'
import { type Cover, covers } from './cover.js'
import { type FaceBalance, faceBalance, faceLaw } from './face-balance.js'
import type { WallHeatInput } from './wall-case.js'
import type { Face, WallState } from './wall-state.js'
import type { WallWeather } from './wall-weather.js'

/** A bare bead keeps a wet skin this long, then dries off by 1/e in as long again: common practice, no source. */
const WET_SKIN: Seconds = 2 * 3600

type Pair<T> = readonly [left: T, right: T]

/** One step of a wall under its weather; the boundary laws are linearised again until heat in, out and stored agree. */
export function stepWall(
  state: WallState,
  input: WallHeatInput,
  from: Instant,
  step: Seconds,
  theta: number,
): void {
  const cover = covers[state.worn]
  readAir(input.weather, from + step, state.left, state.right)
  copy(state.temperatures, state.old)
  const generated = hydrate(state, step)
  const age = from + step - input.start
  const wetness: Pair<number> = [wetnessOf(state.left, cover, age), wetnessOf(state.right, cover, age)]
  const laws = settle(state, cover, wetness, step, theta)
  const balances: Pair<FaceBalance> = [
    faceBalance(state.left.air, cover, wetness[0], state.left.surface),
    faceBalance(state.right.air, cover, wetness[1], state.right.surface),
  ]
  state.balanceError = Math.max(state.balanceError, imbalance(state, balances, generated, step, theta))
  state.left.flux = faceFlux(laws[0], state.wall.leftHalf, state.temperatures[0]!)
  state.right.flux = faceFlux(laws[1], state.wall.rightHalf, state.temperatures.at(-1)!)
  dry(state.left, balances[0].water * step, cover)
  dry(state.right, balances[1].water * step, cover)
  wetAgain(state, from + step, cover, input.reserve ?? 0.25)
}

/** Faces this near to what their laws were drawn for are settled [K]; a face that goes on as it went needs one round, a change of cover three or four. */
const SETTLED = 0.01

function settle(
  state: WallState,
  cover: Cover,
  wetness: Pair<number>,
  step: Seconds,
  theta: number,
): Pair<FaceLaw> {
  const { left, right } = state
  const fromLeft = left.surface
  const fromRight = right.surface
  left.surface += left.drift * step
  right.surface += right.drift * step
  for (let round = 1; ; round += 1) {
    const wasLeft = left.surface
    const wasRight = right.surface
    const laws = conduct(state, cover, wetness, step, theta)
    const moved = Math.max(Math.abs(left.surface - wasLeft), Math.abs(right.surface - wasRight))
    if (moved >= SETTLED && round < 8) continue
    left.drift = (left.surface - fromLeft) / step
    right.drift = (right.surface - fromRight) / step
    return laws
  }
}

/** Solves the step from the old temperatures with the faces' laws at their last known temperatures. */
function conduct(
  state: WallState,
  cover: Cover,
  wetness: Pair<number>,
  step: Seconds,
  theta: number,
): Pair<FaceLaw> {
  const { wall, temperatures, old, heat, room, left, right } = state
  const laws: Pair<FaceLaw> = [
    faceLaw(left.air, cover, wetness[0], left.surface),
    faceLaw(right.air, cover, wetness[1], right.surface),
  ]
  copy(old, temperatures)
  conductionStep(wall, temperatures, heat, step, [laws[0], left.flux], [laws[1], right.flux], theta, room)
  left.surface = faceTemperature(laws[0], wall.leftHalf, temperatures[0]!)
  right.surface = faceTemperature(laws[1], wall.rightHalf, temperatures.at(-1)!)
  return laws
}

/** Share of the heat exchanged in the step that the stored heat does not account for, by the unlinearised balances. */
function imbalance(
  { wall, temperatures, old, left, right }: WallState,
  faces: Pair<FaceBalance>,
  generated: number,
  step: Seconds,
  theta: number,
): number {
  let stored = 0
  for (let i = 0; i < old.length; i += 1) stored += wall.capacities[i]! * (temperatures[i]! - old[i]!)
  const before = left.flux + right.flux
  const now = faces[0].total + faces[1].total
  const came = step * (theta * now + (1 - theta) * before) + generated
  const gross = step * (grossOf(faces[0]) + grossOf(faces[1])) + generated
  // Under 1 W/m² of exchange there is nothing to take a share of.
  return Math.abs(came - stored) / Math.max(gross, step)
}

/** By hand: for so few cells `set` of a typed array takes as long as the conduction itself. */
function copy(from: Float64Array, to: Float64Array): void {
  for (let i = 0; i < from.length; i += 1) to[i] = from[i]!
}

const grossOf = (face: FaceBalance): number =>
  Math.abs(face.sun) + Math.abs(face.air) + Math.abs(face.longwave) + Math.abs(face.evaporation)

/** Ages every cell and sets its heat for the step [W/m²]; answers the sum of it over the step [J/m²]. */
function hydrate(state: WallState, step: Seconds): number {
  const { ages, temperatures, heat, tables, store } = state
  let sum = 0
  for (let i = 0; i < ages.length; i += 1) {
    ages[i] = ages[i]! + step * tables.ageFactor(temperatures[i]!)
    const now = tables.hydrated(ages[i]!)
    // The difference of the curve, not its slope: no heat is lost to the step.
    const released = store * (now - state.hydrated[i]!)
    state.hydrated[i] = now
    heat[i] = released / step
    sum += released
  }
  return sum
}

function wetnessOf(face: Face, cover: Cover, age: Seconds): number {
  if (cover.evaporation === 'none') return 0
  if (cover.evaporation === 'wet') return face.cloth > 0 ? 1 : 0
  return age <= WET_SKIN ? 1 : Math.exp((WET_SKIN - age) / WET_SKIN)
}

function dry(face: Face, water: number, cover: Cover): void {
  face.lost += Math.max(0, water)
  if (cover.store > 0) face.cloth = Math.max(0, Math.min(cover.store, face.cloth - water))
}

/** One walk with the hose serves both faces as soon as one of them is due. */
function wetAgain({ left, right, rewettings }: WallState, at: Instant, cover: Cover, reserve: number): void {
  if (cover.store === 0 || reserve === 0) return
  if (Math.min(left.cloth, right.cloth) > reserve * cover.store) return
  rewettings.push(
    { at, side: 'left', water: cover.store - left.cloth },
    { at, side: 'right', water: cover.store - right.cloth },
  )
  left.cloth = right.cloth = cover.store
}

/** Weather at a moment: straight between the middles of hours. */
function readAir(weather: WallWeather, at: Instant, left: Face, right: Face): void {
  const place = Math.max(0, Math.min(weather.count - 1, (at - weather.first) / 3600 - 0.5))
  const index = Math.min(weather.count - 2, Math.floor(place))
  const share = place - index
  const between = (column: Float64Array) => column[index]! + (column[index + 1]! - column[index]!) * share
  left.air.air = right.air.air = between(weather.air)
  left.air.vapour = right.air.vapour = between(weather.vapour)
  left.air.film = right.air.film = between(weather.film)
  left.air.surroundings = right.air.surroundings = between(weather.surroundings)
  left.air.pressure = right.air.pressure = between(weather.pressure)
  left.air.sun = between(weather.sunLeft)
  right.air.sun = between(weather.sunRight)
}
