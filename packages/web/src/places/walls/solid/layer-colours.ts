import { equivalentAge, strengthAt } from '@dawnlift/core/mix'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import type { LayerClock } from './standing-layers.js'

export type ColourBy = 'day' | 'age' | 'strength' | 'temperature'

/** Dark to light and readable for every common colour vision (a run through blue, green, yellow of rising lightness). */
const ramp: readonly (readonly [number, number, number])[] = [
  [0.16, 0.2, 0.42],
  [0.14, 0.42, 0.55],
  [0.19, 0.6, 0.53],
  [0.58, 0.75, 0.4],
  [0.96, 0.86, 0.36],
]

export function rampColour(share: number): readonly [number, number, number] {
  const at = Math.min(1, Math.max(0, Number.isFinite(share) ? share : 0)) * (ramp.length - 1)
  const low = Math.min(ramp.length - 2, Math.floor(at))
  const [a, b] = [ramp[low]!, ramp[low + 1]!]
  const mix = (i: 0 | 1 | 2) => a[i] + (b[i] - a[i]) * (at - low)
  return [mix(0), mix(1), mix(2)]
}

/** What a colour means at its two ends, for the key under the picture. */
export const colourEnds: Readonly<Record<ColourBy, readonly [string, string]>> = {
  day: ['first day', 'last day'],
  age: ['just laid', 'a week old'],
  strength: ['green', '20 MPa (screening value)'],
  temperature: ['mix at 15 °C', 'mix at 35 °C'],
}

/** Share along the ramp of every layer of a section at a moment. */
export function layerShare(
  plan: Plan,
  clock: LayerClock,
  by: ColourBy,
): (section: string, layer: number, moment: Instant) => number {
  const { days, hours } = plan.campaign
  const numbers = new Map(
    days.flatMap(day =>
      day.lifts.flatMap(lift =>
        lift.layerEnds.map((_, i) => [`${lift.section}/${lift.firstLayer + i}`, day.number] as const),
      ),
    ),
  )
  const first = hours[0]?.start ?? 0
  const hourOf = (at: Instant) =>
    hours[Math.min(hours.length - 1, Math.max(0, Math.floor((at - first) / 3600)))]
  return (section, layer, moment) => {
    const down = clock[section]?.[layer - 1] ?? Number.POSITIVE_INFINITY
    switch (by) {
      case 'day':
        return ((numbers.get(`${section}/${layer}`) ?? 1) - 1) / Math.max(1, days.length - 1)
      case 'age':
        return Math.sqrt(Math.max(0, moment - down) / (7 * 86_400))
      case 'strength': {
        const hour = hourOf(down)
        return (
          strengthAt(
            plan.job.mix.strength,
            equivalentAge(Math.max(0, moment - down), hour?.weather.air ?? 20, plan.job.mix),
          ) / 20e6
        )
      }
      case 'temperature':
        return ((hourOf(down)?.mixTemperature ?? 20) - 15) / 20
    }
  }
}
