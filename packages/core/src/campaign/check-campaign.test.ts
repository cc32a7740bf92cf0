import { describe, expect, it } from 'vitest'
import type { Campaign, Lift, PrintDay } from './campaign.js'
import { checkCampaign } from './check-campaign.js'
import { growing, inventedCrew, inventedInput, inventedRules, inventedWork } from './invented-site.js'
import { scheduleCampaign } from './schedule-campaign.js'

const lintel = { afterLayer: 30, reason: 'lintel' as const, ref: 'D1' }
const input = inventedInput(
  [
    { ...inventedWork('A', 70, 5), liftEnds: [lintel], holds: [{ ...lintel, duration: 900 }] },
    inventedWork('B', 60, 6),
  ],
  10,
)
const campaign = scheduleCampaign(input)

/** The campaign with one day, or one lift, changed by hand. */
const withDay = (index: number, change: (day: PrintDay) => PrintDay): Campaign => ({
  ...campaign,
  days: campaign.days.map((day, i) => (i === index ? change(day) : day)),
})
const withLift = (id: string, change: (lift: Lift) => Partial<Lift>): Campaign => ({
  ...campaign,
  days: campaign.days.map(day => ({
    ...day,
    lifts: day.lifts.map(lift => (lift.id === id ? { ...lift, ...change(lift) } : lift)),
  })),
})
const later = (lift: Lift, by: number): Partial<Lift> => ({
  start: lift.start + by,
  end: lift.end + by,
  layerEnds: lift.layerEnds.map(end => end + by),
})
const faults = (changed: Campaign, job = input) => [
  ...new Set(checkCampaign(job, changed).map(finding => finding.check.replace('campaign/', ''))),
]

describe('the checker', () => {
  it('finds nothing wrong with the campaign it was given', () => expect(faults(campaign)).toEqual([]))

  // Each row breaks one rule by hand and names the finding it must raise.
  const broken: readonly (readonly [string, Campaign, string])[] = [
    ['a lift that starts while the nozzle is elsewhere', withLift('B1', lift => later(lift, -3600)), 'moves'],
    ['a layer faster than it can be printed', withLift('A1', lift => ({ start: lift.start + 120 })), 'pace'],
    ['a lift through a lintel', withLift('A1', lift => ({ lastLayer: lift.lastLayer + 1 })), 'lift-end'],
    ['a layer left out', withLift('A2', lift => ({ firstLayer: lift.firstLayer + 1 })), 'layer-order'],
    ['a shift without wash-out', withDay(0, day => ({ ...day, end: day.lifts.at(-1)!.end })), 'wash-out'],
    ['a day that starts in the night', withDay(1, day => ({ ...day, start: day.start - 7200 })), 'day-start'],
    ['a Sunday', withDay(0, day => ({ ...day, date: '2026-05-31' })), 'day-off'],
    ['days out of order', { ...campaign, days: [...campaign.days].reverse() }, 'day-order'],
    ['a top never reached', { ...campaign, days: campaign.days.slice(0, -1) }, 'finished'],
    [
      'two lifts of a section in a day',
      withDay(0, day => ({ ...day, lifts: [...day.lifts, ...campaign.days[1]!.lifts] })),
      'one-lift-a-day',
    ],
    ['a finish that is not the last lift', { ...campaign, finish: campaign.finish - 60 }, 'finish'],
  ]
  it.each(broken)('finds %s', (_, changed, fault) => expect(faults(changed)).toContain(fault))

  const strictRules = (change: Partial<typeof inventedRules>) => ({
    ...input,
    rules: { ...inventedRules, ...change },
  })
  const given = (value: number) => ({ value, source: 'the job' })
  const stricter: readonly (readonly [string, typeof input, string])[] = [
    ['a lift taller than the rule', strictRules({ liftHeight: given(0.3) }), 'lift-height'],
    ['a lift on a wall too green', strictRules({ overnightCure: given(40 * 3600) }), 'overnight-cure'],
    ['a lift that does not stand', { ...input, physics: growing(450, 900, 0) }, 'standing'],
    [
      'a layer that lay bare too long',
      {
        ...input,
        physics: {
          ...input.physics,
          longestRest: at => ({ ...input.physics.longestRest(at), seconds: 200 }),
        },
      },
      'resting-time',
    ],
    [
      'hours that were closed',
      { ...input, hours: input.hours.map(hour => ({ ...hour, open: false })) },
      'closed-hour',
    ],
    ['hours nobody knows', { ...input, hours: input.hours.slice(0, 30) }, 'closed-hour'],
    ['a shift too long', { ...input, crew: { ...inventedCrew, longestShift: 4 * 3600 } }, 'shift'],
    ['an end after the day', { ...input, crew: { ...inventedCrew, dayEnd: 9 * 3600 } }, 'day-end'],
    ['mix that never came', { ...input, deliveries: { stock: 0.1, arrivals: [] } }, 'delivery'],
    [
      'days before the present',
      { ...input, calendar: { ...input.calendar, now: campaign.days[1]!.start } },
      'past',
    ],
  ]
  it.each(stricter)('finds %s', (_, job, fault) => expect(faults(campaign, job)).toContain(fault))
})
