import { instantAt } from '../clock/index.js'
import type { Crew, Rules, RuleValue } from '../job/index.js'
import { isBeyond, type Limit } from '../limit/index.js'
import type { PrintHour, WeatherHour } from '../weather/index.js'
import type { LiftPhysics, LiftTrial, SectionWork } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'

/** An invented site for tests and benchmarks of the campaign: weather, crew and physics simple enough to check by hand. */

const given = (value: number): RuleValue => ({ value, source: 'the job' })

export const inventedRules: Rules = {
  liftHeight: given(1),
  overnightCure: given(12 * 3600),
  mixTemperatureMost: given(32),
  mixTemperatureLeast: given(5),
  airTemperatureLeast: given(5),
  evaporationMost: given(1),
  windMost: given(10),
  gustMost: given(15),
  rainMost: given(1),
  wbgtMost: given(30),
  daylightNeeded: given(0),
  standSafety: given(1.5),
  imperfection: given(0.6),
  dryingMost: given(1),
  restMost: given(1800),
  layerTimeMost: given(900),
}

export const inventedCrew: Crew = {
  size: 4,
  dayStart: 5 * 3600,
  dayEnd: 20 * 3600,
  longestShift: 10 * 3600,
  setUp: 1800,
  washOut: 1800,
  changeOver: 1800,
  workDays: [1, 2, 3, 4, 5],
  daysOff: [],
  lintelTime: 900,
  embedTime: 300,
  pourTime: 7200,
}

/** Uniform layers: `count` of them, each `minutes` long. */
export function inventedWork(section: string, count: number, minutes: number): SectionWork {
  const each = (value: number) => new Array<number>(count).fill(value)
  return {
    section,
    layerHeight: 0.02,
    printTimes: each(minutes * 60),
    lengths: each(minutes * 6),
    volumes: each(minutes * 6 * 0.05 * 0.02),
    holds: [],
    liftEnds: [],
  }
}

const calm = { wind: 3, gust: 5, rain: 0 }

/** What one invented hour is like; the rest is filled in. */
export interface Sky {
  readonly air: number
  readonly wind?: number
  readonly rain?: number
  readonly chilled?: number
  readonly waterNeeded?: number
}

export function inventedHour(start: number, sky: Sky): PrintHour {
  const { air } = sky
  const wind = sky.wind ?? calm.wind
  const rain = sky.rain ?? calm.rain
  const mix = air + 6
  const weather: WeatherHour = {
    start,
    air,
    humidity: 0.5,
    wind,
    gust: wind * 1.5,
    rain,
    global: 0,
    beam: 0,
    diffuse: 0,
    pressure: 101325,
    source: 'history',
  }
  const limit = (kind: Limit['kind'], demand: number, capacity: number, unit: string): Limit => ({
    kind,
    demand,
    capacity,
    unit,
    source: 'the job',
  })
  const limits = [
    limit('mix-hot', mix, 32, '°C'),
    limit('air-cold', 5, air, '°C'),
    limit('wind', wind, 10, 'm/s'),
    limit('rain', rain, 1, 'mm/h'),
  ]
  return {
    start,
    weather,
    mixTemperature: mix,
    ...(sky.chilled === undefined ? {} : { mixTemperatureChilled: sky.chilled }),
    ...(sky.waterNeeded === undefined ? {} : { waterNeeded: sky.waterNeeded }),
    evaporation: 0.3,
    wbgt: air - 3,
    sunAltitude: 0.5,
    limits,
    open: !limits.some(isBeyond),
  }
}

/** `days` of hours from local midnight of the first day; `sky` is told the day and the hour of the clock. */
export function inventedHours(
  firstDay: string,
  days: number,
  sky: (day: number, hour: number) => Sky,
): readonly PrintHour[] {
  const midnight = instantAt(firstDay, 0, 'UTC')
  return Array.from({ length: days * 24 }, (_, i) =>
    inventedHour(midnight + i * 3600, sky(Math.floor(i / 24), i % 24)),
  )
}

/** A mild, dry day at every hour. */
export const mild = (): Sky => ({ air: 18 })

/** A summer: cool mornings, hot afternoons, each day a little different, now and then a storm. */
export function summer(day: number, hour: number): Sky {
  const wave = 4 * Math.sin(day * 0.61) + 2 * Math.sin(day * 1.93)
  const air = 22 + wave + 8 * Math.sin(((hour - 9) / 24) * 2 * Math.PI)
  const stormy = (day * 7 + 3) % 11 === 0 && hour >= 14
  return { air, wind: stormy ? 14 : 3 + (hour % 5), rain: stormy ? 4 : 0 }
}

/** Stands whatever comes, may rest half an hour. */
export const sturdy: LiftPhysics = {
  standing: trial => ({ layers: trial.layerEnds.length, limit: collapse(0, 0, 0), safety: 9 }),
  longestRest: at => ({ seconds: 1800, limit: restLimit(at, 1800) }),
}

/**
 * A mix that gains strength with age, sooner when warm: layer 1 carries the n layers above while
 * n·weight ≤ early + gain·2^((T − 20)/10)·age.
 */
export function growing(weight: number, early: number, gain: number): LiftPhysics {
  const standing = (trial: LiftTrial) => {
    const pace = gain * 2 ** ((trial.temperature - 20) / 10)
    const strength = (i: number) => early + pace * (trial.layerEnds[i]! - trial.layerEnds[0]!)
    let layers = 0
    while (layers < trial.layerEnds.length && (layers + 1) * weight <= strength(layers) + 1e-9) layers++
    const i = Math.min(layers, trial.layerEnds.length - 1)
    const top = trial.layerEnds.length - 1
    return {
      layers,
      limit: collapse((layers + 1) * weight, strength(i), trial.layerEnds[i]!),
      safety: strength(top) / ((top + 1) * weight),
    }
  }
  return { standing, longestRest: sturdy.longestRest }
}

const collapse = (demand: number, capacity: number, at: number): Limit => ({
  kind: 'collapse',
  at,
  demand,
  capacity,
  unit: 'Pa',
  source: 'the job',
})

const restLimit = (at: number, capacity: number): Limit => ({
  kind: 'resting-time',
  at,
  demand: 0,
  capacity,
  unit: 's',
  source: 'the job',
})

/** An input over `days` of mild weather from Monday 2026-06-01, to be changed at will. */
export function inventedInput(
  work: readonly SectionWork[],
  days: number,
  change: Partial<CampaignInput> = {},
): CampaignInput {
  return {
    work,
    hours: inventedHours('2026-06-01', days, mild),
    physics: sturdy,
    crew: inventedCrew,
    rules: inventedRules,
    calendar: { firstDay: '2026-06-01' },
    timeZone: 'UTC',
    speed: { now: 0.1, most: 0.15 },
    ...change,
  }
}

/** Five sections of 140 layers through a summer: the size of a house. */
export const inventedHouse = (change: Partial<CampaignInput> = {}): CampaignInput =>
  inventedInput(
    ['A', 'B', 'C', 'D', 'E'].map((name, i) => inventedWork(name, 140, 4 + 0.7 * i)),
    120,
    { hours: inventedHours('2026-06-01', 120, summer), physics: growing(450, 9000, 1.6), ...change },
  )
