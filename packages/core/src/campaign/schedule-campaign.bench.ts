import {
  growing,
  inventedHours,
  inventedHouse,
  inventedInput,
  inventedWork,
  summer,
} from './invented-site.js'
import { countedDraws } from './random-draws.js'
import { replan } from './replan.js'
import { replayCampaign } from './replay-campaign.js'
import { scheduleCampaign } from './schedule-campaign.js'

/** So many sections of five lifts, through as much summer as they need. */
const street = (sections: number) =>
  inventedInput(
    Array.from({ length: sections }, (_, i) => inventedWork(`S${i}`, 250, 3 + (i % 4))),
    30 + sections * 8,
    {
      hours: inventedHours('2026-06-01', 30 + sections * 8, (day, hour) => summer(day % 90, hour)),
      physics: growing(450, 9000, 1.6),
    },
  )

export function bench(): readonly {
  readonly name: string
  readonly once?: boolean
  readonly run: () => void
}[] {
  const house = inventedHouse()
  const told = scheduleCampaign(house)
  const now = told.days[4]!.end
  const lifts = told.days.slice(0, 5).flatMap(day => day.lifts)
  const standing = house.work.flatMap(({ section }) => {
    const last = lifts.filter(lift => lift.section === section).at(-1)
    return last ? [{ section, layers: last.lastLayer - 4, lastEnd: last.end }] : []
  })
  const draw = countedDraws(1)
  const rates = { breakdownsPerHour: 0.02, repairHours: 6, lateChance: 0.05, lateHours: 2 }
  const years = Array.from({ length: 10 }, (_, y) => ({
    label: `${y}`,
    hours: inventedHours('2026-06-01', 120, (day, hour) => summer(day + 31 * y, hour)),
  }))
  return [
    { name: 'house, 5 sections × 140 layers, 120 days', run: () => void scheduleCampaign(house) },
    { name: 'house re-planned after five days', run: () => void replan(house, { now, standing }, told) },
    {
      name: 'house, 100 replays',
      run: () => void replayCampaign(house, years, rates, draw, { repeats: 10 }),
    },
    ...sizes.map(sections => {
      const input = street(sections)
      return { name: liftsOf(sections), once: sections > 10, run: () => void scheduleCampaign(input) }
    }),
  ]
}

const sizes = [5, 10, 20, 40, 60]
const liftsOf = (sections: number): string => `${sections * 5} lifts`

/** How the time grows with the lifts: the exponent of the power law that fits the streets best. */
export function report(
  rows: readonly { readonly name: string; readonly median: number }[],
): readonly string[] {
  const points = sizes.flatMap(sections => {
    const row = rows.find(({ name }) => name === liftsOf(sections))
    return row ? [{ x: Math.log(sections * 5), y: Math.log(row.median) }] : []
  })
  const mean = (of: (point: { readonly x: number; readonly y: number }) => number) =>
    points.reduce((sum, point) => sum + of(point), 0) / points.length
  const [x, y] = [mean(point => point.x), mean(point => point.y)]
  const slope = mean(point => (point.x - x) * (point.y - y)) / mean(point => (point.x - x) ** 2)
  return [
    `time grows with the ${slope.toFixed(2)}th power of the lifts, ${sizes[0]! * 5} to ${sizes.at(-1)! * 5} of them`,
  ]
}
