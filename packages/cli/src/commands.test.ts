import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { planReportSchema } from '@dawnlift/formats/plan-report'
import { readMachineFile } from '@dawnlift/formats/rs274'
import { afterAll, describe, expect, it } from 'vitest'
import { emptyFolder, gardenWall, run } from './collecting-screen.js'
import { fillFolder } from './command/output-folder.js'

const { folder, remove } = emptyFolder()
afterAll(remove)
/** The garden wall under another name, with its text changed. */
function jobWith(name: string, change: (text: string) => string): string {
  cpSync(gardenWall, join(folder, name), { recursive: true })
  const file = join(folder, name, 'job.yaml')
  writeFileSync(file, change(readFileSync(file, 'utf8')))
  return name
}
// E1 drawn into the hatch, which reaches from 1.7 to 2.3 m and from 200 to 400 mm.
const blocked = jobWith('blocked', text => text.replace(/(id: E1,.*?at: )\d+ mm/s, '$11.9 m'))

describe('dawnlift plan', () => {
  it('prints the print days, each lift with its reason, and keeps progress off the results', async () => {
    const { code, out, err } = await run(['plan', gardenWall], folder)
    expect(code).toBe(0)
    expect(out).toMatch(/A1 +1–20 .*all 20 layers/)
    expect(out).toContain('licensed engineer')
    expect(err).toContain('choosing lifts and days')
    expect(out).not.toContain('choosing lifts')
  })
  it('gives one JSON document that keeps to the published schema', async () => {
    const { code, out } = await run(['plan', gardenWall, '--json'], folder)
    expect(code).toBe(0)
    expect(planReportSchema.safeParse(JSON.parse(out)).error?.issues).toBeUndefined()
  })
  it('fills a folder, replaces it with the next plan, and leaves nothing beside it', async () => {
    expect((await run(['plan', gardenWall, '--out', 'a/files'], folder)).code).toBe(0)
    const first = readdirSync(join(folder, 'a/files')).sort()
    expect(first).toEqual(['calendars', 'drawings', 'machine', 'sheets', 'tables'])
    writeFileSync(join(folder, 'a/files/tables/old.csv'), 'x')
    expect((await run(['plan', gardenWall, '--out', 'a/files'], folder)).code).toBe(0)
    expect(existsSync(join(folder, 'a/files/tables/old.csv'))).toBe(false)
    expect(readdirSync(join(folder, 'a'))).toEqual(['files'])
  })
  it('refuses a folder that holds other things, before it plans', async () => {
    mkdirSync(join(folder, 'photos'))
    writeFileSync(join(folder, 'photos/site.jpg'), 'x')
    const { code, err } = await run(['plan', gardenWall, '--out', 'photos'], folder)
    expect(code).toBe(2)
    expect(err).toContain('photos holds other things (site.jpg)')
    expect(err).not.toContain('laying beads')
    expect(existsSync(join(folder, 'photos/site.jpg'))).toBe(true)
  })
})

describe('a folder of outputs', () => {
  const good = { name: 'tables/new.csv', title: '', mediaType: '', make: async () => 'new' }
  const bad = {
    ...good,
    name: 'tables/bad.csv',
    make: async () => {
      throw new Error('half-way')
    },
  }
  it('stays as it was when a file cannot be made', async () => {
    const target = join(folder, 'b/kept')
    await fillFolder(target, [{ ...good, name: 'tables/old.csv' }], () => {})
    await expect(fillFolder(target, [good, bad], () => {})).rejects.toThrow('half-way')
    expect(readdirSync(join(target, 'tables'))).toEqual(['old.csv'])
    expect(readdirSync(join(folder, 'b'))).toEqual(['kept'])
  })
  it('under a file is refused by the computer, not called a mistake of ours', async () => {
    const { code, err } = await run(['plan', gardenWall, '--out', 'b/kept/tables/old.csv/x'], folder)
    expect([code, err]).toEqual([2, expect.stringContaining('The computer refused')])
  })
})

describe('dawnlift check', () => {
  it('ends with 0 when nothing fails, and lists what is assumed', async () => {
    const { code, out } = await run(['check', gardenWall, '--assumed'], folder)
    expect(code).toBe(0)
    expect(out).toContain('Nothing here stops the print.')
    expect(out).toMatch(/^rules\.layerTimeMost/m)
  })
  it('ends with 1 when a finding fails', async () => {
    const { code, out } = await run(['check', blocked, '--json'], folder)
    const { findings } = JSON.parse(out) as { findings: { verdict: string }[] }
    expect(findings.some(finding => finding.verdict === 'fail')).toBe(true)
    expect(code).toBe(1)
  })
})

describe('dawnlift explain', () => {
  it('tells every limit of one lift, with numbers', async () => {
    const { code, out } = await run(['explain', gardenWall, '--lift', 'a2'], folder)
    expect(code).toBe(0)
    expect(out).toMatch(/^A2, section A, 2026-06-02: layers 21 to 25/)
    expect(out).toContain('Standing safety')
  })
  it('gives lifts of a day as JSON, and refuses a day there is not', async () => {
    const { out } = await run(['explain', gardenWall, '--day', '2026-06-01', '--json'], folder)
    expect((JSON.parse(out) as { lifts: { id: string }[] }).lifts.map(lift => lift.id)).toEqual(['A1'])
    const { code, err } = await run(['explain', gardenWall, '--day', '12'], folder)
    expect([code, err]).toEqual([2, expect.stringContaining('Days run from 1 to 3; lifts are A1, A2, A3')])
  })
})

describe('dawnlift resume', () => {
  it('writes what is left of a lift once, and never over a file', async () => {
    const words = ['resume', gardenWall, '--lift', 'A1', '--layer', '12', '--out', 'rest.ngc']
    const { code, out, err } = await run(words, folder)
    expect([code, out]).toEqual([0, ''])
    expect(err).toContain('Check the joint')
    const text = readFileSync(join(folder, 'rest.ngc'), 'utf8')
    expect(text).toContain('(layers 12 to 20')
    expect(readMachineFile(text).ok).toBe(true)
    writeFileSync(join(folder, 'rest.ngc'), 'mine')
    expect((await run(words, folder)).code).toBe(2)
    expect(readFileSync(join(folder, 'rest.ngc'), 'utf8')).toBe('mine')
  })
  it.each([
    ['--lift', 'C9', '1', '1', 'lifts are A1, A2, A3'],
    ['--layer', 'A1', '21', '1', 'layers 1 to 20'],
    ['--pass', 'A1', '3', '99', 'passes 1 to'],
  ])('refuses a %s there is not', async (_, lift, layer, pass, say) => {
    const { code, out, err } = await run(
      ['resume', gardenWall, '--lift', lift, '--layer', layer, '--pass', pass],
      folder,
    )
    expect([code, out]).toEqual([2, ''])
    expect(err).toContain(say)
  })
})

describe('dawnlift new', () => {
  it('makes a job once and leaves an existing folder as it is', async () => {
    expect((await run(['new', 'shed'], folder)).code).toBe(0)
    writeFileSync(join(folder, 'shed/job.yaml'), 'mine')
    const again = await run(['new', 'shed'], folder)
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('shed exists already')])
    expect(readFileSync(join(folder, 'shed/job.yaml'), 'utf8')).toBe('mine')
    expect(readdirSync(folder).filter(name => name.includes('.part'))).toEqual([])
  })
})
