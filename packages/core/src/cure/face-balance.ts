import type { Celsius } from '../quantity/index.js'
import { humidityRatio, KELVIN, latentHeat, saturationPressure, saturationSlope } from '../weather/index.js'
import type { Cover } from './cover.js'

const STEFAN = 5.670374e-8
/** Heat of air over Lewis number to two thirds: 1005 · 0.91 [J/kgK]. */
const LEWIS = 1005 * 0.91

/** Air, sky and sun at a face at one moment. */
export interface FaceAir {
  readonly air: Celsius
  readonly vapour: number
  readonly film: number
  /** What it radiates against [K]. */
  readonly surroundings: number
  readonly sun: number
  readonly pressure: number
}

/** Heat into a face [W/m²], by the way it comes, and the water that leaves [kg/m²s]. */
export interface FaceBalance {
  readonly sun: number
  readonly air: number
  readonly longwave: number
  readonly evaporation: number
  readonly total: number
  readonly water: number
}

/**
 * Heat balance of a face under a cover at a surface temperature.
 *
 *   q = τ a I + [a′I + hc(Ta − Tc) + εσ(Te⁴ − Tc⁴)] seen through the cover's resistance − L·E
 *   E = hc/(cp Le^⅔) (Ws − Wa)·wetness
 *
 * Source   balance [Incropera2007] ch. 1 and 6 (Lewis analogy), from memory.
 * Range    surface −20 to 90 °C.
 * Scatter  films ±30 %.
 * Assumes  a thin cover keeps no heat; sheets block long-wave (thin clear polyethylene lets half of it through: colder at night).
 */
export function faceBalance(face: FaceAir, cover: Cover, wetness: number, surface: Celsius): FaceBalance {
  const radiation = radiationTo(face, cover, surface)
  const sun = cover.transmission * cover.absorptance * face.sun
  const through = 1 / (1 + (face.film + radiation) * cover.resistance)
  const kept = cover.kept * face.sun * through
  const air = face.film * (face.air - surface) * through
  const longwave = radiation * (face.surroundings - KELVIN - surface) * through
  const water = wetness > 0 ? evaporationOf(face, wetness, saturationPressure(surface)) : 0
  const evaporation = -latentHeat(surface) * water
  const total = sun + kept + air + longwave + evaporation
  return { sun: sun + kept, air, longwave, evaporation, total, water }
}

/** The same as a straight line about a surface temperature: gain − loss·Ts, its slope that of the balance there. */
export function faceLaw(
  face: FaceAir,
  cover: Cover,
  wetness: number,
  surface: Celsius,
): { readonly gain: number; readonly loss: number } {
  const radiation = radiationTo(face, cover, surface)
  const through = 1 / (1 + (face.film + radiation) * cover.resistance)
  // The secant of radiation at this temperature; its own bend is a third of a per cent per kelvin and left to the iteration.
  const loss = (face.film + radiation) * through
  let gain =
    (cover.transmission * cover.absorptance + cover.kept * through) * face.sun +
    (face.film * face.air + radiation * (face.surroundings - KELVIN)) * through
  if (wetness <= 0) return { gain, loss }
  const saturated = saturationPressure(surface)
  const water = evaporationOf(face, wetness, saturated)
  const heat = latentHeat(surface)
  const slope = heat * evaporationSlope(face, wetness, surface, saturated)
  gain += -heat * water + slope * surface
  return { gain, loss: loss + slope }
}

/** Secant coefficient of long-wave at the outermost surface [W/m²K]: the wall's own or its cover's. */
function radiationTo(face: FaceAir, cover: Cover, surface: Celsius): number {
  const secant = (outer: Celsius) => {
    const T = outer + KELVIN
    const E = face.surroundings
    return cover.emissivity * STEFAN * (T * T + E * E) * (T + E)
  }
  if (cover.resistance === 0) return secant(surface)
  let sheet = (surface + face.air) / 2
  let radiation = secant(sheet)
  for (let round = 0; round < 3; round += 1) {
    const inner = 1 / cover.resistance
    sheet =
      (cover.kept * face.sun +
        face.film * face.air +
        radiation * (face.surroundings - KELVIN) +
        inner * surface) /
      (face.film + radiation + inner)
    radiation = secant(sheet)
  }
  return radiation
}

/** Water leaving a wet face [kg/m²s]; dew settles (negative) on a wholly wet one. `saturated`: pressure at the surface. */
function evaporationOf(face: FaceAir, wetness: number, saturated: number): number {
  return (face.film / LEWIS) * (humidityRatio(saturated, face.pressure) - face.vapour) * wetness
}

function evaporationSlope(face: FaceAir, wetness: number, surface: Celsius, saturated: number): number {
  const ratioSlope =
    (0.621945 * face.pressure * saturationSlope(surface, saturated)) / (face.pressure - saturated) ** 2
  return (face.film / LEWIS) * ratioSlope * wetness
}
