import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addDays, weekday } from '../clock/index.js'
import type { LimitKind } from '../limit/index.js'
import type { Campaign, Lift } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { checkCampaign } from './check-campaign.js'
import {
  growing,
  inventedCrew,
  inventedHours,
  inventedHouse,
  inventedInput,
  inventedRules,
  inventedWork,
  summer,
} from './invented-site.js'
import { scheduleCampaign } from './schedule-campaign.js'

describe('a house through a summer', () => {
  const input = inventedHouse()
  const campaign = scheduleCampaign(input)

  it('is up, and keeps every rule', () => {
    expect(campaign.finished).toBe(true)
    expect(checkCampaign(input, campaign)).toEqual([])
  })
  it('is proven to be up on the first possible day', () => {
    expect(campaign.bound.met).toBe(true)
    expect(campaign.days.at(-1)?.date).toBe(campaign.bound.date)
  })
  it('comes out the same when asked twice', () => expect(scheduleCampaign(input)).toEqual(campaign))
  it('survives a structured clone', () => expect(structuredClone(campaign)).toEqual(campaign))
  // Independent: one layer more is tried by hand and shown to the checker, which knows nothing of bindings.
  it('tells of every lift what really stops it: one layer more breaks just that', () => {
    const broken: Readonly<Partial<Record<LimitKind, readonly string[]>>> = {
      'lift-height': ['lift-height'],
      'mix-hot': ['closed-hour'],
      wind: ['closed-hour'],
      rain: ['closed-hour'],
      shift: ['shift', 'day-end'],
      collapse: ['standing'],
    }
    const lifts = campaign.days.flatMap(day => day.lifts)
    for (const lift of lifts.filter(one => one.binding.kind !== 'top-of-wall' && one.leftFor === undefined)) {
      const found = checkCampaign(input, withOneLayerMore(input, campaign, lift)).map(one => one.check)
      const expected = broken[lift.binding.kind] ?? []
      expect(
        expected.some(check => found.includes(`campaign/${check}`)),
        `${lift.id} ${lift.binding.kind}`,
      ).toBe(true)
    }
  })
})

function withOneLayerMore(input: CampaignInput, campaign: Campaign, lift: Lift): Campaign {
  const time = input.work.find(one => one.section === lift.section)!.printTimes[lift.lastLayer]!
  const end = lift.end + time
  const taller = { ...lift, lastLayer: lift.lastLayer + 1, end, layerEnds: [...lift.layerEnds, end] }
  const days = campaign.days.map(day => ({
    ...day,
    end: day.lifts.at(-1) === lift ? day.end + time : day.end,
    lifts: day.lifts.map(one => (one === lift ? taller : one)),
  }))
  return { ...campaign, days }
}

describe('line of balance in mild weather', () => {
  // Closed form: one section of 100 layers, 50 by rule each day, works 2 days. Each lift 50 × 5 min = 250 min.
  it('brings one section up in as many days as it has rule heights', () => {
    const campaign = scheduleCampaign(inventedInput([inventedWork('A', 100, 5)], 10))
    expect(campaign.days.map(day => day.lifts.map(lift => [lift.firstLayer, lift.lastLayer]))).toEqual([
      [[1, 50]],
      [[51, 100]],
    ])
  })
  // Closed form: shift 10 h, less 1 h set-up and wash-out: 540 min. Two lifts of 250 min and a change of 30 min: 530.
  // n sections of 2 lifts: n days in pairs. Four sections → 4 days.
  it.each([
    [2, 2],
    [4, 4],
    [6, 6],
  ])('brings %d equal sections up in %d days, two lifts a day', (sections, days) => {
    const names = ['A', 'B', 'C', 'D', 'E', 'F'].slice(0, sections)
    const campaign = scheduleCampaign(
      inventedInput(
        names.map(name => inventedWork(name, 100, 5)),
        14,
      ),
    )
    expect(campaign.days).toHaveLength(days)
    expect(campaign.days.every(day => day.lifts.length === 2)).toBe(true)
    expect(campaign.bound.met).toBe(true)
  })
})

describe('a street of tall walls', () => {
  // Sections of 6 m: 300 layers of 2 to 9 min. The bound leaves out standing, whole layers and short sections that cannot fill
  // a day, so what is left between it and the campaign is not all ours.
  it.each([
    [6, 2],
    [9, 11],
    [12, 29],
  ])(
    '%d sections of 6 m are up within six percent or two days of the proven bound (summer %d)',
    (count, shift) => {
      const work = Array.from({ length: count }, (_, i) =>
        inventedWork(`S${i}`, 300, 2 + ((i * 5 + shift) % 8)),
      )
      const input = inventedInput(work, 160, {
        hours: inventedHours('2026-06-01', 160, (day, hour) => summer((day % 80) + shift, hour)),
        physics: growing(450, 9000, 5),
      })
      const campaign = scheduleCampaign(input, 'brisk')
      expect(checkCampaign(input, campaign)).toEqual([])
      const worked = (until: string) => workingDays('2026-06-01', until)
      const [took, least] = [worked(campaign.days.at(-1)!.date), worked(campaign.bound.date!)]
      expect(took - least).toBeLessThanOrEqual(Math.max(2, 0.06 * least))
    },
  )
})

function workingDays(from: string, until: string): number {
  let days = 0
  for (let date = from; date <= until; date = addDays(date, 1)) if (weekday(date) <= 5) days++
  return days
}

/** Jobs of all sorts: sections, windows, holds, lift ends, weak mixes, standing walls, deliveries. */
const jobs = fc
  .record({
    sections: fc.array(
      fc.record({
        layers: fc.integer({ min: 1, max: 90 }),
        minutes: fc.integer({ min: 2, max: 24 }),
        endAt: fc.integer({ min: 1, max: 90 }),
        holdAt: fc.integer({ min: 0, max: 90 }),
        holdMinutes: fc.integer({ min: 1, max: 40 }),
        standing: fc.integer({ min: 0, max: 40 }),
      }),
      { minLength: 1, maxLength: 6 },
    ),
    liftHeight: fc.double({ min: 0.1, max: 1.5, noNaN: true }),
    cure: fc.integer({ min: 6, max: 30 }),
    longestShift: fc.integer({ min: 4, max: 14 }),
    dayStart: fc.integer({ min: 0, max: 22 }),
    strength: fc.integer({ min: 2000, max: 20000 }),
    stock: fc.double({ min: 0, max: 3, noNaN: true }),
    seed: fc.integer({ min: 0, max: 50 }),
  })
  .map(job => {
    const work = job.sections.map((one, i) => ({
      ...inventedWork(String.fromCharCode(65 + i), one.layers, one.minutes),
      liftEnds: [
        {
          afterLayer: Math.min(one.endAt, one.layers),
          reason: 'lintel' as const,
          ref: `L${Math.floor(i / 2)}`,
        },
      ],
      holds: [
        { afterLayer: one.holdAt, duration: one.holdMinutes * 60, reason: 'embed' as const, ref: `E${i}` },
      ],
    }))
    const first = inventedHours('2026-06-01', 1, () => ({ air: 18 }))[0]!.start
    return inventedInput(work, 30, {
      hours: inventedHours('2026-06-01', 30, (day, hour) => summer(day + job.seed, hour)),
      physics: growing(450, job.strength, 1.2),
      rules: {
        ...inventedRules,
        liftHeight: { value: job.liftHeight, source: 'the job' },
        overnightCure: { value: job.cure * 3600, source: 'the job' },
      },
      crew: {
        ...inventedCrew,
        dayStart: job.dayStart * 3600,
        dayEnd: ((job.dayStart + 14) % 24) * 3600,
        longestShift: job.longestShift * 3600,
      },
      standing: job.sections.map((one, i) => ({
        section: String.fromCharCode(65 + i),
        layers: Math.min(one.standing, one.layers),
        lastEnd: first - 3600 * one.endAt,
      })),
      deliveries: {
        stock: job.stock,
        arrivals: [3, 6, 9, 12].map(day => ({ at: first + day * 86400, volume: 2 })),
      },
    })
  })

describe('any job', () => {
  it('gets a campaign that keeps every rule, and no shorter than its bound', () => {
    fc.assert(
      fc.property(jobs, input => {
        const campaign = scheduleCampaign(input)
        expect(checkCampaign(input, campaign)).toEqual([])
        if (campaign.finished)
          expect(campaign.days.at(-1)?.date ?? '').toSatisfy(
            (date: string) => date === '' || date >= (campaign.bound.date ?? ''),
          )
      }),
      { numRuns: 60 },
    )
  })
})
