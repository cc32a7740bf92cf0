import type { Celsius, Pascals, Radians, Share } from '../quantity/index.js'

/** Sun on the horizontal, in the beam and from the sky [W/m²]. */
export interface Irradiance {
  readonly global: number
  readonly beam: number
  readonly diffuse: number
}

/**
 * Sun on the horizontal under a clear sky [W/m²]: G = 1098 cos Z · exp(−0.059/cos Z)
 *
 * @param sinAltitude  cos Z, sine of the sun's height [1]
 *
 * Source   [Haurwitz1945]; 0.057 is also printed.
 * Range    sun above the horizon; 0 below.
 * Scatter  about 10 % with haze and height.
 * Assumes  mid-latitude clear air at low altitude.
 */
export const haurwitzGlobal = (sinAltitude: number): number =>
  sinAltitude <= 0 ? 0 : 1098 * sinAltitude * Math.exp(-0.059 / sinAltitude)

/**
 * Relative optical air mass: 1/(cos Z + 0.50572 (96.07995 − Z)^−1.6364), Z in degrees
 *
 * Source   [KastenYoung1989].
 * Range    sun above the horizon.
 * Scatter  0.5 %.
 * Assumes  pressure at sea level.
 */
export function airMass(altitude: Radians): number {
  const zenith = 90 - (altitude * 180) / Math.PI
  return 1 / (Math.sin(altitude) + 0.50572 * (96.07995 - zenith) ** -1.6364)
}

/** What the simplified Solis sky needs beside the sun's height. */
export interface ClearAir {
  /** Aerosol optical depth at 700 nm. */
  readonly aerosol: number
  /** Precipitable water [cm]. */
  readonly waterCentimetres: number
  readonly pressure: Pascals
  /** Beam outside the air [W/m²]. */
  readonly extraterrestrial: number
}

/**
 * Beam, diffuse and global of a clear sky [W/m²], simplified Solis.
 *
 * Source   [Ineichen2008], read second-hand.
 * Range    aerosol 0.05 to 0.45, water 0.2 to 10 cm (held at 0.2), sun above the horizon; zeros below.
 * Scatter  about 5 % on the beam with measured aerosol.
 * Assumes  rural aerosol.
 */
export function solisSky(altitude: Radians, sky: ClearAir): Irradiance {
  const s = Math.sin(altitude)
  if (s <= 0) return { global: 0, beam: 0, diffuse: 0 }
  const t = sky.aerosol
  const w = Math.max(sky.waterCentimetres, 0.2)
  const L = Math.log(w)
  const q = Math.log(sky.pressure / 101325)
  const I0 =
    sky.extraterrestrial *
    (0.12 * w ** 0.56 * t ** 2 + 0.97 * w ** 0.032 * t + 1.08 * w ** 0.0051 + 0.071 * q)
  const taub =
    (1.82 + 0.056 * L + 0.0071 * L ** 2) * t + 0.33 + 0.045 * L + 0.0096 * L ** 2 + (0.0089 * w + 0.13) * q
  const b = (0.00925 * t ** 2 + 0.0148 * t - 0.0172) * L - 0.7565 * t ** 2 + 0.5057 * t + 0.4557
  const taug =
    (1.24 + 0.047 * L + 0.0061 * L ** 2) * t + 0.27 + 0.043 * L + 0.009 * L ** 2 + (0.0079 * w + 0.1) * q
  const g = -0.0147 * L - 0.3079 * t ** 2 + 0.2846 * t + 0.3798
  const taud =
    (-0.21 * w + 11.6) * t ** 4 +
    (0.27 * w - 20.7) * t ** 3 +
    (-0.134 * w + 15.5) * t ** 2 +
    (0.0554 * w - 5.71) * t +
    0.0057 * w +
    2.94 -
    0.71 * (1 + t) ** -15 * q
  const d = -0.337 * t ** 2 + 0.63 * t + 0.116 + q / (18 + 152 * t)
  return {
    beam: I0 * Math.exp(-taub / s ** b),
    global: I0 * Math.exp(-taug / s ** g) * s,
    diffuse: I0 * Math.exp(-taud / s ** d),
  }
}

/**
 * Share of the global radiation that comes from the sky, from the clearness kt = G/(I0 sin h).
 *
 * Source   [Erbs1982], from memory.
 * Range    hourly means, kt 0 to 1.
 * Scatter  ±0.15 of the share.
 * Assumes  snow-free ground, mid latitudes.
 */
export function diffuseShare(clearness: Share): Share {
  const k = clearness
  if (k <= 0.22) return 1 - 0.09 * k
  if (k > 0.8) return 0.165
  return 0.9511 - 0.1604 * k + 4.388 * k ** 2 - 16.638 * k ** 3 + 12.336 * k ** 4
}

/** Global radiation split into beam and diffuse by `diffuseShare`; near the horizon all is diffuse. */
export function splitGlobal(global: number, sinAltitude: number, extraterrestrial: number): Irradiance {
  if (global <= 0) return { global: 0, beam: 0, diffuse: 0 }
  // Under 3° an hourly mean says nothing of the beam: the division would blow it up.
  if (sinAltitude < 0.052) return { global, beam: 0, diffuse: global }
  const share = diffuseShare(Math.min(1, global / (extraterrestrial * sinAltitude)))
  const diffuse = share * global
  return { global, beam: Math.min((global - diffuse) / sinAltitude, extraterrestrial), diffuse }
}

/** Radiation on the horizontal outside the air [W/m²]. Source geometry; Range any hour; Assumes the sine of the hour's middle. */
export const extraterrestrialFlat = (extraterrestrial: number, sinAltitude: number): number =>
  extraterrestrial * Math.max(0, sinAltitude)

/**
 * Share of the clear sky's global radiation left under cloud: 1 − 0.75 n^3.4
 *
 * Source   [KastenCzeplak1980], from memory.
 * Range    cloud cover n 0 to 1.
 * Scatter  ±20 % at full cover, by kind of cloud.
 * Assumes  monthly or hourly mean cover.
 */
export const cloudTransmission = (cover: Share): Share => 1 - 0.75 * cover ** 3.4

/**
 * Temperature of the clear sky as a black body [°C].
 *
 *   ε = 0.711 + 0.56 (Td/100) + 0.73 (Td/100)²;  with cloud n  ε + (1 − ε) 0.84 n;  Tsky = Ta ε^¼
 *
 * Source   [Martin1984] for the clear sky, from memory; cloud term common practice, no source.
 * Range    dew point −25 to 30 °C.
 * Scatter  3 K on a clear night; other published formulas are up to 8 K warmer in cold dry air.
 * Assumes  low or middle cloud near the air's temperature.
 */
export function skyTemperature(air: Celsius, dew: Celsius, cloud: Share): Celsius {
  const x = dew / 100
  const clear = Math.min(1, 0.711 + 0.56 * x + 0.73 * x * x)
  const emissivity = clear + (1 - clear) * 0.84 * cloud
  return (air + 273.15) * Math.sqrt(Math.sqrt(emissivity)) - 273.15
}
