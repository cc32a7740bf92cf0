import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { checkCampaign, leastCampaign, moveLift } from '@dawnlift/core/campaign'
import { localTime } from '@dawnlift/core/clock'
import { initGeometry } from '@dawnlift/core/geometry'
import { compareLeverRows, type LeverGround, leverBench, tryJobLevers } from '@dawnlift/core/lever'
import { daysToCome, type Plan, planJob, restOfPlan } from '@dawnlift/core/plan'
import { beforeAll, describe, expect, it } from 'vitest'
import { type OpenedJob, openJob } from './index.js'

const folder = fileURLToPath(new URL('../../../../fixtures/jobs/garden-wall/', import.meta.url))
const read = (name: string) => (existsSync(join(folder, name)) ? readFileSync(join(folder, name)) : undefined)

let opened: OpenedJob
let plain: Plan
let begun: Plan
let ground: LeverGround

/** The garden wall in a heat that closes the afternoons, its first two print days over as planned. */
beforeAll(async () => {
  await initGeometry()
  const document = readFileSync(join(folder, 'job.yaml'), 'utf8')
    .replaceAll('high: 22 °C, low: 11 °C', 'high: 36 °C, low: 24 °C')
    .replace('liftHeight: 400 mm', 'liftHeight: 120 mm\n  mixTemperatureMost: 35 °C')
    .concat('\nbatching: { waterTemperature: 20 °C, siloGain: 5 K }\n')
  const answer = openJob({ document, read })
  if (!answer.ok) throw new Error(answer.problems.map(each => `${each.at} ${each.say}`).join('\n'))
  opened = answer.value
  plain = (await planJob(opened))!
  const over = plain.campaign.days.slice(0, 2)
  const events = over.flatMap(day => [
    { kind: 'shift' as const, at: day.start },
    ...day.lifts.map(({ section, lastLayer, end }) => ({
      kind: 'layer' as const,
      at: end,
      section,
      layer: lastLayer,
    })),
  ])
  begun = (await planJob({ ...opened, log: { events, now: over[1]!.end, told: plain.campaign } }))!
  ground = { ...begun, hours: opened.hours }
})

const now = () => begun.soFar!.now

describe('a job begun', () => {
  it('has days to come alone in what is left of it', () => {
    expect(begun.campaign.days).toHaveLength(plain.campaign.days.length)
    expect(daysToCome(begun).map(day => day.date)).toEqual(plain.campaign.days.slice(2).map(day => day.date))
    expect(daysToCome(plain)).toEqual(plain.campaign.days)
    expect(restOfPlan(begun).standing).toEqual(begun.soFar!.standing)
  })
  it('counts the days over among the fewest it can have', () => {
    // By hand: the first day is over for good; on the second, as on the days after, something may be printed yet.
    const { printDays } = leastCampaign(restOfPlan(begun))
    expect(begun.campaign.bound.days).toBe(1 + printDays)
    expect(begun.campaign.bound.days).toBeLessThanOrEqual(begun.campaign.days.length)
  })
  it('has its levers pulled from what stands, each keeping every rule', () => {
    const bench = leverBench(ground)
    for (const kind of ['earlier-start', 'accelerator'] as const) {
      const pulled = bench.pull([{ kind, setting: kind === 'accelerator' ? 25 : 1800 }])!
      const campaign = bench.schedule(pulled)
      expect(pulled.input.standing).toEqual(begun.soFar!.standing)
      expect(campaign.days.every(day => day.start >= now())).toBe(true)
      expect(checkCampaign(pulled.input, campaign)).toEqual([])
    }
  })
  it('has no lever any more that changes what is printed', () => {
    expect(leverBench(ground).pull([{ kind: 'other-sections', setting: 3 }])).toBeUndefined()
    expect(
      leverBench({ ...plain, hours: opened.hours }).pull([{ kind: 'other-sections', setting: 3 }]),
    ).toBeDefined()
  })
  it('tells days and costs of what is left, and the best pair still found by its bound', async () => {
    const without = [
      'night-start',
      'second-crew',
      'chilled-water',
      'ice',
      'silo-shade',
      'taller-lift',
    ] as const
    const table = (await tryJobLevers(ground, { most: 2, without }))!
    const whole = (await tryJobLevers({ ...plain, hours: opened.hours }, { most: 1, without }))!
    expect(table.asPlanned.printDays).toBe(daysToCome(begun).length)
    expect(table.asPlanned.cost).toBeLessThan(whole.asPlanned.cost)
    const { printDays, cost } = table.asPlanned
    const { machinePerDay } = begun.job.costs
    expect(cost).toBeGreaterThan(printDays * machinePerDay)
    expect(compareLeverRows(table.pairs!.best!, table.rows[0]!)).toBeLessThanOrEqual(0)
  })
  it('has a lift moved among the days to come', () => {
    const lift = daysToCome(begun)[0]!.lifts[0]!
    const later = localTime(lift.start + 86400, begun.job.site.timeZone).date
    const moved = moveLift(restOfPlan(begun), lift.id, later)!
    expect(moved.campaign.days.every(day => day.start >= now())).toBe(true)
    expect(moved.campaign.days.find(day => day.lifts.some(one => one.id === lift.id))!.date).toBe(later)
  })
})
