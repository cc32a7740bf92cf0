import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { rename, writeFile } from 'node:fs/promises'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { forecastUrl, refreshForecast } from '../weather/index.js'
import { openJob } from './index.js'

const file = new URL('../../../../fixtures/jobs/garden-wall/job.yaml', import.meta.url)
const plain = readFileSync(file, 'utf8')
const ahead = plain.replace(/^weather:\n/m, 'weather:\n  forecast: ahead.json\n')
const job = (document: string, content?: string) => {
  const read = (name: string) =>
    name === 'ahead.json' && content !== undefined ? new TextEncoder().encode(content) : undefined
  const opened = openJob({ document, read })
  if (!opened.ok) throw new Error(opened.problems.map(({ say }) => say).join('\n'))
  return opened.value
}
const base = job(plain)
const { site } = base.job
const first = base.hours[0]!.start

/** An answer of the service's shape with numbers of our own: 40 °C in every one of `hours` hours. */
const answer = (hours: number, from = first) => {
  const list = <T>(value: T) => Array.from({ length: hours + 1 }, () => value)
  return {
    hourly: {
      time: Array.from({ length: hours + 1 }, (_, hour) => from + hour * 3600),
      temperature_2m: list(40),
      relative_humidity_2m: list(20),
      surface_pressure: list(950),
      wind_speed_10m: list(2),
      wind_gusts_10m: list(4),
      precipitation: list(0),
      shortwave_radiation: list(0),
      direct_normal_irradiance: list(0),
      diffuse_radiation: list(0),
    },
  }
}
const stored = (given: unknown, url = forecastUrl({ site })) =>
  JSON.stringify({ url, fetchedAt: first - 7200, answer: given })
const codes = (opened: typeof base) => opened.weatherNotes.map(({ code }) => code)

describe('a forecast beside a job', () => {
  it('stands over the normals for its hours, and where it ends is marked', () => {
    const opened = job(ahead, stored(answer(48)))
    const forecast = opened.hours.filter(hour => hour.source === 'forecast')
    expect(forecast).toHaveLength(48)
    expect(forecast.every(hour => hour.air === 40)).toBe(true)
    expect(opened.hours).toHaveLength(base.hours.length)
    expect(opened.hours.slice(48)).toEqual(base.hours.slice(48))
    const coverage = opened.weatherNotes.filter(({ code }) => code === 'weather/coverage')
    expect(coverage.map(({ say }) => say)).toEqual([
      expect.stringMatching(/^Up to .* a forecast, from there climate normals/),
    ])
  })

  it('tells when it was fetched, or that nobody knows', () => {
    const age = (content: string) =>
      job(ahead, content).weatherNotes.find(({ code }) => code === 'forecast/age')?.say
    expect(age(stored(answer(24)))).toMatch(/^Forecast fetched \d{4}-\d\d-\d\d \d\d:\d\d/)
    expect(age(JSON.stringify(answer(24)))).toMatch(/does not say when/)
  })

  it.each([
    ['is missing', undefined, /^There is no forecast/],
    ['is cut off', stored(answer(24)).slice(0, 200), /no hourly forecast/],
    [
      'is of another place',
      stored(answer(24), forecastUrl({ site: { ...site, latitude: site.latitude + 1 } })),
      /another place/,
    ],
    ['is over before the first day', stored(answer(24, first - 40 * 86400)), /no hour from/],
  ])('that %s is left out, and that is said', (_, content, say) => {
    const opened = job(ahead, content)
    expect(opened.hours).toEqual(base.hours)
    expect(opened.weatherNotes.find(({ code }) => code === 'forecast/left-out')?.say).toMatch(say)
  })

  it('is not spoken of in a job that names none', () => expect(codes(base)).toEqual([]))
})

describe('refreshForecast', () => {
  it('keeps a whole answer from a server, the same file then opening with the job; a failing server leaves it', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'forecast-'))
    let works = true
    const server = createServer((_, response) => {
      response.statusCode = works ? 200 : 503
      response.end(works ? JSON.stringify(answer(36)) : '')
    })
    await new Promise<void>(done => server.listen(0, '127.0.0.1', done))
    const service = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`
    const path = (name: string) => join(folder, name)
    const refresh = (now: number) =>
      refreshForecast({
        site,
        file: 'ahead.json',
        folder: {
          read: async name =>
            readdirSync(folder).includes(name) ? readFileSync(path(name), 'utf8') : undefined,
          write: (name, content) => writeFile(path(name), content),
          rename: (a, b) => rename(path(a), path(b)),
        },
        now,
        fetch,
        service,
      })
    try {
      const fresh = await refresh(first)
      expect(fresh.ok && fresh.value.from).toBe('service')
      expect(readdirSync(folder)).toEqual(['ahead.json'])
      const kept = readFileSync(path('ahead.json'), 'utf8')
      expect(job(ahead, kept).hours.filter(hour => hour.source === 'forecast')).toHaveLength(36)
      works = false
      const later = await refresh(first + 3 * 3600)
      expect(later.ok && later.value.say).toBe('Forecast from 3 h ago; the service answered 503.')
      expect(readFileSync(path('ahead.json'), 'utf8')).toBe(kept)
      // A file of somebody's own making is fetched over.
      writeFileSync(path('ahead.json'), '{}')
      works = true
      expect((await refresh(first + 4 * 3600)).ok).toBe(true)
    } finally {
      server.close()
      rmSync(folder, { recursive: true })
    }
  })

  it('says when the folder takes no file', async () => {
    const full = await refreshForecast({
      site,
      file: 'ahead.json',
      folder: {
        read: async () => undefined,
        write: async () => {
          throw new Error('no space left')
        },
        rename: async () => {},
      },
      now: first,
      fetch: async () => ({ ok: true, status: 200, json: async () => answer(24) }),
    })
    expect(full.ok ? [] : full.problems.map(({ code }) => code)).toEqual(['forecast/not-kept'])
  })
})

describe('a table of hours that reaches into the campaign', () => {
  it('counts as measured, over a forecast of the same hours', () => {
    // A day of the mast from the first day on, at 12 °C; the forecast said 40.
    const table = [
      'when,t',
      ...Array.from(
        { length: 24 },
        (_, hour) => `${new Date((first + hour * 3600) * 1000).toISOString()},12`,
      ),
    ].join('\n')
    const document = plain.replace(
      /^weather:\n(?: {2,}.*\n)+/m,
      'weather: { source: the mast, file: mast.csv, forecast: ahead.json, columns: { time: when, air: t °C } }\n',
    )
    const files: Record<string, string> = { 'mast.csv': table, 'ahead.json': stored(answer(72)) }
    const opened = openJob({
      document,
      read: name => (files[name] === undefined ? undefined : new TextEncoder().encode(files[name])),
    })
    if (!opened.ok) throw new Error(opened.problems.map(({ say }) => say).join('\n'))
    const at = (hour: number) => opened.value.hours.find(({ start }) => start === first + hour * 3600)
    expect(at(3)).toMatchObject({ source: 'measured', air: 12 })
    expect(at(30)).toMatchObject({ source: 'forecast', air: 40 })
    const said = opened.value.weatherNotes.map(({ say }) => say).join('\n')
    expect(said).toMatch(/Up to .* the weather is measured on site, from there a forecast/)
  })
})
