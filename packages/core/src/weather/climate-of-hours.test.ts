import { describe, expect, it } from 'vitest'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import { checkNormals, climateOfHours, hoursFromNormals } from './index.js'

const { site } = summerSite

describe('climateOfHours', () => {
  it('finds the normals that the hours were made of', () => {
    const found = climateOfHours(
      'x',
      'y',
      hoursFromNormals(dryInland, site, '2026-01-01', 365),
      site.timeZone,
    )
    expect(checkNormals(found).ok).toBe(true)
    found.months.forEach((month, index) => {
      const given = dryInland.months[index]!
      // Round trip: hourly means miss the extremes by a fortieth of the range; rain days are whole ones, February's for its 28.25 days; dew is held at the coolest air.
      expect(Math.abs(month.airMost - given.airMost)).toBeLessThan(0.6)
      expect(Math.abs(month.airLeast - given.airLeast)).toBeLessThan(0.6)
      expect(Math.abs(month.dewPoint - given.dewPoint)).toBeLessThan(0.8)
      expect(Math.abs(month.wind - given.wind)).toBeLessThan(0.12)
      expect(Math.abs(month.rainDays - given.rainDays)).toBeLessThan(1.1)
      if (month.sky.kind === 'global' && given.sky.kind === 'global')
        expect(Math.abs(month.sky.megajoulesPerDay / given.sky.megajoulesPerDay - 1)).toBeLessThan(0.02)
    })
  })
  it('leaves out months nobody measured, and that is told', () => {
    const found = climateOfHours('x', 'y', hoursFromNormals(dryInland, site, '2026-07-01', 31), site.timeZone)
    expect(found.months).toHaveLength(1)
    expect(checkNormals(found).ok).toBe(false)
  })
})
