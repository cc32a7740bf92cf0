import type { Celsius, Instant } from '../quantity/index.js'
import { evaporationPerHour, saturationPressure, vapourPressureOf } from '../weather/index.js'
import type { CoverKind } from './cover.js'
import type { CureCase } from './cure-case.js'
import { heatingNeed, leastKept } from './frost.js'
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
  readonly say: string
  readonly source: string
}

const practice = 'common practice, no source'

/** Cloth or sheet on, and what to do against drying until then. */
export function coverStep(
  { lift, weather, mixTemperature }: CureCase,
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
    say: `${coverWords[cover]} on both faces and the top, overlapped and weighted. Drying index ${drying.toFixed(2)} kg/m²h until then: ${advice.say}`,
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
export function temperatureSteps(id: string, heat: WallHeat): readonly CureStep[] {
  const peak = peakOf(heat)
  const coldest = coldestOf(heat, heat.start + 86400)
  const step = (name: string, at: Instant, say: string): CureStep => ({
    id: `${id}-${name}`,
    at,
    do: 'check-temperature',
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
            peak.at,
            `Expect the hottest place at ${peak.temperature.toFixed(0)} °C; measure, and say so if it is 5 K off.`,
          ),
        ]
      : []),
    step(
      'coldest',
      coldest.at,
      `Expect the coldest place at ${coldest.temperature.toFixed(0)} °C; measure before sunrise.`,
    ),
  ]
}

/** Heating to have ready under the cover, if any hour may need it. */
export function heatingSteps(
  { lift, weather, build, area }: CureCase,
  cover: CoverKind,
  from: Instant,
  until: Instant,
): readonly CureStep[] {
  const kept = leastKept(build.thickness)
  const need = heatingNeed(weather, cover, kept, from, until)
  if (need <= 0) return []
  const kilowatts = (need * (area.left + area.right)) / 1000
  return [
    {
      id: `${lift.id}-heat`,
      at: from,
      do: 'heat',
      say: `Have ${kilowatts.toFixed(1)} kW of heating ready under the cover to hold ${kept} °C in the coldest hour. Burners need fresh air and a guard: carbon monoxide and fire.`,
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
