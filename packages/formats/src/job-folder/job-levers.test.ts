import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { checkCampaign } from '@dawnlift/core/campaign'
import { initGeometry } from '@dawnlift/core/geometry'
import type { Job } from '@dawnlift/core/job'
import {
  compareLeverRows,
  type JobLever,
  type JobLeverRow,
  jobLeverFacts,
  jobLeverKinds,
  jobLeverSettings,
  type LeverGround,
  leverBench,
  pullJobLever,
  sayJobLever,
  tryJobLevers,
} from '@dawnlift/core/lever'
import { yieldStress } from '@dawnlift/core/mix'
import { planJob } from '@dawnlift/core/plan'
import { nozzleTemperature, supplyOf } from '@dawnlift/core/weather'
import { beforeAll, describe, expect, it } from 'vitest'
import { leversOf, type OpenedJob, openJob } from './index.js'

const folder = fileURLToPath(new URL('../../../../fixtures/jobs/garden-wall/', import.meta.url))
const read = (name: string) => (existsSync(join(folder, name)) ? readFileSync(join(folder, name)) : undefined)

let opened: OpenedJob
let ground: LeverGround

/** The garden wall in a heat that closes the afternoons: there is something to gain. */
beforeAll(async () => {
  await initGeometry()
  const document = readFileSync(join(folder, 'job.yaml'), 'utf8')
    .replaceAll('high: 22 °C, low: 11 °C', 'high: 36 °C, low: 24 °C')
    .replace('liftHeight: 400 mm', 'liftHeight: 120 mm\n  mixTemperatureMost: 35 °C')
    .concat('\nbatching: { waterTemperature: 20 °C, siloGain: 5 K }\n')
  const answer = openJob({ document, read })
  if (!answer.ok) throw new Error(answer.problems.map(each => `${each.at} ${each.say}`).join('\n'))
  opened = answer.value
  const plan = (await planJob(opened))!
  ground = { ...plan, hours: opened.hours }
})

const settings = (kind: JobLever['kind']) =>
  jobLeverSettings({ job: ground.job, hours: ground.hours, sections: ground.sections.length }, kind)

describe('a lever of the whole job', () => {
  it('gives a campaign that keeps every rule of the changed job', () => {
    const bench = leverBench(ground)
    for (const lever of jobLeverKinds.flatMap(settings)) {
      const pulled = bench.pull([lever])
      if (!pulled) continue
      expect(checkCampaign(pulled.input, bench.schedule(pulled)), sayJobLever(lever, 'metric')).toEqual([])
    }
  })
  // Closed form: the dosed mix at an age is the plain mix at an age so many times as great, whatever the curve.
  it.each([
    { kind: 'linear', start: 300, rate: 0.4 },
    { kind: 'bilinear', start: 300, earlyRate: 1.5, kneeAge: 900, lateRate: 0.3 },
    { kind: 'exponential', start: 300, rate: 0.2, time: 3000 },
  ] as const)('of an accelerator runs a $kind curve through faster', growth => {
    const { mix } = ground.job
    const job = { ...ground.job, mix: { ...mix, fitted: { ...mix.fitted, yield: growth } } }
    const dosed = pullJobLever({ job }, { kind: 'accelerator', setting: 50 })!.job.mix
    for (const age of [0, 600, 1800, 5400])
      expect(yieldStress(dosed.fitted.yield, age)).toBeCloseTo(yieldStress(growth, 1.5 * age), 8)
    expect(dosed.openTime).toBeCloseTo(mix.openTime / 1.5, 8)
  })
  // Hand: water at 8 °C in place of 20 °C takes r·12/(0.22 + r) K off a batch without hose, r the water ratio.
  it('of chilled water takes off the mix what the batch says', () => {
    const { job } = ground
    const cold = pullJobLever({ job }, { kind: 'chilled-water', setting: 8 })!.job
    const still = { ...supplyOf(cold), batching: { ...cold.batching, hoseLength: 0 } }
    const hour = { dry: 30, air: 30, wind: 1, cylinderSun: 0 }
    const r = job.mix.waterRatio
    const drop =
      nozzleTemperature(still, hour, 20) - nozzleTemperature(still, hour, cold.batching.chiller!.temperature)
    expect(drop).toBeCloseTo((12 * r) / (0.22 + r), 9)
  })
  it('does not apply where it would change nothing or cannot be', () => {
    const { job } = ground
    expect(pullJobLever({ job }, { kind: 'chilled-water', setting: 20 })).toBeUndefined()
    expect(pullJobLever({ job }, { kind: 'earlier-start', setting: 7 * 3600 })).toBeUndefined()
    const fast = job.machine.printSpeedMost * 1000 + 1
    expect(pullJobLever({ job }, { kind: 'faster-nozzle', setting: fast })).toBeUndefined()
    // Beads of 110 mm leave no room between the wythes of a 200 mm wall.
    expect(leverBench(ground).pull([{ kind: 'wider-bead', setting: 110 }])).toBeUndefined()
    // Cut at one jamb of the hatch and where the spur meets. A fourth section would be sill and head of the hatch alone.
    expect(leverBench(ground).pull([{ kind: 'other-sections', setting: 3 }])).toBeDefined()
    expect(leverBench(ground).pull([{ kind: 'other-sections', setting: 4 }])).toBeUndefined()
  })
  // Hand: an upright cylinder takes beam·cos(altitude)/π + diffuse/2 + global/10; under a roof diffuse/2 + diffuse/10. With the sun
  // at 60° and beam = 6 × diffuse: global = 6.196, so 0.6/(6·0.5/π + 0.5 + 0.6196) = 29 %; on dull days nearly all stays.
  it('of shade leaves more of the silo’s gain the duller the sky', () => {
    const sky = (beam: number, diffuse: number) => ({
      ...ground,
      sections: 1,
      hours: ground.hours.map(hour => ({
        ...hour,
        beam: hour.global > 0 ? beam : 0,
        diffuse: hour.global > 0 ? diffuse : 0,
        global: hour.global > 0 ? 0.8 * beam + diffuse : 0,
      })),
    })
    const left = (scene: ReturnType<typeof sky>) => jobLeverSettings(scene, 'silo-shade')[0]!.setting
    expect(left(sky(0, 200))).toBe(100)
    expect(left(sky(600, 100))).toBeGreaterThan(20)
    expect(left(sky(600, 100))).toBeLessThan(40)
  })
  it('of shade scales a gain the job names, else shades the silo itself, once', () => {
    const { job } = ground
    const { siloGain, ...open } = job.batching
    expect(siloGain).toBe(5)
    const lever = { kind: 'silo-shade', setting: 40 } as const
    expect(pullJobLever({ job }, lever)!.job.batching.siloGain).toBeCloseTo(2, 9)
    const unnamed = { ...job, batching: open }
    const shaded = pullJobLever({ job: unnamed }, lever)!.job
    expect(shaded.batching).toEqual({ ...open, siloShade: true })
    expect(pullJobLever({ job: shaded }, lever)).toBeUndefined()
    const offered = (of: Job) => jobLeverSettings({ ...ground, job: of, sections: 1 }, 'silo-shade').length
    expect([offered(unnamed), offered(shaded)]).toEqual([1, 0])
  })
  it('says what it takes for granted, with the source or that there is none', () => {
    for (const kind of jobLeverKinds) expect(jobLeverFacts[kind].assumes.length).toBeGreaterThan(20)
    expect(jobLeverFacts.accelerator.assumes).toContain('no source')
  })
})

describe('a table of levers under way', () => {
  it('tells each row once as soon as it is planned, the plan as it stands first', async () => {
    const heard: JobLeverRow[] = []
    const without = jobLeverKinds.filter(kind => kind !== 'taller-lift' && kind !== 'chilled-water')
    const table = (await tryJobLevers(ground, { most: 2, without, hear: row => heard.push(row) }))!
    expect(heard[0]).toEqual(table.asPlanned)
    expect(heard.slice(1).sort(compareLeverRows)).toEqual(table.rows)
    expect(table.rows.length).toBeGreaterThan(1)
  })
})

describe('pairs of levers', () => {
  it('are searched by their bound with the same end as when all are planned', async () => {
    const without = jobLeverKinds.filter(
      kind =>
        !['earlier-start', 'chilled-water', 'taller-lift', 'faster-nozzle', 'longer-shift'].includes(kind),
    )
    const table = (await tryJobLevers(ground, { most: 2, without }))!
    const bench = leverBench(ground)
    const best = new Map<string, JobLever>()
    for (const { levers } of table.rows) if (!best.has(levers[0]!.kind)) best.set(levers[0]!.kind, levers[0]!)
    const kinds = [...best.values()]
    const all = kinds.flatMap((a, i) => kinds.slice(i + 1).flatMap(b => bench.pull([a, b]) ?? []))
    const finishes = all.map(pulled => bench.schedule(pulled).days.at(-1)!.date).sort()
    expect(table.pairs!.possible).toBe(all.length)
    expect(table.pairs!.planned).toBeLessThanOrEqual(all.length)
    expect(table.pairs!.best!.finishDate).toBe(finishes[0])
    expect(compareLeverRows(table.pairs!.best!, table.rows[0]!)).toBeLessThanOrEqual(0)
  })
  it('cost what the lead says they cost', async () => {
    const without = jobLeverKinds.filter(kind => kind !== 'chilled-water')
    const plain = (await tryJobLevers(ground, { most: 1, without }))!.rows[0]!
    const prices = { 'chilled-water': { once: 400, perPrintDay: 90 } }
    const paid = (await tryJobLevers(ground, { most: 1, without, prices }))!.rows[0]!
    expect(paid.cost - plain.cost).toBeCloseTo(400 + 90 * plain.printDays, 6)
    expect([plain.unpriced, paid.unpriced]).toEqual([['the chiller'], []])
  })
  it('end when nobody waits any more', async () =>
    expect(await tryJobLevers(ground, { progress: (_, share) => share < 0.5 })).toBeUndefined())
})

describe('how sure the levers are', () => {
  it('is told of weather that is the same for all: pulled twice, a lever is as sure', async () => {
    const standing = { opened, plan: ground, read }
    const wishes = {
      replays: 6,
      rates: { breakdownsPerHour: 0.05, repairHours: 9, lateChance: 0, lateHours: 0 },
    }
    const without = jobLeverKinds.filter(kind => kind !== 'other-sections' && kind !== 'longer-shift')
    const table = (await leversOf(standing, wishes, { most: 1, without }))!
    const longer = table.rows.find(row => row.levers[0]!.kind === 'longer-shift')!
    // A shift that nothing fills is the plan as it stands: the same replays to the day.
    expect(longer.printDays).toBe(table.asPlanned.printDays)
    expect(longer.sure).toEqual(table.asPlanned.sure)
    expect(table.replays).toBe(6)
  })
})
