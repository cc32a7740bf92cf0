import { describe, expect, it } from 'vitest'
import { inventedCrew, inventedHours, inventedInput, inventedWork } from './invented-site.js'
import { countedDraws } from './random-draws.js'
import { type MishapRates, replayRuns } from './replay-campaign.js'

const none: MishapRates = { breakdownsPerHour: 0, repairHours: 0, lateChance: 0, lateHours: 0 }
const everyDay = { ...inventedCrew, workDays: [1, 2, 3, 4, 5, 6, 7] }
const draw = countedDraws(77)

/** Mean of so many replays and how far it may lie off the true one: three of its deviations. */
function lostDays(input: ReturnType<typeof inventedInput>, rates: MishapRates, repeats: number) {
  const runs = replayRuns(input, [{ label: 'calm', hours: input.hours }], rates, draw, { repeats })
  const counts = runs.map(run => run.lost.length)
  const mean = counts.reduce((a, b) => a + b, 0) / repeats
  const variance = counts.reduce((sum, count) => sum + (count - mean) ** 2, 0) / (repeats - 1)
  return { runs, mean, within: 3 * Math.sqrt(variance / repeats) }
}

/** One layer of 50 min in the one open hour of each day, at six: it starts by ten past or not at all that day. */
const oneHour = (days: number) =>
  inventedInput([inventedWork('A', 1, 50)], days, {
    crew: everyDay,
    hours: inventedHours('2026-06-01', days, (_, hour) => ({ air: 18, rain: hour === 6 ? 0 : 4 })),
  })

describe('replays beside closed forms', () => {
  // Closed form: mix is due when the day opens at five; half an hour of set-up after it the layer has to start by ten past six: 40 min to spare. A
  // delivery comes late with chance c and then by more than that with e^(−2/3 h ÷ mean). Such days are lost until one is not: geometric,
  // p/(1 − p) on average.
  it('lose as many days to late mix as the geometric law says', () => {
    const rates = { ...none, lateChance: 0.6, lateHours: 1 }
    const p = 0.6 * Math.exp(-2 / 3)
    const { mean, within } = lostDays(oneHour(60), rates, 4000)
    expect(Math.abs(mean - p / (1 - p))).toBeLessThan(within)
  })
  // Closed form: the layer survives with s = e^(−λT); each failure at t < T, exponential and cut off at T, loses its day, and the next ones as long as the
  // repair, exponential and so without memory, goes on past ten past six: with k = 1/r,
  //   E[blocked] = e^(−k·24 h 10 min) · E[e^(kt)] / (1 − e^(−k·24 h)),  E[e^(kt)] = λ/(λ − k) · (1 − e^(−(λ−k)T))/(1 − e^(−λT)).
  // Days lost: (1 − s)/s failures, each 1 + E[blocked]. A start between six and ten past after a repair shifts t by at most ten minutes of thirty hours.
  it('lose as many days to breakdowns and their repairs as the memoryless law says', () => {
    const [λ, r, T] = [1, 30, 50 / 60]
    const rates = { ...none, breakdownsPerHour: λ, repairHours: r }
    const k = 1 / r
    const survives = Math.exp(-λ * T)
    const shifted = ((λ / (λ - k)) * (1 - Math.exp(-(λ - k) * T))) / (1 - survives)
    const blocked = (Math.exp(-k * (24 + 1 / 6)) * shifted) / (1 - Math.exp(-24 * k))
    const exact = ((1 - survives) / survives) * (1 + blocked)
    const { mean, within } = lostDays(oneHour(90), rates, 4000)
    expect(exact).toBeGreaterThan(1.5)
    expect(Math.abs(mean - exact)).toBeLessThan(within + exact * (1 / 6 / r))
  })
  // Closed form: with repairs done overnight every day begins anew. Of its 50 layers of 5 min the first i stand with e^(−λ·i·5 min): on average
  // m = Σ e^(−λτi) = x(1 − x⁵⁰)/(1 − x), x = e^(−λτ), layers a day. By Wald, 3000 layers take 3000/m days, and less than a day more for the last one.
  it('climbs as many layers a day as the renewals say', () => {
    const [λ, τ, layers] = [0.25, 5 / 60, 3000]
    const x = Math.exp(-λ * τ)
    const m = (x * (1 - x ** 50)) / (1 - x)
    const input = inventedInput([inventedWork('A', layers, 5)], 140, { crew: everyDay })
    const rates = { ...none, breakdownsPerHour: λ, repairHours: 1e-6 }
    const runs = replayRuns(input, [{ label: 'calm', hours: input.hours }], rates, draw, { repeats: 60 })
    const days = runs.map(run => (Date.parse(run.finish!) - Date.parse('2026-06-01')) / 86_400_000 + 1)
    const mean = days.reduce((a, b) => a + b, 0) / days.length
    const deviation = Math.sqrt(days.reduce((sum, d) => sum + (d - mean) ** 2, 0) / (days.length - 1))
    expect(m).toBeGreaterThan(20)
    expect(m).toBeLessThan(45)
    expect(mean).toBeGreaterThan(layers / m - (3 * deviation) / Math.sqrt(60))
    expect(mean).toBeLessThan(layers / m + 1 + (3 * deviation) / Math.sqrt(60))
  })
  // Common random numbers: the same breakdowns meet both plans, so that the spread of the difference is far below that of two independent ones.
  it('tell two plans apart by far fewer replays when both meet the same mishaps', () => {
    const rates = { ...none, breakdownsPerHour: 0.1, repairHours: 10 }
    const tower = (minutes: number) =>
      inventedInput([inventedWork('A', 600, minutes)], 120, { crew: everyDay })
    const finishes = (minutes: number, seed: number) => {
      const input = tower(minutes)
      const runs = replayRuns(input, [{ label: 'calm', hours: input.hours }], rates, countedDraws(seed), {
        repeats: 60,
      })
      return runs.map(run => Date.parse(run.finish!) / 86_400_000)
    }
    const spread = (a: readonly number[], b: readonly number[]) => {
      const differences = a.map((day, i) => day - b[i]!)
      const mean = differences.reduce((sum, each) => sum + each, 0) / differences.length
      return differences.reduce((sum, each) => sum + (each - mean) ** 2, 0) / differences.length
    }
    const slow = finishes(5, 1)
    expect(spread(slow, finishes(4, 1))).toBeLessThan(0.7 * spread(slow, finishes(4, 2)))
  })
})
