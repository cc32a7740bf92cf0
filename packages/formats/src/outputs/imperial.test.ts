import { existsSync, readFileSync } from 'node:fs'
import { explainLift, sayGain } from '@dawnlift/core/campaign'
import { initGeometry } from '@dawnlift/core/geometry'
import { type Plan, planJob } from '@dawnlift/core/plan'
import { beforeAll, describe, expect, it } from 'vitest'
import { foreignUnits } from '../../../../tests/foreign-units.js'
import { openJob } from '../job-folder/index.js'
import { dayData } from '../sheets/day-sheet.js'
import type { SheetOptions as Options } from '../sheets/index.js'
import { permitData } from '../sheets/permit-package.js'
import { tradeData } from '../sheets/trade-sheet.js'
import { outputsOf } from './index.js'

beforeAll(() => initGeometry())

async function planned(name: string, change: (job: Plan['job']) => Plan['job']): Promise<Plan> {
  const folder = new URL(`../../../../examples/${name}/`, import.meta.url)
  const read = (file: string) => {
    const place = new URL(file, folder)
    return existsSync(place) ? readFileSync(place) : undefined
  }
  const opened = openJob({ document: readFileSync(new URL('job.yaml', folder), 'utf8'), read })
  if (!opened.ok) throw new Error(opened.problems[0]?.say)
  return (await planJob({ ...opened.value, job: change(opened.value.job) }))!
}

/** A machine, a hose and a mix that everything speaks against. */
const troubled = (job: Plan['job']): Plan['job'] => ({
  ...job,
  machine: {
    ...job.machine,
    reach: { x: [0, 5], y: [0, 5], z: [0, 2] },
    pump: { ...job.machine.pump, flowMost: 3 / 60000, flowLeast: 2.9 / 60000, pressureMost: 2e5 },
  },
  mix: { ...job.mix, aggregate: 0.03, openTime: 60, testedTemperatures: [40, 45] },
  batching: { ...job.batching, hoseDiameter: 0.03 },
})

/** Quotation marks of drawings within are not the end of a JSON string. */
const textOf = (things: unknown): string => JSON.stringify(things).replaceAll('\\"', '″')

const wordsOf = (plan: Plan): Readonly<Record<string, unknown>> => {
  const { job, campaign, findings, calls, cure, pours, snaps } = plan
  const lifts = campaign.days.flatMap(day => day.lifts)
  return {
    findings: findings.map(({ at, say }) => [at, say]),
    calls,
    cure: cure.map(each => [each.steps, each.findings]),
    pours,
    snaps,
    explained: lifts.map(lift => explainLift(lift, job.units, job.site.timeZone)),
  }
}

const sheetsOf = (plan: Plan): Readonly<Record<string, unknown>> => {
  const options = {
    date: '2026-05-01 12:00',
    sayGain: gain => sayGain(gain, plan.job.units),
  } satisfies Options
  const trades = [...new Set(plan.calls.map(call => call.trade))]
  return {
    days: plan.campaign.days.map(day => dayData(plan, day.date, options)),
    trades: trades.map(trade => tradeData(plan, trade, options)),
    permit: permitData(plan, options),
  }
}

/** What is told in units of the other house, by where. */
const strangers = (told: Readonly<Record<string, unknown>>, house: 'metric' | 'imperial') =>
  Object.entries(told).flatMap(([what, things]) =>
    foreignUnits(textOf(things), house).map(each => `${what}: ${each}`),
  )

describe.each([
  ['tern-cottage', 'imperial'],
  ['torrenubia', 'metric'],
] as const)('%s, told in %s units alone,', (name, house) => {
  let plan: Plan
  beforeAll(async () => {
    plan = await planned(name, job => job)
  }, 60_000)

  it('is so from the first finding to the last step of the cure', () =>
    expect(strangers(wordsOf(plan), house)).toEqual([]))
  it('is so on every sheet', () => expect(strangers(sheetsOf(plan), house)).toEqual([]))
  it('is so in drawings, tables, calendars and machine files', async () => {
    const at = plan.campaign.days[0]!.start - 86400
    const files = outputsOf(plan, { at, sequence: 1 })
    for (const ending of ['.svg', '.csv', '.ics', '.ngc']) {
      const some = files.filter(file => file.name.endsWith(ending))
      expect(some.length).toBeGreaterThan(2)
      for (const file of some) {
        const text = String(await file.make())
        expect({ file: file.name, foreign: foreignUnits(text, house) }).toEqual({
          file: file.name,
          foreign: [],
        })
      }
    }
  }, 60_000)
  it('is so in trouble, too', async () => {
    const worse = await planned(name, troubled)
    const checks = worse.findings.map(({ check }) => check)
    expect(checks).toEqual(
      expect.arrayContaining(['reach', 'pump-flow-most', 'travel-height', 'hose-aggregate']),
    )
    expect(strangers(wordsOf(worse), house)).toEqual([])
  }, 60_000)
})

describe('the search for foreign units', () => {
  it.each([
    ['imperial', 'a 40 mm bead at 6 L/min, 20 °C', ['40 mm', '6 L/min', '20 °C']],
    ['imperial', 'length (m), 3.5 m³.', ['(m', '5 m³']],
    ['imperial', `6' 3" at 70 °F, 5 min, 3 h, 10 mph, 2 men`, []],
    ['metric', `6' 3" of wall, 70 °F`, [`6' 3`, '70 °F']],
    ['metric', '40 mm at 20 °C, 3 in the wall, lift 2', []],
  ] as const)('in an %s job finds what is foreign in “%s”', (house, text, found) =>
    expect([...foreignUnits(text, house)].sort()).toEqual([...found].sort()),
  )
})
