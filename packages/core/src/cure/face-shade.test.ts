import { describe, expect, it } from 'vitest'
import type { Lift } from '../campaign/index.js'
import type { Wall } from '../job/index.js'
import { dryInland, summerSite } from '../weather/fixtures/summer-site.js'
import { hoursFromNormals, printHours, shadeHeight, solarPosition } from '../weather/index.js'
import { cureLifts, facePlaces, facingsOf, standingWalls } from './index.js'

/** Walls that run east, one behind the other; `y` south of the first is negative. */
const wall = (id: string, y: number): Wall => ({
  id,
  name: id,
  centreline: {
    points: [
      [0, y],
      [6, y],
    ],
    bulges: [0],
    closed: false,
  },
  makeUp: { kind: 'double', web: 'zigzag', webPitch: 0.4 },
  thickness: 0.25,
  base: 0,
  top: 2.7,
  joints: [],
})
const job = {
  ...summerSite,
  site: { ...summerSite.site, yAxisBearing: 0 },
  walls: [wall('N', 0), wall('S', -1.5)],
}
const hours = printHours(job, hoursFromNormals(dryInland, job.site, '2026-10-01', 20))
const first = hours[0]!.start
const lift = (id: string, section: string, day: number, lastLayer: number): Lift => ({
  id,
  section,
  firstLayer: lastLayer - 59,
  lastLayer,
  start: first + day * 86400 + 8 * 3600,
  end: first + day * 86400 + 12 * 3600,
  layerEnds: [],
  holds: [],
  volume: 1,
  length: 100,
  wishedLayers: 60,
  binding: { kind: 'lift-height', demand: 0.9, capacity: 1, unit: 'm', source: 'the job' },
  runnersUp: [],
  safety: 2,
  pauseBudget: 300,
})
const section = (id: string) => ({ id, stretches: [{ wall: id, from: 0, to: 6 }], joints: [] })
const sections = [section('N'), section('S')]
const north = lift('N1', 'N', 2, 60)
const southLow = lift('S1', 'S', 0, 60)
const southHigh = lift('S2', 'S', 1, 120)
const layer = job.print.layerHeight

describe('walls that cast shade', () => {
  it('stand as high as they have been printed by then', () => {
    const tops = (at: number) =>
      standingWalls(job, sections, [southLow, southHigh, north], at).map(each => each.top)
    expect(tops(southLow.end)).toEqual([Math.round((60 * layer) / 0.25) * 0.25])
    expect(tops(north.end)).toEqual([60, 120].map(layers => Math.round((layers * layer) / 0.25) * 0.25))
    expect(tops(southLow.end - 1)).toEqual([])
  })
  it('take from a face the share of the beam that the plan’s geometry says', () => {
    const [facing] = facingsOf(job, section('N'))
    const neighbours = standingWalls(job, sections, [southHigh], southHigh.end)
    const heights = [0, 60 * layer] as const
    const from = first + 3 * 86400
    const [sunniest] = facePlaces({ site: job.site, facing: facing!, neighbours, heights, from })
    // hand: W runs east, so its right face looks south; at noon the ray from y = −0.135 meets the wall at y = −1.5 after 1.365/cos(azimuth off south) m.
    const noon = from + 12 * 3600 + 1800
    const sun = solarPosition(noon, job.site.latitude, job.site.longitude)
    const along = 1.365 / Math.cos(sun.azimuth - Math.PI)
    const edge = neighbours[0]!.top - along * Math.tan(sun.altitude)
    const lit = Math.max(0, Math.min(1, (heights[1] - edge) / heights[1]))
    expect(shadeHeight([1.5, -0.135], sun, 0, neighbours)).toBeCloseTo(edge, 9)
    expect(sunniest!.sunlit!(noon, 'right')).toBeCloseTo(lit, 6)
    expect(lit).toBeGreaterThan(0)
    expect(lit).toBeLessThan(1)
    // The same hour of another day is the same shade.
    expect(sunniest!.sunlit!(noon + 5 * 86400, 'right')).toBe(sunniest!.sunlit!(noon, 'right'))
  })
  it('are one place where nothing shades and two where a corner does', () => {
    const [facing] = facingsOf(job, section('N'))
    const base = { site: job.site, facing: facing!, heights: [0, 1] as const, from: first }
    expect(facePlaces({ ...base, neighbours: [] })).toHaveLength(1)
    const corner = [{ from: [3.5, -3], to: [6, -1], top: 3 } as const]
    expect(facePlaces({ ...base, neighbours: corner })).toHaveLength(2)
  })
  it('keep a lift behind them cooler, in need of less water and later strong', () => {
    const cureAmong = (among: readonly Lift[]) => cureLifts(job, sections, [north], hours, { among })[0]!
    const [open, shaded] = [cureAmong([north]), cureAmong([southLow, southHigh, north])]
    const litres = (plan: typeof open) => plan.steps.reduce((sum, step) => sum + (step.litres ?? 0), 0)
    const roof = (plan: typeof open) => plan.milestones.find(mark => mark.kind === 'roof')!.at!
    expect(litres(shaded)).toBeLessThan(0.95 * litres(open))
    expect(roof(shaded)).toBeGreaterThan(roof(open) + 3600)
  })
})
