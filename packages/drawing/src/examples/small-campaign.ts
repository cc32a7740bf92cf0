import type { Campaign, Hold, Lift, PrintDay } from '@dawnlift/core/campaign'
import { addDays, instantAt } from '@dawnlift/core/clock'
import type { Limit, LimitKind } from '@dawnlift/core/limit'
import type { PrintHour } from '@dawnlift/core/weather'

const zone = 'Europe/Madrid'
const firstDay = '2026-07-13'
const layerTime = 240
const bead = 0.05 * 0.025
const metresOfLayer: Readonly<Record<string, number>> = { A: 26.4, B: 28.1 }

const limit = (kind: LimitKind, demand: number, capacity: number, unit: string, at?: number): Limit => ({
  kind,
  demand,
  capacity,
  unit,
  source: 'the job',
  ...(at === undefined ? {} : { at }),
})

/** First layer, last layer, what ended the lift. */
const plan: readonly (readonly [number, number, Limit])[] = [
  [1, 40, limit('lift-height', 1.025, 1, 'm')],
  [41, 80, limit('buckling', 1.02, 0.99, 'm')],
  [81, 92, limit('lintel-head', 93, 92, 'layer')],
  [93, 96, limit('top-of-wall', 97, 96, 'layer')],
]
/** Days after the first; day 2 is lost to wind. */
const printDays = [0, 1, 3, 4]

const holdsOf = (section: string, first: number, last: number): readonly Hold[] =>
  (
    [
      ['B', { afterLayer: 60, duration: 600, reason: 'embed', ref: 'A1' }],
      ['A', { afterLayer: 50, duration: 600, reason: 'embed', ref: 'J1' }],
      ['A', { afterLayer: 92, duration: 3600, reason: 'lintel', ref: 'D1' }],
      ['B', { afterLayer: 92, duration: 1800, reason: 'lintel', ref: 'F2' }],
      ['A', { afterLayer: 80, duration: 3600, reason: 'pour', ref: 'K1' }],
    ] as const
  )
    .filter(([s, hold]) => s === section && hold.afterLayer >= first - 1 && hold.afterLayer < last)
    .map(([, hold]) => hold)

function lift(section: string, number: number, start: number): Lift {
  const [firstLayer, lastLayer, binding] = plan[number - 1]!
  const holds = holdsOf(section, firstLayer, lastLayer)
  const layerEnds: number[] = []
  let clock = start
  for (let layer = firstLayer; layer <= lastLayer; layer++) {
    clock += layerTime
    layerEnds.push(clock)
    clock += holds.filter(hold => hold.afterLayer === layer).reduce((sum, hold) => sum + hold.duration, 0)
  }
  const layers = lastLayer - firstLayer + 1
  const length = layers * metresOfLayer[section]!
  const wished = Math.min(40, 96 - firstLayer + 1)
  return {
    id: `${section}${number}`,
    section,
    firstLayer,
    lastLayer,
    start,
    end: layerEnds.at(-1)!,
    layerEnds,
    holds,
    length,
    volume: length * bead,
    wishedLayers: wished,
    binding,
    runnersUp: [
      { limit: limit('buckling', 1.1, 1.08, 'm'), layers: layers + 4 },
      { limit: limit('evaporation', 1.05, 1, 'kg/m² h', start + 6.2 * 3600), layers: layers + 34 },
      { limit: limit('collapse', 1.4, 1.35, 'm'), layers: layers + 14 },
    ],
    ...(number === 2
      ? {
          nextGain: {
            lever: 'chilled-water' as const,
            setting: 9,
            unit: '°C',
            layers: 4,
            days: 0,
            bindsNext: limit('lift-height', 1.025, 1, 'm'),
          },
        }
      : {}),
    safety: number === 2 ? 1.5 : 1.9,
    pauseBudget: 1260,
  }
}

function printDay(index: number): PrintDay {
  const date = addDays(firstDay, printDays[index]!)
  const start = instantAt(date, 5 * 3600, zone)
  const a = lift('A', index + 1, start + 2400 + (index === 3 ? 3600 : 0))
  const b = lift('B', index + 1, a.end + 1200 + (index === 3 ? 1800 : 0))
  return { date, number: index + 1, start, end: b.end + 2400, lifts: [a, b], chilled: index === 1 }
}

/** A July hour: hot afternoons, and a windy third day. */
function hour(start: number, clock: number, day: number): PrintHour {
  const sun = Math.sin(((clock / 3600 - 7) / 14) * Math.PI)
  const air = 25 + 8 * Math.sin(((clock / 3600 - 9.5) / 24) * 2 * Math.PI)
  const wind = (day === 2 ? 11 : 3) + 2 * Math.max(0, sun)
  const evaporation = 0.25 + 0.9 * Math.max(0, sun)
  const mixTemperature = air * 0.55 + 14
  const wbgt = air * 0.7 + 4 + 3 * Math.max(0, sun)
  const limits = [
    limit('evaporation', evaporation, 1, 'kg/m² h', start),
    limit('mix-hot', mixTemperature, 32, '°C', start),
    limit('wind', wind, 9, 'm/s', start),
    limit('crew-heat', wbgt, 28, '°C', start),
    limit('permitted-hours', clock >= 18_000 && clock < 72_000 ? 0 : 1, 0, 'hour', start),
  ]
  return {
    start,
    weather: {
      start,
      air,
      humidity: 0.55 - 0.2 * Math.max(0, sun),
      wind,
      gust: wind * 1.5,
      rain: 0,
      global: 900 * Math.max(0, sun),
      beam: 800 * Math.max(0, sun),
      diffuse: 120 * Math.max(0, sun),
      pressure: 99_500,
      source: 'normals',
    },
    mixTemperature,
    mixTemperatureChilled: mixTemperature - 4,
    waterNeeded: 22 - 0.6 * (air - 20),
    evaporation,
    wbgt,
    sunAltitude: sun * 1.2,
    limits,
    open: limits.every(one => one.demand <= one.capacity),
  }
}

const hours = Array.from({ length: 5 * 24 }, (_, index) => {
  const start = instantAt(firstDay, 0, zone) + index * 3600
  return hour(start, (index % 24) * 3600, Math.floor(index / 24))
})

const days = printDays.map((_, index) => printDay(index))

export const smallCampaign: Campaign = {
  days,
  idleDays: [{ date: addDays(firstDay, 2), why: limit('wind', 13, 9, 'm/s') }],
  finished: true,
  finish: days.at(-1)!.end,
  hours,
  bound: { days: 4, how: 'each section needs four lifts, one a day' },
}
