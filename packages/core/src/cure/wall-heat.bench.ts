import { dryInland, summerSite } from '../weather/fixtures/summer-site.js'
import {
  hoursFromNormals,
  humidityRatio,
  latentHeat,
  saturationPressure,
  saturationSlope,
} from '../weather/index.js'
import { cureTables } from './cure-tables.js'
import { hydrationOf, hydrationStore } from './hydration.js'
import { cellSize, wallCells } from './wall-cells.js'
import { wallHeat } from './wall-heat.js'
import { type WallWeather, wallWeather } from './wall-weather.js'

const STEP = 300
const STEPS = (7 * 86400) / STEP
const build = { kind: 'double', beadWidth: 0.05, thickness: 0.25 } as const
const { mix } = summerSite

/**
 * The same arithmetic as one loop over typed arrays: ageing, hydration, the tridiagonal system, a wet face's law on both sides, its
 * evaporation and the heat balance that closes each step; no covers that change, no trace. What a lift costs at the least.
 */
function plainLoop(weather: WallWeather): (day: number) => number {
  const { capacities, conductances, leftHalf } = wallCells(build, mix)
  const n = capacities.length
  const tables = cureTables(mix, hydrationOf(mix))
  const store = hydrationStore(mix) * cellSize(build, n)
  const [T, age, share, heat, upper, right] = Array.from({ length: 6 }, () => new Float64Array(n)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const [gain, loss, flux, surface] = Array.from({ length: 4 }, () => new Float64Array(2)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  return day => {
    T.fill(28)
    surface.fill(28)
    for (const column of [age, share, flux]) column.fill(0)
    let lost = 0
    let astray = 0
    for (let step = 0; step < STEPS; step += 1) {
      const place = Math.min(weather.count - 2, day * 24 + 9 + ((step + 1) * STEP) / 3600 - 0.5)
      const hour = Math.floor(place)
      const part = place - hour
      const at = (column: Float64Array) => column[hour]! + (column[hour + 1]! - column[hour]!) * part
      const [air, vapour, film, around, pressure] = [
        at(weather.air),
        at(weather.vapour),
        at(weather.film),
        at(weather.surroundings),
        at(weather.pressure),
      ]
      for (let i = 0; i < n; i += 1) {
        age[i] = age[i]! + STEP * tables.ageFactor(T[i]!)
        const now = tables.hydrated(age[i]!)
        heat[i] = (store * (now - share[i]!)) / STEP
        share[i] = now
      }
      for (let side = 0; side < 2; side += 1) {
        const Ts = surface[side]!
        const K = Ts + 273.15
        const radiation = 0.9 * 5.670374e-8 * (K * K + around * around) * (K + around)
        const saturated = saturationPressure(Ts)
        const water = (film / (1005 * 0.91)) * (humidityRatio(saturated, pressure) - vapour)
        const slope =
          (latentHeat(Ts) * (film / (1005 * 0.91)) * 0.621945 * pressure * saturationSlope(Ts, saturated)) /
          (pressure - saturated) ** 2
        loss[side] = film + radiation + slope
        gain[side] =
          0.7 * at(side === 0 ? weather.sunLeft : weather.sunRight) +
          film * air +
          radiation * (around - 273.15) -
          latentHeat(Ts) * water +
          slope * Ts
      }
      let stored = 0
      let before = 0
      let flowIn = 0.5 * flux[0]!
      for (let i = 0; i < n; i += 1) {
        stored -= capacities[i]! * T[i]!
        const below = i > 0 ? 0.5 * conductances[i - 1]! : 0
        const above = i < n - 1 ? 0.5 * conductances[i]! : 0
        const flowOut = i < n - 1 ? above * (T[i]! - T[i + 1]!) : -0.5 * flux[1]!
        let diagonal = capacities[i]! / STEP + below + above
        let known = (capacities[i]! / STEP) * T[i]! + flowIn - flowOut + heat[i]!
        if (i === 0 || i === n - 1) {
          const side = i === 0 ? 0 : 1
          const seen = leftHalf / (loss[side]! + leftHalf)
          diagonal += 0.5 * loss[side]! * seen
          known += 0.5 * gain[side]! * seen
        }
        const pivot = diagonal - below * before
        right[i] = (known + (i > 0 ? below * right[i - 1]! : 0)) / pivot
        before = above / pivot
        upper[i] = before
        flowIn = flowOut
      }
      T[n - 1] = right[n - 1]!
      for (let i = n - 2; i >= 0; i -= 1) T[i] = right[i]! + upper[i]! * T[i + 1]!
      for (let i = 0; i < n; i += 1) stored += capacities[i]! * T[i]!
      let came = 0
      for (let side = 0; side < 2; side += 1) {
        const cell = T[side === 0 ? 0 : n - 1]!
        flux[side] = ((gain[side]! - loss[side]! * cell) * leftHalf) / (loss[side]! + leftHalf)
        const Ts = (gain[side]! + leftHalf * cell) / (loss[side]! + leftHalf)
        surface[side] = Ts
        const K = Ts + 273.15
        const water = (film / (1005 * 0.91)) * (humidityRatio(saturationPressure(Ts), pressure) - vapour)
        came +=
          0.7 * at(side === 0 ? weather.sunLeft : weather.sunRight) +
          film * (air - Ts) +
          0.9 * 5.670374e-8 * (K * K + around * around) * (K + around) * (around - K) -
          latentHeat(Ts) * water
        lost += Math.max(0, water) * STEP
      }
      astray = Math.max(astray, Math.abs(came * STEP - stored))
    }
    return lost + astray
  }
}

/** A campaign of 25 lifts, one a day, each followed for seven days in steps of five minutes. */
export function bench(): { readonly name: string; readonly run: () => void }[] {
  const hours = hoursFromNormals(dryInland, summerSite.site, '2026-07-01', 40)
  const weather = wallWeather(summerSite.site, hours, { leftBearing: Math.PI, height: 0.5 })
  const tables = cureTables(mix, hydrationOf(mix))
  const plain = plainLoop(weather)
  const lift = (day: number, step?: number) => {
    const start = weather.first + day * 86400 + 9 * 3600
    return wallHeat({
      build,
      mix,
      weather,
      start,
      mixTemperature: 28,
      covers: [{ from: start + 5400, cover: 'wet-burlap' }],
      duration: 7 * 86400,
      tables,
      ...(step === undefined ? {} : { step }),
    })
  }
  const all = (one: (day: number) => unknown) => () => {
    for (let day = 0; day < 25; day += 1) one(day)
  }
  return [
    { name: 'the same arithmetic as a plain loop on typed arrays', run: all(plain) },
    { name: 'heat of a campaign (25 lifts, 7 days, 5 minutes)', run: all(day => lift(day, STEP)) },
    { name: 'the same in the steps a plan takes', run: all(day => lift(day)) },
    { name: 'heat of one lift (7 days, 5 minutes)', run: () => void lift(3, STEP) },
  ]
}
