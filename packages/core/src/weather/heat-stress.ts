import type { Celsius, MetresPerSecond, Pascals, Share } from '../quantity/index.js'
import { KELVIN, saturationPressure, saturationSlope } from './psychrometrics.js'

/** Air and sun on a person. */
export interface WorkAir {
  readonly air: Celsius
  readonly humidity: Share
  readonly pressure: Pascals
  /** At 2 m. */
  readonly wind: MetresPerSecond
  /** Global radiation [W/m²] and the share of it in the beam. */
  readonly global: number
  readonly beamShare: Share
  readonly sinAltitude: number
}

const STEFAN = 5.670374e-8
const GROUND_REFLECTION = 0.45
const STILL = 0.13
/** Diameter of the wick [m]. */
const WICK = 0.007

/**
 * Heat index in the shade, in °C, from the regression in °F and %: nine terms in T and R; under 80 °F
 *
 *   HI = (T + ½ (T + 61 + 1.2 (T − 68) + 0.094 R))/2
 *
 * Source   [NWS1990] (Rothfusz), with both adjustments, read directly.
 * Range    80 to 112 °F; below, the simpler average.
 * Scatter  1.3 °F against the printed table.
 * Assumes  shade and light wind; full sun adds up to 8 K.
 */
export function heatIndex(air: Celsius, humidity: Share): Celsius {
  const T = air * 1.8 + 32
  const R = humidity * 100
  const simple = (0.5 * (T + 61 + 1.2 * (T - 68) + 0.094 * R) + T) / 2
  return ((simple < 80 ? simple : fullHeatIndex(T, R)) - 32) / 1.8
}

function fullHeatIndex(T: number, R: number): number {
  const index =
    -42.379 +
    2.04901523 * T +
    10.14333127 * R -
    0.22475541 * T * R -
    0.00683783 * T * T -
    0.05481717 * R * R +
    0.00122874 * T * T * R +
    0.00085282 * T * R * R -
    0.00000199 * T * T * R * R
  if (R < 13 && T >= 80 && T <= 112) return index - ((13 - R) / 4) * Math.sqrt((17 - Math.abs(T - 95)) / 17)
  if (R > 85 && T >= 80 && T <= 87) return index + ((R - 85) / 10) * ((87 - T) / 5)
  return index
}

/**
 * WBGT from air and humidity alone, in °C: 0.567 Ta + 0.393 e + 3.94, e in hPa
 *
 * Source   [BoM2010], read second-hand.
 * Range    15 to 45 °C.
 * Scatter  high at night, under cloud and in wind; low in strong sun without wind.
 * Assumes  moderately strong sun and light wind.
 */
export function wbgtFromAir(air: Celsius, humidity: Share): Celsius {
  const e = humidity * 6.105 * Math.exp((17.27 * air) / (237.7 + air))
  return 0.567 * air + 0.393 * e + 3.94
}

/**
 * Temperature of a 50 mm black globe in sun and wind [°C].
 *
 *   εσTg⁴ + h(Tg − Ta) = ½εσ(1 + εa)Ta⁴ + ½S(1 − αg)[1 + (1/(2 cos Z) − 1) f + αs]
 *
 * Source   [Liljegren2008], from memory; h of a sphere, k/D (2 + 0.6 Re^½ Pr^⅓).
 * Range    −10 to 50 °C; wind held at 0.13 m/s and above.
 * Scatter  1.5 K by the choice of air properties.
 * Assumes  ground at air temperature with a reflection of 0.45, as the source.
 */
export function globeTemperature(work: WorkAir): Celsius {
  return globeIn(work, surroundingsOf(work))
}

/**
 * Wet bulb of a wick in sun and wind without forced draught [°C].
 *
 *   Tw = Ta − (L/cp)(Mw/Ma)(Pr/Sc)^0.56 (ew − ea)/(p − ew) + F/h
 *
 * Source   [Liljegren2008], from memory: wick 7 × 25.4 mm, emissivity 0.95, reflection 0.4.
 * Range    −10 to 50 °C; wind held at 0.13 m/s and above.
 * Scatter  1 K.
 * Assumes  vapour diffusivity 2.11·10⁻⁵ (T/273)^1.94 m²/s.
 */
export function naturalWetBulb(work: WorkAir): Celsius {
  return wetBulbIn(work, surroundingsOf(work))
}

/**
 * Wet-bulb globe temperature outdoors [°C]: 0.7 Tnw + 0.2 Tg + 0.1 Ta
 *
 * Source   [ISO7243-2017], read second-hand; its parts by [Liljegren2008].
 * Range    −10 to 50 °C.
 * Scatter  1 to 1.5 K against instruments.
 * Assumes  a person in the open; clothing and headgear add their own allowance.
 */
export function wbgtOutdoors(work: WorkAir): Celsius {
  const around = surroundingsOf(work)
  return 0.7 * wetBulbIn(work, around) + 0.2 * globeIn(work, around) + 0.1 * work.air
}

/** What globe and wick share. */
interface Surroundings {
  readonly vapour: Pascals
  /** Long-wave a body of emissivity 0.95 takes in from sky and ground [W/m²]. */
  readonly longwave: number
  readonly viscosity: number
  readonly conductivity: number
}

function surroundingsOf(work: WorkAir): Surroundings {
  const vapour = work.humidity * saturationPressure(work.air)
  const square = (work.air + KELVIN) ** 2
  return {
    vapour,
    longwave: 0.95 * STEFAN * 0.5 * (1 + 0.575 * (vapour / 100) ** (1 / 7)) * square * square,
    viscosity: (1.33e-5 + 9e-8 * work.air) * (101325 / work.pressure),
    conductivity: 0.0243 + 7.1e-5 * work.air,
  }
}

function globeIn(work: WorkAir, around: Surroundings): Celsius {
  const T = work.air + KELVIN
  const reynolds = (Math.max(work.wind, STILL) * 0.0508) / around.viscosity
  const h = (around.conductivity / 0.0508) * (2 + 0.6 * Math.sqrt(reynolds) * 0.892)
  // The source holds the sun's factor where the sun is too low for 1/cos Z.
  const slant = work.sinAltitude > 0.01 ? (0.5 / work.sinAltitude - 1) * work.beamShare : 0
  const gain = around.longwave + 0.475 * work.global * Math.max(0, 1 + slant + GROUND_REFLECTION)
  let globe = T + 0.012 * work.global
  for (let step = 0; step < 3; step += 1) {
    const cube = 0.95 * STEFAN * globe * globe * globe
    globe -= (cube * globe + h * (globe - T) - gain) / (4 * cube + h)
  }
  return globe - KELVIN
}

function wetBulbIn(work: WorkAir, around: Surroundings): Celsius {
  const { vapour, viscosity, conductivity } = around
  const reynolds = (Math.max(work.wind, STILL) * WICK) / viscosity
  const h = (conductivity / WICK) * 0.281 * reynolds ** 0.6 * 0.86
  const schmidt = viscosity / (2.11e-5 * ((work.air + KELVIN) / KELVIN) ** 1.94 * (101325 / work.pressure))
  const cooling = (2.45e6 / 1005) * 0.62198 * (0.71 / schmidt) ** 0.56
  const gain = (around.longwave + wickSun(work)) / h
  let wet = work.air - (1 - work.humidity) * Math.max(2, work.air * 0.33) + 0.003 * work.global
  for (let step = 0; step < 8; step += 1) {
    const saturated = saturationPressure(wet)
    const Tw = wet + KELVIN
    const cube = 0.95 * STEFAN * Tw * Tw * Tw
    const rest = work.pressure - saturated
    const miss = work.air - wet - (cooling * (saturated - vapour)) / rest + gain - (cube * Tw) / h
    const slope =
      1 +
      (cooling * saturationSlope(wet, saturated) * (work.pressure - vapour)) / (rest * rest) +
      (4 * cube) / h
    const move = miss / slope
    wet += move
    // Newton doubles the digits: after a move of a fiftieth of a kelvin the next is below 1e-4 K.
    if (Math.abs(move) < 0.02) break
  }
  return wet
}

/** Sun a wick of 7 × 25.4 mm takes in per area [W/m²]. */
function wickSun({ global, beamShare, sinAltitude: sine }: WorkAir): number {
  if (sine <= 0.01 || global <= 0) return 0
  const ends = (0.25 * WICK) / 0.0254
  const slant = Math.min(20, Math.sqrt(1 - sine * sine) / sine) / Math.PI
  return 0.6 * global * ((1 - beamShare) * (1 + ends) + beamShare * (slant + ends) + GROUND_REFLECTION)
}
