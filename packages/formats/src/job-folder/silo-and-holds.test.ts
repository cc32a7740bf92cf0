import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { initGeometry } from '@dawnlift/core/geometry'
import { type Plan, planJob } from '@dawnlift/core/plan'
import { beforeAll, describe, expect, it } from 'vitest'
import { writeCalendar } from '../calendar/index.js'
import { planReport, planReportSchema } from '../plan-report/index.js'
import { callsTable } from '../tables/index.js'
import { openJob } from './open-job.js'

const file = fileURLToPath(new URL('../../../../fixtures/jobs/garden-wall/job.yaml', import.meta.url))
const wall = readFileSync(file, 'utf8')

beforeAll(() => initGeometry())

async function planned(more: string): Promise<Plan> {
  const opened = openJob({ document: `${wall}\n${more}\n`, read: () => undefined })
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems))
  const plan = await planJob(opened.value)
  return plan!
}
const firstLift = (plan: Plan) => plan.campaign.days[0]!.lifts[0]!

describe('a silo', () => {
  it('that holds little ends the lift where it runs empty, and names itself', async () => {
    const lift = firstLift(await planned('batching: { silo: { stock: 300 kg } }'))
    expect(lift.binding.kind).toBe('delivery')
    // By hand: what was printed is no more than the stock makes, and one layer more would be.
    const plan = await planned('')
    const { density, waterRatio } = plan.job.mix
    const makes = (300 * (1 + waterRatio)) / density
    expect(lift.volume).toBeLessThanOrEqual(makes)
    expect(lift.volume * (1 + 1 / lift.layerEnds.length)).toBeGreaterThan(makes)
  })
  it('filled at noon lets the next lift go on', async () => {
    const loads = 'loads: [{ at: 2026-06-01 12:00, mass: 25 t }]'
    const plan = await planned(`batching: { silo: { stock: 300 kg, ${loads} } }`)
    expect(plan.campaign.finished).toBe(true)
    expect((await planned('batching: { silo: { stock: 300 kg } }')).campaign.finished).toBe(false)
  })
})

describe('an inspection', () => {
  it('holds the nozzle on the layer below its height for as long as it takes', async () => {
    const plan = await planned(
      'inspections: [{ id: I1, wall: W1, above: 110 mm, takes: 10 min, what: bars of the sill }]',
    )
    const lift = firstLift(plan)
    expect(lift.holds).toContainEqual({ afterLayer: 5, duration: 600, reason: 'inspection', ref: 'I1' })
    const plain = firstLift(await planned(''))
    const waited = (one: typeof lift) => one.layerEnds[5]! - one.layerEnds[4]!
    expect(waited(lift) - waited(plain)).toBeCloseTo(600, 0)
  })
  it('calls the inspector in table and calendar, with the notice to give', async () => {
    const plan = await planned(
      'inspections: [{ id: I1, wall: W1, above: 110 mm, takes: 10 min, what: bars of the sill }]',
    )
    const call = plan.calls.find(each => each.trade === 'inspector')!
    expect([call.id, call.until - call.from, call.from - call.tellBy!]).toEqual(['I1', 600, 86400])
    const options = { sequence: 1, stamp: 0, trade: 'inspector' as const }
    const entry = writeCalendar(plan.job, plan.calls, options).replaceAll('\r\n ', '')
    expect(entry.match(/BEGIN:VEVENT/g)).toHaveLength(1)
    expect(entry).toMatch(/Give notice by 2026-05-31 .*bars of the sill/)
    const row = callsTable(plan).rows.find(each => each.includes('inspector'))!
    expect(row.at(-1)).toMatch(/^2026-05-31/)
    const report = planReportSchema.parse(planReport(plan))
    expect(report.calls.map(each => each.tellBy?.slice(0, 10))).toContain('2026-05-31')
  })
})
