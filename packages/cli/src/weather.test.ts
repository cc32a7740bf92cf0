import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { reportSchemas } from '@dawnlift/formats/reports'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { emptyFolder, gardenWall, root, run } from './collecting-screen.js'

const { folder, remove } = emptyFolder()
afterAll(remove)
const job = join(folder, 'job')
const document = readFileSync(join(gardenWall, 'job.yaml'), 'utf8')
const firstDay = /firstDay: (\S+)/.exec(document)![1]!
beforeAll(() => cpSync(gardenWall, job, { recursive: true }))
const withJob = (change: (text: string) => string) => writeFileSync(join(job, 'job.yaml'), change(document))
const weather = (...words: string[]) => run(['weather', job, ...words], folder)

describe('dawnlift weather', () => {
  it('tells the first day hour by hour, where each hour comes from, and when one may print', async () => {
    const { code, out } = await weather()
    expect(code).toBe(0)
    expect(out).toContain(`, ${firstDay}: open `)
    expect(out).toMatch(/^sun \d\d:\d\d to \d\d:\d\d; light enough to work/m)
    expect(out.match(/^\d\d:00 .* normals {2}/gm)).toHaveLength(24)
    expect(out).toContain('local codes, the permit and a heat plan govern')
  })
  it('keeps to the permitted hours of the site, and to the minute', async () => {
    withJob(text =>
      text.replace(
        /^site:\n/m,
        'site:\n  permittedHours: { from: 7:30, until: 16:45, source: the permit }\n',
      ),
    )
    const { out } = await weather()
    expect(out).toMatch(/: open 07:30 to .*16:45 \(printing is not permitted at this hour at 16:45\)/)
    expect(out).toMatch(/^07:00 .*printing is not permitted at this hour.* \(the permit\)/m)
    expect((await run(['plan', job], folder)).code).toBe(0)
    withJob(text => text)
  })
  it('says each reason with how far it is passed, and rest for the crew in a heat wave', async () => {
    withJob(text =>
      text
        .replace(/high: \d+ °C/g, 'high: 44 °C')
        .replace(/low: -?\d+ °C/g, 'low: 27 °C')
        .replace(/dewPoint: -?\d+ °C/g, 'dewPoint: 20 °C'),
    )
    const { out } = await weather('--load', 'heavy', '--newcomers')
    expect(out).toMatch(/mix passes 35 °C.*, [\d.]+ K over \(ACI305/)
    expect(out).toMatch(/crew at worst: WBGT [\d.]+ °C: .* \(NIOSH2016\)/)
    withJob(text => text)
  })
  it('says the chiller and the ice it takes, and from when the job’s own cooling no longer does', async () => {
    const { out } = await run(['weather', join(root, 'examples/torrenubia'), '--day', '2026-07-14'], folder)
    expect(out).toMatch(
      /a chiller of [\d.]+ kW on \d+ kg\/h of mixing water; .* \d+ kg\/h of ice to add; from \d\d:\d\d the job’s own cooling no longer reaches it/,
    )
  })
  it('speaks imperial where the job does', async () => {
    const { out } = await run(['weather', join(root, 'examples/tern-cottage')], folder)
    expect(out).not.toMatch(/\d ?(?:°C|km\/h|kg|kW|kPa|mm\/h)/)
    expect(out).toContain('mph')
  })
  it('keeps to its schema with --json', async () => {
    const told = JSON.parse((await weather('--json')).out)
    expect(reportSchemas.weather.safeParse(told).error?.issues).toBeUndefined()
    expect(told.hours).toHaveLength(24)
  })
  it('says which days have weather, and which loads there are', async () => {
    const { code, err } = await weather('--day', '1999-01-01', '--load', 'idle')
    expect(code).toBe(2)
    expect(err).toMatch(/There is no weather for “1999-01-01”; it is known from \S+ to \S+\./)
    expect(err).toContain('light, moderate, heavy, very-heavy')
  })
})
afterAll(() => rmSync(job, { recursive: true, force: true }))
