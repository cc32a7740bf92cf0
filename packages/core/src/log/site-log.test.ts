import { describe, expect, it } from 'vitest'
import { checkCampaign, scheduleCampaign } from '../campaign/index.js'
import { inventedHouse } from '../campaign/invented-site.js'
import { localTime } from '../clock/index.js'
import { builtLifts } from './built-lifts.js'
import { checkLog } from './check-log.js'
import { coldJoints } from './cold-joints.js'
import { lostTime } from './lost-time.js'
import { resumeCampaign, standingOf } from './resume-campaign.js'
import type { SiteEvent } from './site-event.js'

const house = inventedHouse()
const told = scheduleCampaign(house)
const zone = house.timeZone
const sections = house.work.map(work => ({ section: work.section, layers: work.printTimes.length }))
const first = told.days[0]!.lifts[0]!

/** The top layer of every lift up to a day, as the crew would write it down in the evening. */
const asTold = (days: number): readonly SiteEvent[] =>
  told.days
    .slice(0, days)
    .flatMap(day => day.lifts)
    .map(lift => ({ kind: 'layer', at: lift.end, section: lift.section, layer: lift.lastLayer }))

const layer = (at: number, count: number): SiteEvent => ({
  kind: 'layer',
  at,
  section: first.section,
  layer: count,
})

describe('a site log', () => {
  it('that says what was told changes nothing', () => {
    const events = asTold(3)
    const now = told.days[2]!.end
    const resumed = resumeCampaign(house, { events, told, now })
    expect(resumed.changes).toEqual([])
    expect(resumed.kept).toBe(true)
    const days = resumed.campaign.days
    expect(days.map(day => day.date)).toEqual(told.days.map(day => day.date))
    expect(days.map(day => day.number)).toEqual(told.days.map((_, i) => i + 1))
    expect(days.flatMap(day => day.lifts.map(lift => lift.id))).toEqual(
      told.days.flatMap(day => day.lifts.map(lift => lift.id)),
    )
  })

  it('that ends short moves the rest, and every rule still holds', () => {
    const events = asTold(3)
    const last = events.at(-1)!
    const short = { ...last, layer: (last as { layer: number }).layer - 9 } as SiteEvent
    const { rest, campaign, changes, built } = resumeCampaign(house, {
      events: [...events.slice(0, -1), short],
      told,
      now: told.days[2]!.end,
    })
    expect(checkCampaign(rest.input, rest.campaign)).toEqual([])
    expect(campaign.finished).toBe(true)
    expect(changes.length).toBeGreaterThan(0)
    expect(built.at(-1)!.binding.kind).toBe('broken-off')
  })

  it('counts every layer of the house once, over days gone and days to come', () => {
    const { campaign } = resumeCampaign(house, { events: asTold(2), told, now: told.days[1]!.end })
    for (const { section, layers } of sections) {
      const lifts = campaign.days.flatMap(day => day.lifts).filter(lift => lift.section === section)
      const printed = lifts.flatMap(lift => lift.layerEnds.map((_, i) => lift.firstLayer + i))
      expect(printed).toEqual(Array.from({ length: layers }, (_, i) => i + 1))
    }
  })

  it('makes one day of what is over and what still comes on it', () => {
    const day = told.days.find(each => each.lifts.length > 1) ?? told.days[0]!
    const before = asTold(day.number - 1)
    const lift = day.lifts[0]!
    const now = lift.end + 60
    const events = [
      ...before,
      { kind: 'layer' as const, at: lift.end, section: lift.section, layer: lift.lastLayer },
    ]
    const { campaign } = resumeCampaign(house, { events, told, now })
    expect(campaign.days.filter(each => each.date === localTime(now, zone).date)).toHaveLength(1)
  })

  it('calls no day idle on which something was printed', () => {
    const now = first.end + 8 * 3600
    const { campaign, rest } = resumeCampaign(house, { events: [layer(first.end, 2)], told, now })
    const date = localTime(first.end, zone).date
    expect(rest.campaign.idleDays.map(day => day.date)).toContain(date)
    expect(campaign.idleDays.map(day => day.date)).not.toContain(date)
  })

  it('takes what was printed out of the silo', () => {
    const stocked = { ...house, deliveries: { stock: 100, arrivals: [] } }
    const { rest, built } = resumeCampaign(stocked, { events: asTold(2), told, now: told.days[1]!.end })
    const used = built.reduce((sum, lift) => sum + lift.volume, 0)
    expect(used).toBeGreaterThan(0)
    expect(rest.input.deliveries?.stock).toBeCloseTo(100 - used, 9)
  })

  it('takes a shift that began early as begun', () => {
    const events: SiteEvent[] = [{ kind: 'shift', at: told.days[0]!.start - 1800 }]
    const { rest } = resumeCampaign(house, { events, told, now: told.days[0]!.start })
    expect(rest.input.shiftBegan).toBe(told.days[0]!.start - 1800)
  })
})

describe('lifts that stand', () => {
  it('spread layers not logged by their print time', () => {
    // Hand: layers of equal time between two logged moments end at equal steps.
    const at = first.end
    const lifts = builtLifts(house, [layer(at, 2), layer(at + 1200, 6)], told)
    const ends = lifts[0]!.layerEnds.slice(1)
    expect(ends.map(end => end - at)).toEqual([0, 300, 600, 900, 1200])
  })

  it('begin one layer time before the first layer is down', () => {
    const lift = builtLifts(house, [layer(first.end, 1)], told)[0]!
    const time = house.work.find(work => work.section === first.section)!.printTimes[0]!
    expect(lift.end - lift.start).toBe(time)
  })

  it('of one section on two dates are two lifts, numbered on', () => {
    const lifts = builtLifts(house, [layer(first.end, 3), layer(first.end + 86400, 8)], told)
    expect(lifts.map(lift => [lift.id, lift.firstLayer, lift.lastLayer])).toEqual([
      [`${first.section}1`, 1, 3],
      [`${first.section}2`, 4, 8],
    ])
  })

  it('lose what was taken down', () => {
    const down: SiteEvent = { kind: 'taken-down', at: first.end + 90000, section: first.section, layer: 3 }
    const lifts = builtLifts(house, [layer(first.end, 5), layer(first.end + 86400, 8), down], told)
    expect(standingOf(lifts)).toEqual([
      { section: first.section, layers: 3, lastEnd: expect.any(Number), lifts: 1 },
    ])
  })

  it('are the same in whatever order the lines were written', () => {
    const events = [layer(first.end, 2), layer(first.end + 1200, 6), layer(first.end + 86400, 9)]
    expect(builtLifts(house, [...events].reverse(), told)).toEqual(builtLifts(house, events, told))
  })
})

describe('a layer that lay bare too long', () => {
  const longest = house.physics.longestRest(first.end).seconds
  const joints = (bare: number) => {
    const events = [layer(first.end, 2), layer(first.end + bare, 3)]
    return coldJoints(house, events, builtLifts(house, events, told))
  }
  it('is a cold joint', () => {
    expect(joints(longest + 60)).toMatchObject([
      { check: 'cold-joint', demand: longest + 60, capacity: longest, verdict: 'warn' },
    ])
  })
  it('is none when it was covered just in time', () => expect(joints(longest)).toEqual([]))
  it('is not guessed between layers that nobody logged', () => {
    const events = [layer(first.end, 2), layer(first.end + 3 * longest, 4)]
    expect(coldJoints(house, events, builtLifts(house, events, told))).toEqual([])
  })
})

describe('time lost', () => {
  it('is summed by cause, the costliest first, a stop that lasts counted until now', () => {
    const stop = (at: number, cause: string, until?: number): SiteEvent => ({
      kind: 'stop',
      at,
      cause,
      ...(until === undefined ? {} : { until }),
    })
    const events = [stop(0, 'Pump', 600), stop(1000, 'hose', 4000), stop(5000, 'pump ')]
    expect(lostTime(events, 5900)).toEqual([
      { cause: 'hose', times: 1, seconds: 3000 },
      { cause: 'pump', times: 2, seconds: 1500 },
    ])
  })
  it('of a stop nobody ended is over with the next layer', () =>
    expect(
      lostTime([{ kind: 'stop', at: 1000, cause: 'rain' }, layer(1600, 5), layer(4000, 6)], 5000),
    ).toEqual([{ cause: 'rain', times: 1, seconds: 600 }]))
})

describe('what cannot have happened', () => {
  const job = { sections, hours: house.hours, timeZone: zone }
  const day = house.hours[0]!.start + 86400
  const codes = (...events: SiteEvent[]) => checkLog(events, job).map(problem => problem.code)
  const top = sections.find(one => one.section === first.section)!.layers
  it('a section that is not there', () =>
    expect(codes({ kind: 'layer', at: day, section: 'ZZ', layer: 1 })).toEqual(['log/no-section']))
  it('a layer over the top', () => expect(codes(layer(day, top + 1))).toEqual(['log/too-high']))
  it('a wall that shrinks by itself', () =>
    expect(codes(layer(day, 5), layer(day + 60, 4))).toEqual(['log/shrinks']))
  it('taking down more than stands', () =>
    expect(
      codes(layer(day, 5), { kind: 'taken-down', at: day + 60, section: first.section, layer: 5 }),
    ).toEqual(['log/nothing-taken']))
  it('a stop that ends before it begins', () =>
    expect(codes({ kind: 'stop', at: day + 60, until: day, cause: 'pump' })).toEqual(['log/stop-backwards']))
  it('anything before the first hour of weather, or after the last', () => {
    expect(codes(layer(house.hours[0]!.start - 1, 5))).toEqual(['log/outside'])
    expect(codes(layer(house.hours.at(-1)!.start + 3600, 5))).toEqual(['log/outside'])
  })
  it('all of it at once', () => expect(codes(layer(day, top + 1), layer(day + 60, top + 2))).toHaveLength(2))
})
