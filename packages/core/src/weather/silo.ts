import type { Celsius, Metres } from '../quantity/index.js'
import type { WeatherHour } from './site-hour.js'
import { solarPosition } from './sun.js'

/** A silo, or a pallet of bags, standing in the open. */
export interface Silo {
  readonly diameter: Metres
  readonly height: Metres
  /** Dry material in it [kg]. */
  readonly mass: number
  /** Share of the sun its skin keeps: white paint 0.3, galvanised 0.6, dark 0.9. */
  readonly absorptance: number
}

/** Dry material against water; film outside; what the dry material near the skin lets through. Common practice, no source. */
const DRY_SPECIFIC_HEAT = 0.22 * 4187
const FILM = 15
const INNER = 3

/**
 * Mean temperature of a silo's dry material through the hours [°C], as one body behind its skin.
 *
 *   m c dT/dt = U A (Tsolair − T), U = 1/(1/15 + 1/3) W/m²K;  Tsolair = Ta + a I/15
 *
 * Sun on an upright cylinder: a strip of 1/π faces the beam, half the sky and half the ground (reflection 0.2) the rest.
 *
 * Source   closed form of the lumped balance; coefficients common practice, no source.
 * Range    1 to 100 t.
 * Scatter  3 K; powder near the sunny skin is warmer than the middle and comes out first.
 * Assumes  no withdrawal and no hot delivery: cement fresh from the mill comes at 50 to 70 °C.
 */
export function siloTemperatures(
  site: { readonly latitude: number; readonly longitude: number },
  hours: readonly WeatherHour[],
  silo: Silo,
  start: Celsius,
): Float64Array {
  const area = Math.PI * silo.diameter * silo.height
  const rate = area / (1 / FILM + 1 / INNER) / (silo.mass * DRY_SPECIFIC_HEAT)
  // Exact over an hour of steady weather, however small the silo.
  const kept = Math.exp(-3600 * rate)
  let temperature = start
  return Float64Array.from(hours, hour => {
    const outside = hour.air + (silo.absorptance * sunOnUpright(site, hour)) / FILM
    temperature = outside + (temperature - outside) * kept
    return temperature
  })
}

/** How far the silo lies over the mean air, once settled [K]: a value for the job's `siloGain`. */
export function siloGainOf(
  site: { readonly latitude: number; readonly longitude: number },
  hours: readonly WeatherHour[],
  silo: Pick<Silo, 'absorptance'>,
): Celsius {
  const sum = hours.reduce((total, hour) => total + sunOnUpright(site, hour), 0)
  return (silo.absorptance * sum) / hours.length / FILM
}

function sunOnUpright(
  site: { readonly latitude: number; readonly longitude: number },
  hour: WeatherHour,
): number {
  const altitude = Math.max(0, solarPosition(hour.start + 1800, site.latitude, site.longitude).altitude)
  return (hour.beam * Math.cos(altitude)) / Math.PI + 0.5 * hour.diffuse + 0.1 * hour.global
}
