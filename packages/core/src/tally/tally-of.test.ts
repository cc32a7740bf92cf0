import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  exampleCampaign,
  exampleDoor,
  exampleEmbed,
  exampleJob,
  exampleLift,
} from '../trade/trade-example.js'
import { hoseVolume, splitMix } from './hose.js'
import { tallyOf } from './tally-of.js'

const [monday, tuesday] = ['2026-07-13', '2026-07-14'] as const
const job = exampleJob({
  openings: [exampleDoor('D')],
  embeds: [exampleEmbed('X')],
  columns: [{ id: 'K', wall: 'W', at: 5, length: 0.4, thickness: 0.3, cover: 0.03 }],
})
const campaign = exampleCampaign([
  [monday, exampleLift('A', 1, monday, 1, 50)],
  [
    tuesday,
    exampleLift('A', 2, tuesday, 51, 110, [{ afterLayer: 60, duration: 600, reason: 'embed', ref: 'X' }]),
  ],
])
const tally = tallyOf({ job, campaign })

describe('hoseVolume', () => {
  it.each([
    // closed form: π/4 · 0.05² · 20
    [0.05, 20, 0.03926990816987242],
    // hand: a hose of 1 m² bore holds its length; d = √(4/π)
    [Math.sqrt(4 / Math.PI), 7, 7],
  ])('of %d m bore and %d m is %d m³', (diameter, length, volume) =>
    expect(hoseVolume(diameter, length)).toBeCloseTo(volume, 12),
  )
  it('of no length is nothing', () => expect(hoseVolume(0.05, 0)).toBe(0))
})

describe('splitMix', () => {
  it('of 1250 kg at 0.25 is a tonne of dry and 250 kg of water', () =>
    // hand: 1000 + 0.25 · 1000
    expect(splitMix(1250, 0.25)).toEqual({ dry: 1000, water: 250 }))
  it('loses nothing', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (mass, ratio) => {
          const { dry, water } = splitMix(mass, ratio)
          expect(dry + water).toBeCloseTo(mass, 6)
        },
      ),
    ))
  it('without water is all dry', () => expect(splitMix(500, 0)).toEqual({ dry: 500, water: 0 }))
})

describe('tallyOf', () => {
  it('takes a lift’s volume, mass, dry material and water', () =>
    // hand: 50 layers × 0.03 m³ = 1.5 m³; × 2000 = 3000 kg; / 1.25 = 2400 kg dry; 600 kg water; 96 bags
    expect(tally.byLift[0]).toMatchObject({
      lift: 'A1',
      date: monday,
      volume: 1.5,
      mass: 3000,
      dry: 2400,
      water: 600,
      bags: 96,
      beadLength: 1500,
    }))

  it('takes holds out of the print time', () => expect(tally.byLift[1]?.printTime).toBe(60 * 300))

  it('leaves the print time alone for holds on top of the lift, which wait for the next morning', () => {
    const days = campaign.days.map(day => ({
      ...day,
      lifts: day.lifts.map(lift => ({
        ...lift,
        holds: [
          ...lift.holds,
          { afterLayer: lift.lastLayer, duration: 7200, reason: 'lintel' as const, ref: 'D9' },
        ],
      })),
    }))
    const held = tallyOf({ job, campaign: { ...campaign, days } })
    expect(held.byLift.map(lift => lift.printTime)).toEqual(tally.byLift.map(lift => lift.printTime))
  })

  it('orders whole bags for a day, with what stays in the hose', () => {
    // hand: hose 0.0392699 m³ × 2000 = 78.540 kg, 62.832 kg dry; 2462.832 / 25 = 98.5 → 99 bags
    expect(tally.byDay[0]?.bags).toBe(99)
    expect(tally.byDay[0]?.dry).toBeCloseTo(2462.832, 3)
    expect(tally.waste?.volume).toBeCloseTo(2 * 0.0392699, 7)
  })

  it('does not order a bag for a rounding error', () => {
    const exact = tallyOf({ job: { ...job, batching: { ...job.batching, hoseLength: 0 } }, campaign })
    expect(exact.byDay[0]?.bags).toBe(96)
  })

  it('adds up to the total', () => {
    for (const key of ['bags', 'dry', 'water', 'volume', 'beadLength', 'printTime'] as const)
      expect(tally.total[key]).toBeCloseTo(
        tally.byDay.reduce((sum, day) => sum + day[key], 0),
        9,
      )
  })

  it('takes openings off the wall face', () =>
    // hand: 6 × 2.4 − 1 × 2
    expect(tally.wallFace).toBeCloseTo(12.4, 9))

  it('costs what the lead’s rates say', () => {
    const amount = (what: string) => tally.cost.lines.find(line => line.what === what)?.amount
    // hand: two days; shifts 05:00–10:40 and 05:00–11:40 = 12 h 20 min × 4 × 40
    expect(amount('Machine')).toBe(2000)
    expect(amount('Crew')).toBeCloseTo((5 + 40 / 60 + 6 + 40 / 60) * 4 * 40, 6)
    // hand: 0.4 × (0.3 − 0.1) × 2.4 m³ × 150
    expect(amount('Pours')).toBeCloseTo(28.8, 9)
    expect(amount('Protection')).toBeCloseTo(24.8 * 3, 9)
    expect(amount('Lintels')).toBe(100)
    expect(amount('Embeds')).toBe(10)
    expect(tally.cost.total).toBeCloseTo(
      tally.cost.lines.reduce((sum, line) => sum + line.amount, 0),
      9,
    )
    expect(tally.cost.perWallFace).toBeCloseTo(tally.cost.total / 12.4, 9)
  })
})
