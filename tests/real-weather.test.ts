import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { initGeometry } from '@dawnlift/core/geometry'
import { planJob } from '@dawnlift/core/plan'
import { openJob } from '@dawnlift/formats/job-folder'
import { beforeAll, describe, expect, it } from 'vitest'
import { noRealInputs, realFolder, root } from './sources.js'

const folder = realFolder('weather')
const absent = !existsSync(folder)
const skipped = absent ? ` (skipped: ${noRealInputs})` : ''

const gardenWall = readFileSync(join(root, 'fixtures/jobs/garden-wall/job.yaml'), 'utf8')
/** The garden wall at the place of a weather station. */
const jobAt = (site: string, weather: string) =>
  gardenWall
    .replace(/^site:\n(?: +.*\n)+/m, `site: { name: the yard, ${site} }\n`)
    .replace(/^weather:\n(?: {2,}.*\n)+/m, `weather: ${weather}\n`)

function opened(document: string) {
  const read = (name: string) =>
    existsSync(join(folder, name)) ? readFileSync(join(folder, name)) : undefined
  const job = openJob({ document, read })
  if (!job.ok) throw new Error(job.problems.map(({ at, say }) => `${at} ${say}`).join('\n'))
  return job.value
}

const greensboro = 'latitude: 36.1°, longitude: -79.9°, elevation: 270 m, timeZone: America/New_York'
const turin = 'latitude: 45°, longitude: 8°, elevation: 250 m, timeZone: Europe/Rome'
const seattle = 'latitude: 47.5°, longitude: -122.3°, elevation: 130 m, timeZone: America/Los_Angeles'
const normals =
  '{ file: seattle-weather-hourly-normals.csv, source: the airport, columns: { time: date, air: temperature °C, wind: wind m/s, pressure: pressure hPa } }'

describe.skipIf(absent)(`weather files by other hands, from file to print days${skipped}`, () => {
  beforeAll(() => initGeometry())

  it.each([
    [
      'a typical year put together from many',
      greensboro,
      '{ file: greensboro.tmy3.csv, source: the airport }',
    ],
    ['a year of a climate model', turin, '{ file: pvgis-turin.epw, source: a model }'],
    ['a year of normals that lacks its first hour', seattle, normals],
  ])('%s: the wall is up in June', async (_, site, weather) => {
    const job = opened(jobAt(site, weather))
    // Hours from the first day on without a break.
    job.hours.slice(1).forEach((hour, index) => {
      expect(hour.start - job.hours[index]!.start).toBe(3600)
    })
    const plan = await planJob(job)
    expect(plan?.campaign.finished).toBe(true)
    expect(plan?.campaign.days.at(-1)?.date).toMatch(/^2026-06/)
  })

  it('a station an ocean away is used, and said to be', () => {
    const { weatherNotes } = opened(jobAt(turin, '{ file: greensboro.tmy3.csv, source: the airport }'))
    expect(weatherNotes.map(({ code }) => code)).toContain('weather/station')
  })
})
