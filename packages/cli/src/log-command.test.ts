import { cpSync, existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { reportSchemas } from '@dawnlift/formats/reports'
import { afterAll, describe, expect, it } from 'vitest'
import { emptyFolder, gardenWall, run } from './collecting-screen.js'

const { folder, remove } = emptyFolder()
afterAll(remove)

const fresh = (name: string): string => {
  cpSync(gardenWall, join(folder, name), { recursive: true })
  return name
}
const logOf = (job: string) => readFileSync(join(folder, job, 'site-log.jsonl'), 'utf8')
const at = '2026-06-01 09:00'

describe('dawnlift log', () => {
  it('says how to begin where nothing is logged', async () => {
    const { code, out } = await run(['log', fresh('new')], folder)
    expect(code).toBe(0)
    expect(out).toContain('nothing has been logged yet')
    expect(existsSync(join(folder, 'new/site-log.jsonl'))).toBe(false)
  })
  it('adds a line, shows what stands and plans the rest from it', async () => {
    const job = fresh('half')
    const { code, out } = await run(['log', job, '--layer', 'A:3', '--at', at], folder)
    expect(code).toBe(0)
    expect(logOf(job)).toBe('{"at":"2026-06-01 09:00","what":"layer","section":"A","layer":3}\n')
    expect(out).toMatch(/A +3 +30 +10 %/)
    expect(out).toMatch(/A2 +4–23/)
    expect(out).toContain('To be told')
    const { out: planned } = await run(['plan', job], folder)
    expect(planned).toMatch(/A1 +1–3 .*broken off here/)
    expect(planned).toMatch(/A2 +4–23/)
  })
  it('has nothing more to tell once everybody has been told', async () => {
    const job = fresh('told')
    await run(['log', job, '--layer', 'A:9', '--at', at], folder)
    await run(['log', job, '--tell'], folder)
    const { out } = await run(['log', job], folder)
    expect(out).toContain('Nobody needs to be told anything new.')
  })
  it('gives one JSON document that keeps to the published schema', async () => {
    const job = fresh('json')
    await run(['log', job, '--stop', 'pump', '--at', at, '--until', '2026-06-01 09:30'], folder)
    const { out } = await run(['log', job, '--json'], folder)
    const report = reportSchemas.log.parse(JSON.parse(out))
    expect(report.stops).toEqual([{ cause: 'pump', times: 1, stopped_s: 1800 }])
  })
  it('counts a struck line no more', async () => {
    const job = fresh('struck')
    await run(['log', job, '--layer', 'A:9', '--at', at], folder)
    const { code, out } = await run(['log', job, '--strike', '1'], folder)
    expect(code).toBe(0)
    expect(out).toContain('nothing has been logged yet')
    expect(logOf(job).split('\n')).toHaveLength(3)
  })
  it('warns of a cold joint', async () => {
    const job = fresh('cold')
    await run(['log', job, '--layer', 'A:5', '--at', at], folder)
    const { out } = await run(['log', job, '--layer', 'A:6', '--at', '2026-06-01 18:00'], folder)
    expect(out).toMatch(/Layer 5 of section A lay bare 540 min/)
  })
  it('goes on in a new line where the power cut the last one short', async () => {
    const job = fresh('cut')
    writeFileSync(join(folder, job, 'site-log.jsonl'), '{"at":"2026-06-01 09:00","what":"shift"}')
    await run(['log', job, '--layer', 'A:9', '--at', at], folder)
    expect(logOf(job).trim().split('\n')).toHaveLength(2)
  })
})

describe('dawnlift log refuses, and writes nothing', () => {
  const job = fresh('kept')
  const refused = async (...words: string[]) => {
    const { code, err } = await run(['log', job, ...words], folder)
    expect(existsSync(join(folder, job, 'site-log.jsonl'))).toBe(false)
    expect(code).toBe(2)
    return err
  }
  it('a layer over the top of the wall', async () =>
    expect(await refused('--layer', 'A:900', '--at', at)).toContain(
      'Section A has 30 layers; the log says 900',
    ))
  it('a section that is not there', async () =>
    expect(await refused('--layer', 'B:3', '--at', at)).toContain('There is no section B'))
  it('a moment that is none, and an end that is none, both at once', async () => {
    const err = await refused('--stop', 'pump', '--at', '2026-13-01 07:00', '--until', 'noon')
    expect(err).toContain('--at')
    expect(err).toContain('--until')
  })
  it('an event without a moment', async () =>
    expect(await refused('--note', 'fog')).toContain('When was it?'))
  it('two events at once', async () =>
    expect(await refused('--shift', '--note', 'fog', '--at', at)).toContain('One event a call'))
  it('a moment without an event', async () =>
    expect(await refused('--at', at)).toContain('but not what happened'))
  it('an end for what does not last', async () =>
    expect(await refused('--shift', '--at', at, '--until', at)).toContain('Only a stop has an end'))
  it('a layer without a number', async () =>
    expect(await refused('--layer', 'A', '--at', at)).toContain('names no section and layer'))
  it('a log that holds nonsense, with every line of it', async () => {
    const broken = fresh('broken')
    writeFileSync(join(folder, broken, 'site-log.jsonl'), '{"what":"shft"}\nnonsense\n')
    const { code, err } = await run(['plan', broken], folder)
    expect(code).toBe(2)
    expect(err).toContain('site-log.jsonl:1')
    expect(err).toContain('site-log.jsonl:2')
  })
})
