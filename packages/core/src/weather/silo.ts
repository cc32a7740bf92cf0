import type { Celsius, Metres, Seconds, Share } from '../quantity/index.js'
import { skyTemperature } from './clear-sky.js'
import { cloudsUnder } from './cloud-cover.js'
import { windAtHeight } from './evaporation.js'
import { DRY_HEAT, sunOnCylinder } from './mix-temperature.js'
import { dewPoint, KELVIN } from './psychrometrics.js'
import type { WeatherHour } from './site-hour.js'

/** A full silo of dry material standing in the open. */
export interface Silo {
  readonly diameter: Metres
  readonly height: Metres
  /** Share of the sun its skin keeps: white paint 0.3, dull paint 0.5, galvanised 0.6, dark 0.9. */
  readonly absorptance: Share
  /** Of its skin for long-wave: paint 0.9, bright zinc 0.25. */
  readonly emissivity: Share
  /** Of the dry material [W/mK] and [kg/m³]. */
  readonly conductivity: number
  readonly density: number
}

/**
 * A site silo of 20 m³ in dull paint. Size and paint are common practice, no source; dry material as dry sand, 0.27 W/mK at
 * 1515 kg/m³ [Incropera2007] table A.3, from memory.
 */
export const siteSilo: Silo = {
  diameter: 2.4,
  height: 5,
  absorptance: 0.5,
  emissivity: 0.9,
  conductivity: 0.27,
  density: 1515,
}

/** Steel of skin and frame over the skin [J/m²K]: 40 kg/m² at 490 J/kgK. Common practice, no source. */
const STEEL = 40 * 490
const MATERIAL_HEAT = DRY_HEAT * 4187
const STEFAN = 5.670374e-8

/** What weather does to a silo in each hour: where its material would settle [°C] and how fast it goes there [1/s]. */
interface SiloHours {
  readonly end: Float64Array
  readonly rate: Float64Array
}

/**
 * Temperature of a silo's dry material through the hours [°C], as one body behind its skin.
 *
 *   C dT/dt = Σ A U (Te − T) over side, top and bottom;  U = 1/(1/ho + 1/Ui)
 *   Te = Ta + [a I − ε F σ(Ta⁴ − Tsky⁴)]/ho;  ho = 2.8 + 3 v + 4 ε σ Ta³
 *
 * F, the share of sky: side ½, top 1, bottom 0. Sun: side as an upright cylinder, top the horizontal. Ui lets the mean of the material lag
 * a slow change as long as conduction does: 8k/D through the side (R²/8α of a long cylinder), 6k/H through each end (H²/12α of a slab).
 * An hour of steady weather is exact, however small the silo. It starts where the first day would hold it.
 *
 * Source   lumped balance and lags in closed form, derived; film [Watmuff1977], sky [Martin1984], from memory.
 * Range    1 to 4 m across; a bag in a pallet like a silo of the pallet's size.
 * Scatter  3 K; after a jump the mean moves faster at first than one body does (shown in the tests), and material near the sunny skin is warmer than the mean and may come out first.
 * Assumes  full, no withdrawal and no hot delivery: cement fresh from the mill comes at 50 to 70 °C, and then the job names a gain.
 */
export function siloTemperatures(
  hours: readonly WeatherHour[],
  sineOfSun: Float64Array,
  silo: Silo = siteSilo,
): Float64Array {
  const { end, rate } = siloHours(hours, sineOfSun, silo)
  let temperature = settled(end, rate, Math.min(24, hours.length))
  const step: Seconds = 3600
  return end.map((target, index) => {
    temperature = target + (temperature - target) * Math.exp(-rate[index]! * step)
    return temperature
  })
}

/** How far the silo lies over the mean air of all these hours, once settled [K]. */
export function siloGainOf(
  hours: readonly WeatherHour[],
  sineOfSun: Float64Array,
  silo: Silo = siteSilo,
): Celsius {
  const { end, rate } = siloHours(hours, sineOfSun, silo)
  const air = hours.reduce((sum, hour) => sum + hour.air, 0) / hours.length
  return settled(end, rate, hours.length) - air
}

/** An hour under a roof or net that keeps the beam off; the light of sky and ground stays. */
export const underShade = (hour: WeatherHour): WeatherHour => ({ ...hour, beam: 0, global: hour.diffuse })

/** Share of the sun's heat that shade leaves a silo over these hours; none where there is no sun to keep off. */
export function shadeLeaves(hours: readonly WeatherHour[], sineOfSun: Float64Array): Share | undefined {
  const gain = (sky: readonly WeatherHour[], absorptance: Share) =>
    siloGainOf(sky, sineOfSun, { ...siteSilo, absorptance, emissivity: 0 })
  const none = gain(hours, 0)
  const all = gain(hours, 1) - none
  return all > 1e-9 ? (gain(hours.map(underShade), 1) - none) / all : undefined
}

function settled(end: Float64Array, rate: Float64Array, count: number): Celsius {
  let [sum, weight] = [0, 0]
  for (let i = 0; i < count; i += 1) {
    sum += rate[i]! * end[i]!
    weight += rate[i]!
  }
  return sum / weight
}

function siloHours(hours: readonly WeatherHour[], sineOfSun: Float64Array, silo: Silo): SiloHours {
  const { diameter, height, absorptance, emissivity, conductivity } = silo
  const [side, end] = [Math.PI * diameter * height, (Math.PI / 4) * diameter ** 2]
  const capacity = end * height * silo.density * MATERIAL_HEAT + (side + 2 * end) * STEEL
  const [throughSide, throughEnd] = [(8 * conductivity) / diameter, (6 * conductivity) / height]
  const clouds = cloudsUnder(hours, index => sineOfSun[index]!)
  const share = windAtHeight(1, height / 2)
  const [ends, rates] = [new Float64Array(hours.length), new Float64Array(hours.length)]
  for (let i = 0; i < hours.length; i += 1) {
    const hour = hours[i]!
    const air = hour.air + KELVIN
    const sky = skyTemperature(hour.air, dewPoint(hour.air, hour.humidity), clouds[i]!) + KELVIN
    const lost = emissivity * STEFAN * (air ** 4 - sky ** 4)
    const film = 2.8 + 3 * hour.wind * share + 4 * emissivity * STEFAN * air ** 3
    const [bySide, byEnd] = [side / (1 / film + 1 / throughSide), end / (1 / film + 1 / throughEnd)]
    const onSide = (absorptance * sunOnCylinder(upright(hour, sineOfSun[i]!)) - lost / 2) / film
    const onTop = (absorptance * hour.global - lost) / film
    const all = bySide + 2 * byEnd
    ends[i] = hour.air + (bySide * onSide + byEnd * onTop) / all
    rates[i] = all / capacity
  }
  return { end: ends, rate: rates }
}

/** The beam as an upright cylinder meets it: level, so much of it as comes from the side. */
const upright = ({ global, beam, diffuse }: WeatherHour, sine: number) => ({
  global,
  beam: beam * Math.sqrt(Math.max(0, 1 - Math.max(0, sine) ** 2)),
  diffuse,
})
