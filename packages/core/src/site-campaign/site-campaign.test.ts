import { describe, expect, it } from 'vitest'
import { inventedHours, inventedInput, inventedWork, summer } from '../campaign/invented-site.js'
import { checkSiteCampaign, oneAfterOther, type SiteInput, shareSite, siteBound } from './index.js'

const everyDay = [1, 2, 3, 4, 5, 6, 7]

/** Towers of one section each: every lift of a metre takes 50 layers, and has to cure overnight. */
function towers(lifts: readonly number[], minutes: number, move: number, change = {}): SiteInput {
  const buildings = lifts.map((count, i) => {
    const input = inventedInput([inventedWork('A', 50 * count, minutes)], 60, change)
    return { name: `T${i + 1}`, input: { ...input, crew: { ...input.crew, workDays: everyDay } } }
  })
  return { buildings, move }
}

describe('a machine and a crew shared among buildings', () => {
  // Line of balance of two units of six lifts, a lift 200 min, set-up and wash-out 30 min each, a move 60 min. One after the other: one lift a
  // day, 12 days. Shared: 2 · (200 + 60) + 60 = 580 min fit into the shift of 600 min: both every day, 6 days.
  it('prints one while the other cures: twice as fast where a day holds a lift of each', async () => {
    const site = towers([6, 6], 4, 3600)
    const { shared, oneAfterOther: plain, daysGained, bound } = (await shareSite(site))!
    expect([shared.finishDate, plain.finishDate]).toEqual(['2026-06-06', '2026-06-12'])
    expect(daysGained).toBe(6)
    expect(bound).toBe('2026-06-06')
    expect(checkSiteCampaign(site, shared)).toEqual([])
    expect(checkSiteCampaign(site, plain)).toEqual([])
  })
  // Hand: with a move of 90 min the two visits take 610 min, ten more than the shift. A second visit of 590 min then prints 47 layers
  // of 50; the towers need whole lifts, so a day is short somewhere and the finish lies between six and twelve days.
  it('gains less when the move no longer fits into the shift', async () => {
    const site = towers([6, 6], 4, 5400)
    const { shared, daysGained } = (await shareSite(site))!
    expect(shared.finishDate > '2026-06-06').toBe(true)
    expect(daysGained).toBeGreaterThan(0)
    expect(daysGained).toBeLessThan(6)
    expect(checkSiteCampaign(site, shared)).toEqual([])
  })
  // Hand: a lift fills the day (50 · 10 min + 60 min of 600): nothing can be shared, 3 + 3 days.
  it('gains nothing where a lift fills the day', async () => {
    const site = towers([3, 3], 10, 3600)
    const { shared, oneAfterOther: plain, daysGained } = (await shareSite(site))!
    expect(daysGained).toBe(0)
    expect(shared).toEqual(plain)
    // The move takes an hour of a shift that a lift fills: the second tower gets 44 layers on that day and a fourth day.
    expect(plain.finishDate >= '2026-06-06').toBe(true)
  })
  it('goes on with the longer building once the shorter is up', async () => {
    const site = towers([2, 5], 4, 3600)
    const { shared, oneAfterOther: plain } = (await shareSite(site))!
    expect([shared.finishDate, plain.finishDate]).toEqual(['2026-06-05', '2026-06-07'])
    expect(shared.byBuilding.map(each => each.campaign.days.length)).toEqual([2, 5])
    expect(checkSiteCampaign(site, shared)).toEqual([])
  })
  it('keeps every rule of houses of several sections through a hot summer, and never beats its bound', async () => {
    for (const move of [1800, 7200]) {
      const houses = [3, 4].map((count, i) => ({
        name: `H${i + 1}`,
        input: inventedInput(
          Array.from({ length: count }, (_, s) => inventedWork(`S${s}`, 110, 3 + 0.5 * s + i)),
          50,
          { hours: inventedHours('2026-06-01', 50, summer) },
        ),
      }))
      const site = { buildings: houses, move }
      const { shared, oneAfterOther: plain, daysGained, bound } = (await shareSite(site))!
      expect(checkSiteCampaign(site, shared)).toEqual([])
      expect(checkSiteCampaign(site, plain)).toEqual([])
      expect(shared.finished).toBe(true)
      expect(shared.finishDate >= bound!).toBe(true)
      expect(daysGained).toBeGreaterThanOrEqual(0)
    }
  })
  // Hand: the second slab is ready on the fifth day, when the first tower has two of its six lifts left: two shared days, four more alone.
  it('waits for a slab that is ready later', async () => {
    const { buildings, move } = towers([6, 6], 4, 3600)
    const late = { ...buildings[1]!, input: { ...buildings[1]!.input, calendar: { firstDay: '2026-06-05' } } }
    const site = { buildings: [buildings[0]!, late], move }
    const { shared, oneAfterOther: plain } = (await shareSite(site))!
    expect([shared.finishDate, plain.finishDate]).toEqual(['2026-06-10', '2026-06-12'])
    expect(checkSiteCampaign(site, shared)).toEqual([])
    expect(checkSiteCampaign(site, plain)).toEqual([])
  })
  it('is the same for the same site', async () => {
    const site = towers([3, 4], 4, 3600)
    expect(await shareSite(site)).toEqual(await shareSite(site))
  })
  it('stops when nobody waits any more', async () =>
    expect(await shareSite(towers([6, 6], 4, 3600), { progress: share => share < 0.2 })).toBeUndefined())
})

describe('the checker of a site', () => {
  const site = towers([2, 2], 4, 3600)
  const plain = oneAfterOther(site)
  const checks = (change: (visit: (typeof plain.visits)[number], i: number) => typeof visit) =>
    checkSiteCampaign(site, { ...plain, visits: plain.visits.map(change) }).map(finding => finding.check)
  it('finds nothing in a campaign that keeps its rules', () =>
    expect(checkSiteCampaign(site, plain)).toEqual([]))
  it('finds a move that is not told', () => {
    const stay = checks((visit, i) => (i === 2 ? (({ moveStart: _, ...rest }) => rest)(visit) : visit))
    expect(stay).toEqual(['site/move'])
  })
  it('finds a machine in two places', () => {
    const early = plain.visits[1]!.start
    expect(
      checks((visit, i) => (i === 2 ? { ...visit, start: early, moveStart: early - 3600 } : visit)),
    ).toContain('site/move')
  })
  it('finds a shift made too long by its move', () => {
    // The crew's day begins at five; a wash-out half past fifteen ends a shift of ten hours and a half.
    const five = Date.parse(`${plain.visits[2]!.date}T05:00:00Z`) / 1000
    const long = { moveStart: five, end: five + 10.5 * 3600 }
    expect(checks((visit, i) => (i === 2 ? { ...visit, ...long } : visit))).toContain('site/shift')
  })
  it('finds a lift that only one of the tellings has', () =>
    expect(checks((visit, i) => (i === 0 ? { ...visit, lifts: [] } : visit))).toContain('site/told'))
})

describe('siteBound', () => {
  // Hand: 7 lifts of 200 min; a day holds 540 min of printing with two change-overs of 30 min: two whole lifts and more, but three towers of
  // 3, 2, 2 lifts need three days whatever is shared.
  it('is no later than the tallest building alone allows', () =>
    expect(siteBound(towers([3, 2, 2], 4, 3600))).toBe('2026-06-03'))
})
