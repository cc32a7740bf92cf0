import type { Celsius, Metres, Pascals, Share } from '../quantity/index.js'

/** Kelvin of 0 °C. */
export const KELVIN = 273.15
/** Ratio of the molar masses of water vapour and dry air. */
const VAPOUR_RATIO = 0.621945

export const psychrometricRange = { air: [-100, 200], humidity: [0, 1] } as const

/**
 * Vapour pressure of saturated moist air, in Pa: over ice below 0.01 °C, over water above.
 *
 *   water  ln p = C8/T + C9 + C10 T + C11 T² + C12 T³ + C13 ln T
 *   ice    ln p = C1/T + C2 + C3 T + C4 T² + C5 T³ + C6 T⁴ + C7 ln T
 *
 * @param air  temperature [°C], T = air + 273.15
 *
 * Source   [ASHRAE2017] ch. 1 (Hyland and Wexler), constants from memory, table values read second-hand.
 * Range    −100 to 200 °C, `psychrometricRange`.
 * Scatter  0.03 % against the printed table.
 * Assumes  plane surface, no enhancement by the air above it.
 */
export function saturationPressure(air: Celsius): Pascals {
  const T = air + KELVIN
  if (air < 0.01)
    return Math.exp(
      -5.6745359e3 / T +
        6.3925247 +
        T * (-9.677843e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 + T * -9.484024e-13))) +
        4.1635019 * Math.log(T),
    )
  return Math.exp(
    -5.8002206e3 / T +
      1.3914993 +
      T * (-4.8640239e-2 + T * (4.1764768e-5 + T * -1.4452093e-8)) +
      6.5459673 * Math.log(T),
  )
}

/**
 * Slope of the saturation pressure, in Pa/K: the derivative of `saturationPressure` term by term.
 *
 * Source   [ASHRAE2017] ch. 1, derived.
 * Range    −100 to 200 °C.
 * Assumes  the pressure itself is given, so that the exponential is not computed twice.
 */
export function saturationSlope(air: Celsius, pressure: Pascals): number {
  const T = air + KELVIN
  if (air < 0.01)
    return (
      pressure *
      (5.6745359e3 / T ** 2 -
        9.677843e-3 +
        T * (2 * 6.2215701e-7 + T * (3 * 2.0747825e-9 - 4 * 9.484024e-13 * T)) +
        4.1635019 / T)
    )
  return (
    pressure *
    (5.8002206e3 / T ** 2 - 4.8640239e-2 + T * (2 * 4.1764768e-5 - 3 * 1.4452093e-8 * T) + 6.5459673 / T)
  )
}

/** kg of vapour per kg of dry air: W = 0.621945 pw/(p − pw). Source [ASHRAE2017]; Range pw < p; Assumes ideal gases. */
export const humidityRatio = (vapour: Pascals, pressure: Pascals): number =>
  (VAPOUR_RATIO * vapour) / (pressure - vapour)

/** The vapour pressure of air with W kg of vapour per kg of dry air [Pa]. Source [ASHRAE2017]; inverse of `humidityRatio`. */
export const vapourPressureOf = (ratio: number, pressure: Pascals): Pascals =>
  (pressure * ratio) / (VAPOUR_RATIO + ratio)

/** Relative humidity of air whose dew point is known, 0–1. Source [ASHRAE2017]; above saturation it is held at 1. */
export const humidityFromDewPoint = (air: Celsius, dewPoint: Celsius): Share =>
  Math.min(1, saturationPressure(dewPoint) / saturationPressure(air))

/**
 * Temperature at which the vapour in this air begins to condense [°C].
 *
 *   saturationPressure(dewPoint) = r · saturationPressure(air), by Newton on ln p
 *
 * Source   [ASHRAE2017] ch. 1.
 * Range    air as `psychrometricRange`, humidity above 0.0001.
 * Assumes  frost point below 0 °C.
 */
export function dewPoint(air: Celsius, humidity: Share): Celsius {
  const target = Math.max(humidity, 1e-4) * saturationPressure(air)
  let guess = air
  for (let step = 0; step < 40; step += 1) {
    const pressure = saturationPressure(guess)
    // Newton on the logarithm is nearly straight: it does not overshoot even from far away.
    const move = (Math.log(target / pressure) * pressure) / saturationSlope(guess, pressure)
    guess += move
    if (Math.abs(move) < 1e-9) break
  }
  return Math.min(guess, air)
}

/**
 * Humidity ratio of air at this temperature and wet bulb.
 *
 *   above 0 °C  W = ((2501 − 2.326 t*) Ws* − 1.006 (t − t*)) / (2501 + 1.86 t − 4.186 t*)
 *   below       W = ((2830 − 0.24 t*) Ws* − 1.006 (t − t*)) / (2830 + 1.86 t − 2.1 t*)
 *
 * Source   [ASHRAE2017] ch. 1 eqs 33 and 35.
 * Range    wet bulb not above the air.
 * Assumes  adiabatic saturation.
 */
export function humidityRatioFromWetBulb(air: Celsius, wet: Celsius, pressure: Pascals): number {
  const saturated = humidityRatio(saturationPressure(wet), pressure)
  return wet >= 0
    ? ((2501 - 2.326 * wet) * saturated - 1.006 * (air - wet)) / (2501 + 1.86 * air - 4.186 * wet)
    : ((2830 - 0.24 * wet) * saturated - 1.006 * (air - wet)) / (2830 + 1.86 * air - 2.1 * wet)
}

/**
 * Thermodynamic wet-bulb temperature [°C], by safeguarded Newton on the vapour balance.
 *
 *   humidityRatioFromWetBulb(air, t*) = 0.621945 r ps/(p − r ps)
 *
 * Source   [ASHRAE2017] ch. 1 eqs 33 and 35, solved for t*.
 * Range    −50 to 100 °C, humidity 0–1.
 * Scatter  0.001 K of the iteration.
 * Assumes  adiabatic saturation; the sun and a ventilated wick are another matter (see `naturalWetBulb`).
 */
export function wetBulb(air: Celsius, humidity: Share, pressure: Pascals): Celsius {
  const target = humidityRatio(humidity * saturationPressure(air), pressure)
  let low = dewPoint(air, humidity)
  let high = air
  let guess = air - (air - low) / 3
  for (let step = 0; step < 60 && high - low > 1e-7; step += 1) {
    const miss = humidityRatioFromWetBulb(air, guess, pressure) - target
    if (miss > 0) high = guess
    else low = guess
    const saturated = saturationPressure(guess)
    const slope =
      (VAPOUR_RATIO * pressure * saturationSlope(guess, saturated)) / (pressure - saturated) ** 2 +
      1.006 / 2501
    const next = guess - miss / slope
    const inside = next > low && next < high
    const moved = Math.abs(next - guess)
    guess = inside ? next : (low + high) / 2
    if (inside && moved < 1e-6) break
  }
  return guess
}

/**
 * Wet-bulb temperature by an empirical fit [°C], quick and without pressure.
 *
 *   T atan(0.151977 √(R + 8.313659)) + atan(T + R) − atan(R − 1.676331) + 0.00391838 R^1.5 atan(0.023101 R) − 4.686035, R in %
 *
 * Source   [Stull2011], read second-hand.
 * Range    humidity 5 to 99 %, −20 to 50 °C, near sea level.
 * Scatter  −1 to +0.65 K.
 * Assumes  101 kPa.
 */
export function wetBulbQuick(air: Celsius, humidity: Share): Celsius {
  const R = humidity * 100
  return (
    air * Math.atan(0.151977 * Math.sqrt(R + 8.313659)) +
    Math.atan(air + R) -
    Math.atan(R - 1.676331) +
    0.00391838 * R ** 1.5 * Math.atan(0.023101 * R) -
    4.686035
  )
}

/** Enthalpy of moist air [kJ per kg of dry air]: h = 1.006 t + W (2501 + 1.86 t). Source [ASHRAE2017]; Range −50 to 100 °C; Assumes ideal gases. */
export const moistAirEnthalpy = (air: Celsius, ratio: number): number =>
  1.006 * air + ratio * (2501 + 1.86 * air)

/** Volume of moist air [m³ per kg of dry air]. Source [ASHRAE2017]; Range near normal pressure; Assumes ideal gases. */
export const moistAirVolume = (air: Celsius, ratio: number, pressure: Pascals): number =>
  (287.042 * (air + KELVIN) * (1 + 1.607858 * ratio)) / pressure

/**
 * Air pressure of the standard atmosphere [Pa]: p = 101325 (1 − 2.25577·10⁻⁵ Z)^5.2559
 *
 * Source   [ASHRAE2017] ch. 1 eq. 3.
 * Range    −5,000 to 11,000 m.
 * Assumes  a mean day; a deep low is 5 % under it.
 */
export const standardPressure = (elevation: Metres): Pascals =>
  101325 * (1 - 2.25577e-5 * elevation) ** 5.2559
