import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Campaign, SectionWork } from './campaign.js'
import type { CampaignInput } from './campaign-input.js'
import { checkCampaign } from './check-campaign.js'
import { holdDays } from './hold-days.js'
import { inventedHouse, inventedInput, inventedWork } from './invented-site.js'
import { scheduleCampaign } from './schedule-campaign.js'

const house = inventedHouse()
const told = scheduleCampaign(house)
const liftsOf = (campaign: Campaign) => campaign.days.flatMap(day => day.lifts)
const daysOf = (campaign: Campaign) =>
  campaign.days.map(day => [day.date, ...day.lifts.map(lift => `${lift.section} to ${lift.lastLayer}`)])

/** The house with one of its sections changed. */
const edited = (section: string, change: (work: SectionWork) => Partial<SectionWork>): CampaignInput => ({
  ...house,
  work: house.work.map(work => (work.section === section ? { ...work, ...change(work) } : work)),
})

describe('holding the days of a standing campaign', () => {
  it('gives the campaign itself where nothing has changed, limits and gains included', () => {
    const held = holdDays(house, told)!
    expect({ ...held, bound: 0 }).toEqual({ ...told, bound: 0 })
  })

  it('keeps sections, order and layers, and moves the clock, where a layer takes a little longer', () => {
    const slower = edited('C', work => ({
      printTimes: work.printTimes.map((time, i) => (i === 60 ? time + 20 : time)),
    }))
    const held = holdDays(slower, told)!
    expect(daysOf(held)).toEqual(daysOf(told))
    expect(checkCampaign(slower, held)).toEqual([])
    const [before, after] = [told, held].map(campaign =>
      liftsOf(campaign).find(lift => lift.section === 'C' && lift.firstLayer <= 61 && lift.lastLayer >= 61),
    )
    expect(after!.end - after!.start).toBeCloseTo(before!.end - before!.start + 20, 6)
  })

  it('says the same of each lift as the search does where both come to the same days', () => {
    const changed = edited('B', work => ({ printTimes: work.printTimes.map(time => time * 0.999) }))
    const [held, searched] = [holdDays(changed, told)!, scheduleCampaign(changed)]
    const clocks = (campaign: Campaign) =>
      liftsOf(campaign).map(lift => [lift.id, lift.start, lift.lastLayer])
    const [own, others] = [clocks(held), clocks(searched)].map(all => all.map(each => each.join()))
    const apart = own!.findIndex((clock, i) => clock !== others![i])
    // What a lever brings the whole campaign is the same; what stands before a lift is, up to the first that differs.
    expect(apart).not.toBe(0)
    const same = apart < 0 ? own!.length : apart
    expect(liftsOf(held).slice(0, same)).toEqual(liftsOf(searched).slice(0, same))
  })

  it('prints what no longer fits later on, and a wall raised to its new top', () => {
    const higher = edited('A', () => inventedWork('A', 147, 4))
    const held = holdDays(higher, told)!
    expect(checkCampaign(higher, held)).toEqual([])
    expect(held.finished).toBe(true)
    expect(
      liftsOf(held)
        .filter(lift => lift.section === 'A')
        .at(-1)!.lastLayer,
    ).toBe(147)
    const lower = edited('A', () => inventedWork('A', 97, 4))
    const sunk = holdDays(lower, told)!
    expect(checkCampaign(lower, sunk)).toEqual([])
    expect(
      liftsOf(sunk)
        .filter(lift => lift.section === 'A')
        .at(-1)!.lastLayer,
    ).toBe(97)
  })

  it('is not possible where a section has gone, or walls would not be up in the weather known', () => {
    expect(holdDays({ ...house, work: house.work.slice(1) }, told)).toBeUndefined()
    const known = house.hours.filter(({ start }) => start < told.days[3]!.end)
    expect(holdDays({ ...house, hours: known }, told)).toBeUndefined()
    const unfinished = scheduleCampaign({ ...house, hours: known })
    expect(holdDays(house, unfinished)).toBeUndefined()
  })

  it('keeps every rule whatever is edited, with lift ends, stops, deliveries and the aim as they are', () => {
    const end = { afterLayer: 70, reason: 'lintel' as const, ref: 'D1' }
    const base = inventedInput(
      ['A', 'B', 'C'].map((name, i) => ({
        ...inventedWork(name, 100, 5 + i),
        ...(i === 0 ? { liftEnds: [end], holds: [{ ...end, duration: 900 }] } : {}),
      })),
      60,
      { hours: house.hours, physics: house.physics },
    )
    const standing = scheduleCampaign(base)
    const edit = fc.record({
      section: fc.integer({ min: 0, max: 2 }),
      layers: fc.integer({ min: 80, max: 110 }),
      pace: fc.double({ min: 0.9, max: 1.3, noNaN: true }),
      holds: fc.array(fc.integer({ min: 1, max: 79 }), { maxLength: 3 }),
      end: fc.integer({ min: 60, max: 75 }),
    })
    fc.assert(
      fc.property(edit, ({ section, layers, pace, holds, end: top }) => {
        const work = base.work.map((own, s) => {
          if (s !== section) return own
          const made = inventedWork(own.section, layers, (5 + s) * pace)
          const embeds = holds.map(afterLayer => ({
            afterLayer,
            duration: 300,
            reason: 'embed' as const,
            ref: 'E',
          }))
          const moved = own.liftEnds.map(each => ({ ...each, afterLayer: top }))
          const seats = own.holds.map(each => ({ ...each, afterLayer: top }))
          return { ...made, liftEnds: moved, holds: [...seats, ...embeds] }
        })
        const input = { ...base, work }
        const held = holdDays(input, standing)
        if (!held) return
        expect(checkCampaign(input, held)).toEqual([])
        expect(held.finished).toBe(true)
      }),
      { numRuns: 25 },
    )
  })
})
