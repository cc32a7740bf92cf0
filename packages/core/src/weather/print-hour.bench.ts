import { dryInland, summerSite } from './fixtures/summer-site.js'
import { hoursFromNormals } from './normals-hours.js'
import { printHours } from './print-hour.js'
import type { WeatherHour } from './site-hour.js'

/** Thirty years of hours, made once from one year: 262,800. */
function thirtyYears(): readonly WeatherHour[] {
  const year = hoursFromNormals(dryInland, summerSite.site, '2026-01-01', 365)
  return Array.from({ length: 30 }, (_, index) =>
    year.map(hour => ({ ...hour, start: hour.start + index * 365 * 86400 })),
  ).flat()
}

export function bench(): { readonly name: string; readonly run: () => void }[] {
  const hours = thirtyYears()
  return [
    { name: 'verdicts of 30 years of hours (262,800)', run: () => void printHours(summerSite, hours) },
    {
      name: 'hours of one year from climate normals',
      run: () => void hoursFromNormals(dryInland, summerSite.site, '2026-01-01', 365),
    },
  ]
}
