import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { initGeometry } from '@dawnlift/core/geometry'
import { leverBench } from '@dawnlift/core/lever'
import { planJob } from '@dawnlift/core/plan'
import { beforeAll, describe, expect, it } from 'vitest'
import { openJob } from './index.js'

const folder = fileURLToPath(new URL('../../../../fixtures/jobs/garden-wall/', import.meta.url))
const read = (name: string) => (existsSync(join(folder, name)) ? readFileSync(join(folder, name)) : undefined)
const garden = readFileSync(join(folder, 'job.yaml'), 'utf8')

beforeAll(() => initGeometry())

/** The window F1 of the garden wall stands from 1.7 to 2.3 m along W1. */
const byHand = `
sections:
  - { id: West, stretches: [{ wall: W1, from: 0 m, to: 1.7 m }, { wall: W2, from: 0 m, to: 1.2 m }] }
  - { id: Window, stretches: [{ wall: W1, from: 1.7 m, to: 2.3 m }] }
  - { id: East, stretches: [{ wall: W1, from: 2.3 m, to: 4.2 m }] }
`

describe('sections set by hand', () => {
  it('of nothing but sill and head are a problem of the job', () => {
    const opened = openJob({ document: garden + byHand, read })
    expect(opened.ok ? [] : opened.problems.map(({ code, at }) => [code, at])).toEqual([
      ['section/nothing-to-print', 'sections[1]'],
    ])
  })
  it('may be a sill panel under an opening up to the top of the wall, which ends at the sill', async () => {
    const document = (garden + byHand).replace('head: 400 mm, lintel: {}', 'head: 600 mm')
    const opened = openJob({ document, read })
    if (!opened.ok) throw new Error(opened.problems.map(({ say }) => say).join('\n'))
    const plan = await planJob(opened.value)
    // Hand: 600 mm and the sill at 200 mm, in layers of 20 mm.
    expect(plan?.bands.map(({ layers }) => layers)).toEqual([30, 10, 30])
    expect(plan?.campaign.finished).toBe(true)
  })
  it('stop a lever that would leave one of them nothing to print', async () => {
    // 60 mm of wall beside the window hold a bead of 50 mm, and none of 65.
    const narrow = byHand.replaceAll('1.7 m', '1.64 m')
    const opened = openJob({ document: garden + narrow, read })
    if (!opened.ok) throw new Error(opened.problems.map(({ say }) => say).join('\n'))
    const plan = await planJob(opened.value)
    const bench = leverBench({ ...plan!, hours: opened.value.hours })
    expect(bench.pull([{ kind: 'wider-bead', setting: 55 }])).toBeDefined()
    expect(bench.pull([{ kind: 'wider-bead', setting: 65 }])).toBeUndefined()
  })
})
