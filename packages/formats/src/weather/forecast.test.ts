import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { afterEach, describe, expect, it } from 'vitest'
import { type ForecastStore, forecastUrl, loadForecast, readForecast, type StoredForecast } from './index.js'

const site = { latitude: 40.123456, longitude: -3.7, elevation: 650 }
const from = Date.UTC(2026, 6, 1) / 1000

/** An answer of the service's shape, with numbers of our own. */
function answer(hours: number): Record<string, unknown> {
  const list = (value: (hour: number) => number | null) =>
    Array.from({ length: hours }, (_, hour) => value(hour))
  const sun = (hour: number) => Math.max(0, Math.round(900 * Math.sin(((hour - 5.5) / 14) * Math.PI)))
  return {
    latitude: 40.125,
    longitude: -3.6875,
    elevation: 650,
    utc_offset_seconds: 0,
    hourly_units: {
      time: 'unixtime',
      temperature_2m: '°C',
      relative_humidity_2m: '%',
      surface_pressure: 'hPa',
      wind_speed_10m: 'm/s',
      wind_gusts_10m: 'm/s',
      precipitation: 'mm',
      shortwave_radiation: 'W/m²',
      direct_normal_irradiance: 'W/m²',
      diffuse_radiation: 'W/m²',
    },
    hourly: {
      time: list(hour => from + hour * 3600),
      temperature_2m: list(hour => 20 + hour),
      relative_humidity_2m: list(() => 40),
      surface_pressure: list(() => 940),
      wind_speed_10m: list(hour => hour % 4),
      wind_gusts_10m: list(hour => (hour % 4) + 3),
      precipitation: list(hour => (hour === 5 ? 2.5 : 0)),
      shortwave_radiation: list(hour => sun(hour % 24)),
      direct_normal_irradiance: list(hour => Math.round(sun(hour % 24) * 0.8)),
      diffuse_radiation: list(hour => Math.round(sun(hour % 24) * 0.25)),
    },
  }
}
const withHourly = (change: Record<string, unknown>, hours = 24) => ({
  ...answer(hours),
  hourly: { ...(answer(hours).hourly as object), ...change },
})
const codes = (given: unknown) => {
  const read = readForecast(given, site)
  return read.ok ? [] : read.problems.map(({ code, at }) => [code, at])
}

describe('readForecast', () => {
  it('makes hours of the moments: means between two, sums from the end', () => {
    const read = readForecast(answer(24), site)
    if (!read.ok) throw new Error(JSON.stringify(read.problems))
    expect(read.value.hours).toHaveLength(23)
    // hand: 24 and 25 °C at the two ends of hour 4; its rain stands at its end, 05:00.
    expect(read.value.hours[4]).toMatchObject({
      start: from + 4 * 3600,
      air: 24.5,
      humidity: 0.4,
      pressure: 94000,
      wind: 0.5,
      gust: 4,
      rain: 2.5,
      source: 'forecast',
    })
    expect(read.value.hours[5]!.rain).toBe(0)
  })
  it('reads ISO times as UTC', () => {
    const read = readForecast(
      withHourly({
        time: Array.from({ length: 24 }, (_, hour) => `2026-07-01T${String(hour).padStart(2, '0')}:00`),
      }),
      site,
    )
    expect(read.ok && read.value.hours[0]!.start).toBe(from)
  })
  it('ends where the service no longer knows', () => {
    const read = readForecast(
      withHourly({ temperature_2m: Array.from({ length: 24 }, (_, hour) => (hour < 10 ? 20 : null)) }),
      site,
    )
    expect(read.ok && read.value.hours).toHaveLength(9)
  })
  it.each([
    ['no forecast', {}, ['forecast/shape', 'hourly.time']],
    ['a page instead', '<html>', ['forecast/shape', 'hourly.time']],
    ['a refusal', { error: true, reason: 'too many requests' }, ['forecast/refused', 'reason']],
    [
      'lists of different length',
      withHourly({ precipitation: [1] }),
      ['forecast/length', 'hourly.precipitation'],
    ],
    [
      'words among numbers',
      withHourly({ temperature_2m: Array.from({ length: 24 }, () => 'warm') }),
      ['forecast/value', 'hourly.temperature_2m'],
    ],
    [
      'another unit',
      { ...answer(24), hourly_units: { wind_speed_10m: 'km/h' } },
      ['forecast/unit', 'hourly_units.wind_speed_10m'],
    ],
    ['no air', withHourly({ temperature_2m: undefined }), ['forecast/field', 'hourly.temperature_2m']],
    [
      'only empty hours',
      withHourly({ temperature_2m: Array.from({ length: 24 }, () => null) }),
      ['forecast/empty', 'hourly'],
    ],
  ])('says what is wrong with %s', (_, given, wanted) => expect(codes(given)).toEqual([wanted]))
})

describe('loadForecast', () => {
  let server: Server | undefined
  afterEach(() => server?.close())
  const seen: string[] = []
  const serve = async (body: string, status = 200): Promise<string> => {
    seen.length = 0
    server = createServer((request, response) => {
      seen.push(request.url ?? '')
      response.writeHead(status, { 'content-type': 'application/json' }).end(body)
    })
    await new Promise<void>(done => server!.listen(0, '127.0.0.1', done))
    return `http://127.0.0.1:${(server.address() as AddressInfo).port}/v1/forecast`
  }
  const memory = (stored?: StoredForecast): ForecastStore & { kept: StoredForecast | undefined } => {
    const store = {
      kept: stored,
      read: async () => store.kept,
      write: async (next: StoredForecast) => {
        store.kept = next
      },
    }
    return store
  }

  it('asks the service for the site in our units, and keeps the answer', async () => {
    const service = await serve(JSON.stringify(answer(24)))
    const store = memory()
    const loaded = await loadForecast({ site, now: from, store, fetch, service })
    expect(loaded).toMatchObject({ ok: true, value: { from: 'service', ageSeconds: 0 } })
    expect(store.kept?.fetchedAt).toBe(from)
    const asked = new URL(seen[0]!, service).searchParams
    expect(asked.get('latitude')).toBe('40.1235')
    expect(asked.get('wind_speed_unit')).toBe('ms')
    expect(asked.get('hourly')).toContain('wind_gusts_10m')
  })
  it('uses a fresh answer without asking again, an old one only when the service fails, with its age said', async () => {
    const service = await serve('{"busy":', 200)
    const stored = { url: forecastUrl({ site, service }), fetchedAt: from, answer: answer(24) }
    const load = (now: number) => loadForecast({ site, now, store: memory(stored), fetch, service })
    expect(await load(from + 600)).toMatchObject({
      ok: true,
      value: { from: 'store', say: 'Forecast from 10 min ago.' },
    })
    expect(seen).toHaveLength(0)
    const old = await load(from + 4 * 3600)
    expect(seen).toHaveLength(1)
    expect(old).toMatchObject({ ok: true, value: { from: 'store', ageSeconds: 14400 } })
    expect(old.ok && old.value.say).toMatch(/^Forecast from 4 h ago; the service could not be reached/)
  })
  it('says the status of a refusing service and does not lose the good answer to a broken one', async () => {
    const service = await serve('{"hourly":{}}')
    const store = memory({ url: forecastUrl({ site, service }), fetchedAt: from - 90000, answer: answer(24) })
    const loaded = await loadForecast({ site, now: from, store, fetch, service })
    expect(loaded).toMatchObject({ ok: true, value: { from: 'store' } })
    expect(store.kept?.fetchedAt).toBe(from - 90000)
    server!.close()
    const down = await serve('no', 503)
    const refused = await loadForecast({ site, now: from, store: memory(), fetch, service: down })
    expect(refused).toMatchObject({ ok: false, problems: [{ code: 'forecast/none' }] })
    expect(refused.ok ? '' : refused.problems[0]!.say).toContain('503')
  })
  it('asks nobody offline', async () => {
    const url = forecastUrl({ site })
    const stored = { url, fetchedAt: from - 3 * 86400, answer: answer(24) }
    expect(await loadForecast({ site, now: from, store: memory(stored) })).toMatchObject({
      ok: true,
      value: { from: 'store', say: 'Forecast from 3 days ago; working offline.' },
    })
    expect(await loadForecast({ site, now: from, store: memory() })).toMatchObject({ ok: false })
  })
  it('does not take another site’s forecast', async () => {
    const stored = {
      url: forecastUrl({ site: { ...site, latitude: 50 } }),
      fetchedAt: from,
      answer: answer(24),
    }
    expect(await loadForecast({ site, now: from, store: memory(stored) })).toMatchObject({ ok: false })
  })
})
