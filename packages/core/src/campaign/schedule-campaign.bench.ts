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

export function bench(): readonly { readonly name: string; readonly run: () => void }[] {
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
    ...[5, 15, 30, 60].map(sections => {
      const input = street(sections)
      return { name: `${sections * 5} lifts`, run: () => void scheduleCampaign(input) }
    }),
  ]
}
