import type { Celsius, Instant } from '../quantity/index.js'
import { evaporationPerHour, saturationPressure, vapourPressureOf } from '../weather/index.js'
import type { CoverKind } from './cover.js'
import type { CureCase } from './cure-case.js'
import { cureWords } from './cure-words.js'
import { heatingNeed, leastKept } from './frost.js'
import { UNCOVER_LEAST } from './milestones.js'
import { dryingAdvice } from './precautions.js'
import { coldestOf, peakOf, type WallHeat } from './wall-trace.js'
import { type WallWeather, windOfFilm } from './wall-weather.js'

/** One thing to do for a lift's cure. */
export interface CureStep {
  /** Stable across re-plans: lift, what, running number. */
  readonly id: string
  readonly at: Instant
  readonly do: 'cover' | 'wet' | 'check-temperature' | 'heat' | 'uncover'
  readonly litres?: number
  /** Last round of those told by the day. */
  readonly until?: Instant
  /** Temperature to be expected [°C]. */
  readonly temperature?: Celsius
  /** Drying index until then [kg/m²h]. */
  readonly drying?: number
  /** Heating to have ready [W]. */
  readonly heating?: number
  readonly say: string
  readonly source: string
}

const practice = 'common practice, no source'

/** Cloth or sheet on, and what to do against drying until then. */
export function coverStep(
  { lift, weather, mixTemperature, job }: CureCase,
  cover: CoverKind,
  at: Instant,
): CureStep {
  const index = Math.max(0, Math.min(weather.count - 1, Math.floor((at - weather.first) / 3600)))
  const drying = dryingIndex(weather, index, mixTemperature)
  const advice = dryingAdvice(drying)
  return {
    id: `${lift.id}-cover`,
    at,
    do: 'cover',
    drying,
    say: `${coverWords[cover]} on both faces and the top, overlapped and weighted. Drying index ${cureWords(job.units).drying(drying)} until then: ${advice.say}`,
    source: advice.source,
  }
}

const coverWords: Readonly<Record<CoverKind, string>> = {
  bare: 'Nothing',
  'wet-burlap': 'Soaked burlap, two layers,',
  'clear-plastic': 'Clear plastic',
  'white-sheet': 'White sheet',
  'curing-compound': 'Curing compound',
  'insulated-blanket': 'Insulated blankets over sheet',
}

/** Evaporation index of an hour from the wall's own columns. */
function dryingIndex(weather: WallWeather, hour: number, concrete: Celsius): number {
  const air = weather.air[hour]!
  const pressure = vapourPressureOf(weather.vapour[hour]!, weather.pressure[hour]!)
  const humidity = Math.min(1, pressure / saturationPressure(air))
  return evaporationPerHour({ air, humidity, wind: windOfFilm(weather.film[hour]!) }, concrete)
}

/** When to put a thermometer to the wall, and what it is expected to show. */
export function temperatureSteps(id: string, heat: WallHeat, words = cureWords()): readonly CureStep[] {
  // After three days a warm afternoon is warmer than the setting was.
  const peak = peakOf(heat, heat.start + UNCOVER_LEAST)
  const coldest = coldestOf(heat, heat.start + 86400)
  const step = (
    name: string,
    { at, temperature }: { readonly at: Instant; readonly temperature: Celsius },
    say: string,
  ): CureStep => ({
    id: `${id}-${name}`,
    at,
    do: 'check-temperature',
    temperature,
    say,
    source: practice,
  })
  // A wall that only cools from the nozzle on has no peak to wait for.
  const warms = peak.at > heat.start + 3600
  return [
    ...(warms
      ? [
          step(
            'peak',
            peak,
            `Expect the hottest place at ${words.temperature(peak.temperature)}; measure, and say so if it is ${words.difference(5)} off.`,
          ),
        ]
      : []),
    step(
      'coldest',
      coldest,
      `Expect the coldest place at ${words.temperature(coldest.temperature)}; measure before sunrise.`,
    ),
  ]
}

/** Heating to have ready under the cover, if any hour may need it. */
export function heatingSteps(
  { lift, weather, build, area, job }: CureCase,
  cover: CoverKind,
  from: Instant,
  until: Instant,
): readonly CureStep[] {
  const kept = leastKept(build.thickness)
  const need = heatingNeed(weather, cover, kept, from, until)
  if (need <= 0) return []
  const heating = need * (area.left + area.right)
  const words = cureWords(job.units)
  return [
    {
      id: `${lift.id}-heat`,
      at: from,
      do: 'heat',
      heating,
      temperature: kept,
      say: `Have ${words.power(heating)} of heating ready under the cover to hold ${words.temperature(kept)} in the coldest hour. Burners need fresh air and a guard: carbon monoxide and fire.`,
      source: 'ACI306-2016',
    },
  ]
}

export const uncoverStep = (id: string, at: Instant): CureStep => ({
  id: `${id}-uncover`,
  at,
  do: 'uncover',
  say: 'Uncover in the cool of the day and let the cloth dry on the wall first; look for cracks and photograph them.',
  source: 'ACI308-2016',
})
