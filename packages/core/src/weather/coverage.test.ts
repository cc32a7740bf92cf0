import { describe, expect, it } from 'vitest'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import { checkCoverage, hoursFromNormals, mergeHours } from './index.js'

const normals = hoursFromNormals(dryInland, summerSite.site, '2026-07-01', 10)
const from = normals[0]!.start
const forecast = normals.slice(0, 90).map(hour => ({ ...hour, source: 'forecast' as const }))
const clock = (at: number) => `h${(at - from) / 3600}`
const said = (hours: typeof normals, until = 240) =>
  checkCoverage(hours, from, from + until * 3600, clock).map(({ say }) => say)

describe('checkCoverage', () => {
  it('is silent while one source covers all', () => expect(said(normals)).toEqual([]))
  it('says where the forecast ends in mid-campaign', () => {
    const [finding] = said(mergeHours([normals, forecast]))
    expect(finding).toContain('Up to h90 the weather is a forecast, from there climate normals')
  })
  it('says gaps and ends', () => {
    expect(said([...normals.slice(0, 5), ...normals.slice(8)])[0]).toContain('no weather from h5 to h8')
    expect(said(normals, 300)[0]).toContain('ends at h240')
    expect(said(normals.slice(3))[0]).toContain('begins at h3')
    expect(said([])[0]).toContain('begins at h240')
  })
})
