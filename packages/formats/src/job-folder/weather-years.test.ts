import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { openJob, weatherYears } from './index.js'

const file = new URL('../../../../fixtures/jobs/garden-wall/job.yaml', import.meta.url)
const withNormals = readFileSync(file, 'utf8')
const withFile = withNormals.replace(
  /^weather:\n(?: {2,}.*\n)+/m,
  `weather:\n  file: hours.csv\n  source: the yard's own mast\n  columns: { time: when, air: t °C, humidity: rh %, wind: w m/s, rain: r mm, global: g W/m² }\n`,
)

/** Hours of some years, their air warmer by a tenth of a kelvin a year so that each can be told. */
function hourly(from: number, years: number, zone = ''): Uint8Array {
  const lines = ['when,t,rh,w,r,g']
  for (let at = Date.UTC(from, 0, 1); at < Date.UTC(from + years, 0, 1); at += 3_600_000) {
    const date = new Date(at)
    lines.push(
      `${date.toISOString().slice(0, 16).replace('T', ' ')}${zone},${15 + (date.getUTCFullYear() - from) / 10},60,2,0,100`,
    )
  }
  return new TextEncoder().encode(lines.join('\n'))
}

function opened(document: string, content?: Uint8Array) {
  const read = (name: string) => (name === 'hours.csv' ? content : undefined)
  const job = openJob({ document, read })
  if (!job.ok) throw new Error(job.problems.map(each => each.say).join('\n'))
  return { job: job.value, read }
}

describe('a record by the local clock', () => {
  // The clock of the site shows 02:00 twice on 25 October 2026; a logger that writes it once leaves an hour out.
  it('that shows the doubled hour of autumn once is used, and says that an hour was filled', () => {
    const { job } = opened(withFile, hourly(2026, 2))
    expect(job.weatherNotes.map(note => note.code)).toContain('weather/bridged')
    const doubled = job.hours.filter(
      hour => hour.start >= Date.UTC(2026, 9, 24, 22) / 1000 && hour.start < Date.UTC(2026, 9, 25, 23) / 1000,
    )
    // hand: that day has 25 hours
    expect(doubled.length).toBe(25)
  })
})

describe('weather that a campaign may meet', () => {
  it('is drawn from the normals, other for each year, the same for the same seed', () => {
    const { job, read } = opened(withNormals)
    const years = weatherYears(job, read, 5, 7)
    expect([years.count, years.from]).toEqual([5, expect.stringContaining('5 courses of weather drawn from')])
    expect(years.yearAt(0).hours).toEqual(weatherYears(job, read, 2, 7).yearAt(0).hours)
    expect(years.yearAt(0).hours).not.toEqual(years.yearAt(1).hours)
  })
  it('is the record itself when it has enough years', () => {
    const { job, read } = opened(withFile, hourly(2015, 10))
    const years = weatherYears(job, read, 100, 7)
    expect(years.from).toBe('10 years on record in hours.csv')
    expect(years.yearAt(3).label).toBe('2018')
    expect(years.yearAt(3).hours[0]!.air).toBeCloseTo(15.3, 9)
  })
  it('is drawn from the means of a record that is too short, be its stamps UTC', () => {
    const { job, read } = opened(withFile, hourly(2021, 1, 'Z'))
    expect(weatherYears(job, read, 20, 7).from).toBe(
      '20 courses of weather drawn from the means of hours.csv',
    )
  })
})
