import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { initGeometry } from '@dawnlift/core/geometry'
import type { Embed, Job } from '@dawnlift/core/job'
import { newPlanCache, type Plan, type PlanCache, planJob } from '@dawnlift/core/plan'
import { beforeAll, describe, expect, it } from 'vitest'
import { type OpenedJob, openJob } from './index.js'

const file = fileURLToPath(new URL('../../../../fixtures/jobs/garden-wall/job.yaml', import.meta.url))
const garden = readFileSync(file, 'utf8')

beforeAll(() => initGeometry())

function opened(document: string): OpenedJob {
  const read = openJob({ document, read: () => undefined })
  if (!read.ok) throw new Error(read.problems.map(({ say }) => say).join('\n'))
  return read.value
}
async function planned(input: OpenedJob, change: Partial<Job>, cache: PlanCache): Promise<Plan> {
  const plan = await planJob({ ...input, job: { ...input.job, ...change } }, { cache })
  return plan!
}
const brushes = (plan: Plan) => plan.findings.filter(({ check }) => check === 'walls-brush')

describe('a division kept from the plan before', () => {
  it('is made again when a column brings a wall against another one', async () => {
    // 215 mm between the middles of walls of 200 mm; a pier of 260 mm reaches 15 mm into the first.
    const beside = garden.replace(
      '\nopenings:',
      '  - { id: W3, type: garden, path: [[0 m, -215 mm], [900 mm, -215 mm]] }\n\nopenings:',
    )
    const [input, cache] = [opened(beside), newPlanCache()]
    expect(brushes(await planned(input, {}, cache))).toEqual([])
    const pier = { id: 'K1', wall: 'W3', at: 0.45, length: 0.2, thickness: 0.26, cover: 0.03 }
    const [told] = brushes(await planned(input, { columns: [pier] }, cache))
    expect(told?.say).toContain('Walls W1 and W3 lie up to 15 mm inside each other')
  })
  it('is made again when a sleeve takes all that a section has beside an opening', async () => {
    const byHand = `
sections:
  - { id: West, stretches: [{ wall: W1, from: 0 m, to: 1.6 m }, { wall: W2, from: 0 m, to: 1.2 m }] }
  - { id: Window, stretches: [{ wall: W1, from: 1.6 m, to: 2.3 m }] }
  - { id: East, stretches: [{ wall: W1, from: 2.3 m, to: 4.2 m }] }
`
    const [input, cache] = [opened(garden + byHand), newPlanCache()]
    expect((await planned(input, {}, cache)).sections.map(({ id }) => id)).toEqual(['West', 'Window', 'East'])
    const sleeve: Embed = {
      ...input.job.embeds[1]!,
      id: 'E9',
      wall: 'W1',
      at: 1.65,
      bottom: 0.22,
      width: 0.1,
      height: 0.1,
      method: 'gap',
    }
    const after = await planned(input, { embeds: [...input.job.embeds, sleeve] }, cache)
    expect(after.sections.map(({ id }) => id)).not.toContain('Window')
    expect(after.findings.map(({ check }) => check)).toContain('section/nothing-to-print')
  })
})
