import { sayQuantity, type Units } from '../limit/index.js'
import type { Celsius, MetresPerSecond, Share } from '../quantity/index.js'

export type WorkLoad = 'light' | 'moderate' | 'heavy' | 'very-heavy'

/** Heat a person makes at each kind of work [W]. Source [ISO7243-2017], from memory; rest 115 W. */
export const metabolicRates: Readonly<Record<WorkLoad, number>> = {
  light: 180,
  moderate: 300,
  heavy: 415,
  'very-heavy': 520,
}
export const RESTING_RATE = 115

/**
 * Highest WBGT for continuous work at this metabolic rate [°C].
 *
 *   acclimatised 56.7 − 11.5 log₁₀ M;  not yet 59.9 − 14.1 log₁₀ M
 *
 * @param metabolicRate  M [W]
 *
 * Source   [NIOSH2016] sec. 8.1, read second-hand.
 * Range    100 to 600 W.
 * Assumes  healthy workers in one layer of work clothes who drink.
 */
export const wbgtLimit = (metabolicRate: number, acclimatised: boolean): Celsius =>
  acclimatised ? 56.7 - 11.5 * Math.log10(metabolicRate) : 59.9 - 14.1 * Math.log10(metabolicRate)

/**
 * Highest WBGT by class of work [°C]: for people used to the heat, and not yet.
 *
 * Source   [ISO7243-2017] annex A, from memory; within 1.5 K of `wbgtLimit` at the same rate.
 * Range    the named classes.
 * Assumes  ordinary work clothes; coveralls over them take off 3 K.
 */
export const wbgtReference: Readonly<Record<WorkLoad | 'rest', readonly [used: Celsius, fresh: Celsius]>> = {
  rest: [33, 32],
  light: [30, 29],
  moderate: [28, 26],
  heavy: [26, 23],
  'very-heavy': [25, 20],
}

/**
 * Share of each hour that may be worked, the rest spent resting at the same place.
 *
 *   f = (M(WBGT) − Mrest)/(Mwork − Mrest), M(WBGT) from `wbgtLimit` turned round: the hour's mean heat is at the limit
 *
 * Source   [NIOSH2016] sec. 8.1, derived: the limit holds for the one-hour time-weighted metabolic rate.
 * Range    0 to 1; 0 means that even resting there is too hot.
 * Assumes  rest in the same sun: shade allows more.
 */
export function workShare(wbgt: Celsius, load: WorkLoad, acclimatised: boolean): Share {
  const allowed = 10 ** (acclimatised ? (56.7 - wbgt) / 11.5 : (59.9 - wbgt) / 14.1)
  return Math.max(0, Math.min(1, (allowed - RESTING_RATE) / (metabolicRates[load] - RESTING_RATE)))
}

/** One row of the screening table: up to this share of the hour worked, highest WBGT by load, used to the heat and not yet; none: not to be worked so. */
interface ScreeningRow {
  readonly share: Share
  readonly most: Readonly<Partial<Record<WorkLoad, readonly [used: Celsius, fresh: Celsius]>>>
}

const screening: readonly ScreeningRow[] = [
  { share: 1, most: { light: [31, 28], moderate: [28, 25] } },
  { share: 0.75, most: { light: [31, 28.5], moderate: [29, 26], heavy: [27.5, 24] } },
  {
    share: 0.5,
    most: { light: [32, 29.5], moderate: [30, 27], heavy: [29, 25.5], 'very-heavy': [28, 24.5] },
  },
  {
    share: 0.25,
    most: { light: [32.5, 30], moderate: [31.5, 29], heavy: [30.5, 28], 'very-heavy': [30, 27] },
  },
]

/**
 * Largest share of the hour to be worked by the screening table: 1, 0.75, 0.5, 0.25 or 0.
 *
 * Source   [ACGIH2017], from memory; beside `workShare` a second agency's view.
 * Range    the named loads; heavy work all hour is not in it.
 * Assumes  eight-hour days with breaks, ordinary work clothes.
 */
export const screeningShare = (wbgt: Celsius, load: WorkLoad, acclimatised: boolean): Share =>
  screening.find(({ most }) => wbgt <= (most[load]?.[acclimatised ? 0 : 1] ?? Number.NEGATIVE_INFINITY))
    ?.share ?? 0

/**
 * Wind chill [°C]: 13.12 + 0.6215 T − 11.37 v^0.16 + 0.3965 T v^0.16, v in km/h at 10 m
 *
 * Source   [Osczevski2005], from memory.
 * Range    air at or below 10 °C, wind above 4.8 km/h; otherwise the air temperature.
 * Assumes  bare face, walking pace, no sun.
 */
export function windChill(air: Celsius, windAt10m: MetresPerSecond): Celsius {
  const v = windAt10m * 3.6
  if (air > 10 || v <= 4.8) return air
  return 13.12 + 0.6215 * air + (0.3965 * air - 11.37) * v ** 0.16
}

/** What one hour asks of the crew, in plain words and numbers. */
export interface CrewHour {
  readonly wbgt: Celsius
  readonly workMinutesPerHour: number
  readonly restMinutesPerHour: number
  readonly windChill: Celsius
  readonly caution?: { readonly say: string; readonly source: string }
}

/** Work and rest in one hour, with the caution that belongs beside it. A screening value: local rules and a heat plan govern. */
export function crewHeat(
  hour: { readonly wbgt: Celsius; readonly air: Celsius; readonly wind: MetresPerSecond },
  load: WorkLoad = 'moderate',
  acclimatised = true,
  units: Units = 'metric',
): CrewHour {
  const work = Math.floor(workShare(hour.wbgt, load, acclimatised) * 12) * 5
  const chill = windChill(hour.air, hour.wind)
  const caution = cautionOf(hour.wbgt, work, chill, load, units)
  return {
    wbgt: hour.wbgt,
    workMinutesPerHour: work,
    restMinutesPerHour: 60 - work,
    windChill: chill,
    ...(caution ? { caution } : {}),
  }
}

function cautionOf(
  wbgt: Celsius,
  work: number,
  chill: Celsius,
  load: WorkLoad,
  units: Units,
): CrewHour['caution'] {
  const said = (value: Celsius) => sayQuantity(value, '°C', units)
  if (work === 0)
    return {
      say: `WBGT ${said(wbgt)}: too hot for ${load} work at any pace here. Stop, cool down, follow the site's heat plan.`,
      source: 'NIOSH2016',
    }
  if (work < 60)
    return {
      say: `WBGT ${said(wbgt)}: ${work} min work, ${60 - work} min rest in shade each hour for ${load} work; water at hand. Screening value; local rules govern.`,
      source: 'NIOSH2016',
    }
  if (chill <= -27)
    return {
      say: `Wind chill ${said(Math.round(chill))}: bare skin can freeze within 30 min. Warm shelter, gloves, no lone work; local rules govern.`,
      source: 'Osczevski2005',
    }
  return undefined
}
