import { cpSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { reportSchemas } from '@dawnlift/formats/reports'
import { afterAll, afterEach, beforeEach, describe, expect, it } from 'vitest'
import { emptyFolder, gardenWall, run } from './collecting-screen.js'

const { folder, remove } = emptyFolder()
afterAll(remove)
const job = join(folder, 'job')
const kept = join(job, 'ahead.json')
const lines = readFileSync(join(gardenWall, 'job.yaml'), 'utf8')
const firstDay = /firstDay: (\S+)/.exec(lines)![1]!

beforeEach(() => {
  cpSync(gardenWall, job, { recursive: true })
  writeFileSync(join(job, 'job.yaml'), lines.replace(/^weather:\n/m, 'weather:\n  forecast: ahead.json\n'))
})
afterEach(() => rmSync(job, { recursive: true, force: true }))

/** Three days of the service's shape from the campaign's first day on, with numbers of our own. */
const answer = (air: number) => {
  const list = <T>(value: T) => Array.from({ length: 73 }, () => value)
  const from = Date.parse(`${firstDay}T00:00Z`) / 1000
  return {
    hourly: {
      time: Array.from({ length: 73 }, (_, hour) => from + hour * 3600),
      temperature_2m: list(air),
      relative_humidity_2m: list(40),
      surface_pressure: list(950),
      wind_speed_10m: list(2),
      precipitation: list(0),
      shortwave_radiation: list(0),
      direct_normal_irradiance: list(0),
      diffuse_radiation: list(0),
    },
  }
}

let server: Server | undefined
afterEach(() => server?.close())
let asked = 0
async function serve(body: unknown, status = 200): Promise<string> {
  asked = 0
  server?.close()
  server = createServer((_, response) => {
    asked += 1
    response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body))
  })
  await new Promise<void>(done => server!.listen(0, '127.0.0.1', done))
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/hourly`
}
const forecast = (...words: string[]) => run(['forecast', job, ...words], folder)

describe('dawnlift forecast', () => {
  it('fetches into the file the job names, says its age when asked again, and leaves nothing aside', async () => {
    const service = await serve(answer(31))
    const first = await forecast('--service', service)
    expect([first.code, first.err]).toEqual([0, ''])
    expect(first.out).toMatch(/^Forecast fetched just now\. 72 hours, .* in ahead\.json\./)
    expect(first.out).toContain('assumed for 72 h  gusts: 1.5 times the mean wind')
    expect(existsSync(`${kept}.new`)).toBe(false)
    const again = await forecast('--service', service)
    expect(again.out).toMatch(/^Forecast from 0 min ago\. 72 hours/)
    expect(asked).toBe(1)
    expect((await forecast('--service', service, '--older-than', '0 min')).out).toMatch(/fetched just now/)
    expect(asked).toBe(2)
  })
  it('is read by the next command, with its age and its end told', async () => {
    await forecast('--service', await serve(answer(31)))
    const { out } = await run(['check', job], folder)
    expect(out).toContain('ahead.json: Forecast fetched ')
    expect(out).toMatch(/ahead\.json: Up to .* a forecast, from there climate normals/)
  })
  it('keeps the old answer when the service is gone, and says why', async () => {
    await forecast('--service', await serve(answer(31)))
    const before = readFileSync(kept, 'utf8')
    const down = await forecast('--service', await serve('', 503))
    expect([down.code, down.out]).toEqual([
      0,
      expect.stringMatching(/^Forecast from 0 min ago; the service answered 503\./),
    ])
    server!.close()
    const cut = await forecast('--service', 'http://127.0.0.1:9/hourly')
    expect(cut.out).toMatch(/^Forecast from 0 min ago; the service could not be reached/)
    expect(readFileSync(kept, 'utf8')).toBe(before)
  })
  it('says in one sentence that there is no network and nothing kept', async () => {
    const { code, err, out } = await forecast('--service', 'http://127.0.0.1:9/hourly')
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(
      /There is no forecast: the service could not be reached .*Planning goes on with history or climate normals/,
    )
    expect(existsSync(kept)).toBe(false)
  })
  it('asks nobody offline', async () => {
    const service = await serve(answer(31))
    expect((await forecast('--service', service, '--offline')).err).toContain('working offline')
    expect(asked).toBe(0)
    await forecast('--service', service)
    expect((await forecast('--offline')).out).toMatch(/^Forecast from 0 min ago; working offline\./)
    expect(asked).toBe(1)
  })
  it('keeps to its schema with --json', async () => {
    const { out } = await forecast('--service', await serve(answer(31)), '--json')
    expect(reportSchemas.forecast.safeParse(JSON.parse(out)).error?.issues).toBeUndefined()
    expect(JSON.parse(out)).toMatchObject({ from: 'service', age_s: 0, hours: 72, file: 'ahead.json' })
  })
  it('tells every wrong wish at once, and how to name the file', async () => {
    const wrong = await forecast('--service', 'ftp://here', '--days', '40', '--older-than', 'soon')
    expect(wrong.code).toBe(2)
    for (const at of ['--service', '--days', '--older-than']) expect(wrong.err).toContain(at)
    writeFileSync(join(job, 'job.yaml'), lines)
    const unnamed = await forecast('--offline')
    expect([unnamed.code, unnamed.err]).toEqual([
      2,
      expect.stringContaining('write “forecast: forecast.json”'),
    ])
  })
})
