import type { Lift } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import { ageAtYield, momentOfAge } from '../mix/index.js'
import type { Celsius, Instant, Seconds, SquareMetres } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { evaporationPerHour, saturationPressure, vapourPressureOf } from '../weather/index.js'
import type { CoverKind } from './cover.js'
import { checkCooling, checkFrost, heatingNeed, isColdWeather, leastKept } from './frost.js'
import { checkHeat, checkPlastic, checkWater } from './heat-checks.js'
import { type Milestone, milestones } from './milestones.js'
import { dryingAdvice } from './precautions.js'
import type { WallHeatInput } from './wall-case.js'
import type { WallBuild } from './wall-cells.js'
import { wallHeat } from './wall-heat.js'
import { coldestOf, peakOf, type WallHeat } from './wall-trace.js'
import { type WallWeather, windOfFilm } from './wall-weather.js'
import { shortestRound, wettingRounds } from './wetting.js'

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

/** How one lift is kept until it is strong. */
export interface CurePlan {
  readonly lift: string
  readonly cover: CoverKind
  readonly steps: readonly CureStep[]
  readonly milestones: readonly Milestone[]
  readonly findings: readonly Finding[]
  readonly peak: { readonly temperature: Celsius; readonly at: Instant }
  readonly heat: WallHeat
}

/** What a lift's cure is planned from. */
export interface CureCase {
  readonly job: Pick<Job, 'mix' | 'rules' | 'batching'>
  readonly lift: Pick<Lift, 'id' | 'start' | 'end'>
  readonly build: WallBuild
  readonly weather: WallWeather
  /** At the nozzle at the end of the lift. */
  readonly mixTemperature: Celsius
  readonly area: { readonly left: SquareMetres; readonly right: SquareMetres }
  /** Chosen by the weather where absent: blanket in the cold, wet burlap otherwise. */
  readonly cover?: CoverKind
}

/** How long a lift's cure is followed. */
export const FOLLOWED: Seconds = 14 * 86400

const practice = 'common practice, no source'

/**
 * Cover when, wet when, check temperature when, uncover when, for one lift; with the milestones of its youngest layer.
 *
 * The last layer rules: it is laid last and matures last. Covers go on when it is firm enough not to be marked.
 */
export function curePlan(input: CureCase): CurePlan {
  const { lift, weather, build } = input
  const cold = isColdWeather(weather, lift.end, lift.end + 3 * 86400)
  const cover = input.cover ?? (cold ? 'insulated-blanket' : 'wet-burlap')
  const coverAt = firmAt(input)
  const run: WallHeatInput = {
    build,
    mix: input.job.mix,
    weather,
    start: lift.end,
    mixTemperature: input.mixTemperature,
    covers: [{ from: coverAt, cover }],
    duration: FOLLOWED,
  }
  const heat = wallHeat(run)
  const marks = milestones(heat, input.job.mix, input.job.rules)
  const uncover = marks.find(mark => mark.kind === 'uncover')?.at
  const frostSafe = marks.find(mark => mark.kind === 'frost-safe')?.at
  const steps = [
    coverStep(input, cover, coverAt),
    ...wettingSteps(input, heat, uncover ?? heat.until),
    ...temperatureSteps(lift.id, heat),
    ...(cold ? heatingSteps(input, cover, coverAt, frostSafe ?? heat.until) : []),
    ...(uncover === undefined ? [] : [uncoverStep(lift.id, uncover)]),
  ]
  return {
    lift: lift.id,
    cover,
    steps: steps.sort((a, b) => a.at - b.at),
    milestones: marks,
    findings: [
      checkHeat(lift.id, heat),
      ...(cold ? [checkFrost(lift.id, heat, frostSafe)] : []),
      ...(uncover === undefined ? [] : checkCooling(lift.id, heat, weather, uncover, build.thickness)),
      ...(cover === 'wet-burlap' ? checkWater(lift.id, heat, input.job.batching.waterTemperature) : []),
      ...checkPlastic(lift.id, run),
    ],
    peak: peakOf(heat),
    heat,
  }
}

/** When the last layer can be touched: its yield stress has reached what a clean cut needs; at least half an hour. */
function firmAt({ job, lift, mixTemperature }: CureCase): Instant {
  const age = ageAtYield(job.mix.lower.yield, job.mix.cutFrom) ?? 3600
  const firm = momentOfAge(lift.end, age, () => mixTemperature, job.mix)
  return Math.max(lift.end + 1800, firm ?? lift.end + 3600)
}

function coverStep({ lift, weather, mixTemperature }: CureCase, cover: CoverKind, at: Instant): CureStep {
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

function wettingSteps(input: CureCase, heat: WallHeat, until: Instant): readonly CureStep[] {
  const rounds = wettingRounds(heat, input.area, heat.start, until)
  const shortest = shortestRound(rounds)
  const dense = shortest !== undefined && shortest < 2 * 3600
  return rounds.map((round, index) => ({
    id: `${input.lift.id}-wet-${index + 1}`,
    at: round.at,
    do: 'wet' as const,
    litres: round.litres,
    say: `Wet the burlap with ${Math.ceil(round.litres)} l from the top until it drips${dense && index === 0 ? '; rounds come less than two hours apart: lay a soaker hose on top' : ''}.`,
    source: practice,
  }))
}

function temperatureSteps(id: string, heat: WallHeat): readonly CureStep[] {
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

function heatingSteps(
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

const uncoverStep = (id: string, at: Instant): CureStep => ({
  id: `${id}-uncover`,
  at,
  do: 'uncover',
  say: 'Uncover in the cool of the day and let the cloth dry on the wall first; look for cracks and photograph them.',
  source: 'ACI308-2016',
})
