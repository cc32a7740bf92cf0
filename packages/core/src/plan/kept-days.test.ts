import { describe, expect, it } from 'vitest'
import { type CampaignInput, type SectionWork, scheduleCampaign } from '../campaign/index.js'
import type { Job } from '../job/index.js'
import { type KeptDays, keptDays } from './kept-days.js'

const work: SectionWork = {
  section: 'A',
  layerHeight: 0.02,
  printTimes: [300, 300],
  lengths: [3, 3],
  volumes: [0.1, 0.1],
  holds: [],
  liftEnds: [],
}
const rule = (value: number) => ({ value, source: 'the job' })
// No hour of weather is known: the campaign is empty, and soon made.
const input = {
  work: [work],
  hours: [],
  physics: {
    standing: () => ({ layers: 2, limit: {}, safety: 2 }),
    longestRest: () => ({ seconds: 900, limit: {} }),
  },
  crew: { setUp: 0, washOut: 0, changeOver: 0, longestShift: 36_000, workDays: [1], daysOff: [] },
  rules: { liftHeight: rule(1), overnightCure: rule(1) },
  calendar: { firstDay: '2026-06-01' },
  timeZone: 'UTC',
  speed: { now: 0.1, most: 0.1 },
} as unknown as CampaignInput
const job = (change: object = {}) => ({ name: 'Wall', units: 'metric', ...change }) as unknown as Job

describe('the days of a plan', () => {
  it('are searched once for the same job, weather and log, and anew when any of them changes', () => {
    const cache = new Map<string, KeptDays>()
    let made = 0
    const make = () => {
      made++
      return input
    }
    const hours: never[] = []
    const first = keptDays({ job: job(), hours }, make, cache)
    // Another object of the same content, as a document read again gives it.
    expect(keptDays({ job: job(), hours }, make, cache)).toBe(first)
    expect(made).toBe(1)
    keptDays({ job: job({ aim: 'calmest' }), hours }, make, cache)
    keptDays({ job: job(), hours, log: { events: [], now: 0 } as never }, make, cache)
    expect(made).toBe(3)
    keptDays({ job: job(), hours: [] }, make, cache)
    expect(made).toBe(4)
    expect(first.days.campaign).toEqual(scheduleCampaign(input))
  })
})
