import { describe, expect, it } from 'vitest'
import type { Lift } from '../campaign/index.js'
import type { Wall } from '../job/index.js'
import { dryInland, summerSite } from '../weather/fixtures/summer-site.js'
import { hoursFromNormals, printHours } from '../weather/index.js'
import { checkCooling, cureLifts, wallHeat, wallWeather } from './index.js'

const wall = (id: string, to: readonly [number, number]): Wall => ({
  id,
  name: id,
  centreline: { points: [[0, 0], to], bulges: [0], closed: false },
  makeUp: { kind: 'double', web: 'zigzag', webPitch: 0.4 },
  thickness: 0.25,
  base: 0,
  top: 2.7,
  joints: [],
})
const job = { ...summerSite, walls: [wall('W1', [5, 0]), wall('W2', [0, 4])] }
const hours = printHours(job, hoursFromNormals(dryInland, job.site, '2026-07-14', 16))
const start = hours[0]!.start
const lift = (id: string, section: string, day: number): Lift => ({
  id,
  section,
  firstLayer: 1,
  lastLayer: 60,
  start: start + day * 86400 + 6 * 3600,
  end: start + day * 86400 + 10 * 3600,
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
const section = (id: string, ...walls: readonly string[]) => ({
  id,
  stretches: walls.map(each => ({ wall: each, from: 0, to: each === 'W1' ? 5 : 4 })),
  joints: [],
})
const sections = [section('A', 'W1', 'W2'), section('B', 'W1'), section('C', 'W2')]
const [both, along, across] = cureLifts(
  job,
  sections,
  [lift('A1', 'A', 0), lift('B1', 'B', 0), lift('C1', 'C', 0)],
  hours,
)
const litres = (plan: typeof both) => plan!.steps.reduce((sum, step) => sum + (step.litres ?? 0), 0)
const markOf = (plan: typeof both, kind: string) => plan!.milestones.find(mark => mark.kind === kind)!.at!

describe('cureLifts', () => {
  it('plans each lift by its own section', () => {
    expect([both, along, across].map(plan => plan!.lift)).toEqual(['A1', 'B1', 'C1'])
    // W1 runs along x and faces north and south, W2 along y and faces east and west: they dry differently.
    expect(along!.heat.trace.left).not.toEqual(across!.heat.trace.left)
  })
  it('waters a section by its faster-drying side over its whole face', () => {
    const perMetre = Math.max(litres(along) / 5, litres(across) / 4)
    // hand: nine metres at the worse side's litres a metre; the two sides' wettings end within a round of each other, 3 %.
    expect(Math.abs(litres(both) / (9 * perMetre) - 1)).toBeLessThan(0.03)
  })
  it('takes each milestone from the side that comes last and the peak from the hottest', () => {
    for (const kind of ['pour', 'lintel', 'roof'])
      expect(markOf(both, kind)).toBeCloseTo(Math.max(markOf(along, kind), markOf(across, kind)), 3)
    expect(both!.peak.temperature).toBe(Math.max(along!.peak.temperature, across!.peak.temperature))
  })
  it('keeps one finding of each check, the worst', () => {
    const checks = both!.findings.map(finding => finding.check)
    expect(new Set(checks).size).toBe(checks.length)
    const plastic = (plan: typeof both) =>
      plan!.findings.find(finding => finding.check === 'cure-plastic')!.demand
    expect(plastic(both)).toBe(Math.max(plastic(along), plastic(across)))
  })
  it('calls a lift without walls a bug', () =>
    expect(() => cureLifts(job, [], [lift('X1', 'X', 0)], hours)).toThrow('belongs to a section with walls'))
})

describe('checkCooling', () => {
  it('warns of a warm wall uncovered into the cold and of no other', () => {
    const winter = hoursFromNormals(dryInland, job.site, '2026-01-10', 8).map(hour => ({
      ...hour,
      air: hour.air - 15,
    }))
    const weather = wallWeather(job.site, winter, { leftBearing: 0, height: 0.5 })
    const heat = wallHeat({
      build: { kind: 'solid', beadWidth: 0.05, thickness: 0.4 },
      mix: job.mix,
      weather,
      start: weather.first + 36000,
      mixTemperature: 22,
      covers: [{ from: 0, cover: 'insulated-blanket' }],
    })
    expect(checkCooling('B3', heat, weather, heat.start + 12 * 3600, 0.4)).toMatchObject([
      { verdict: 'warn', capacity: 22, unit: 'K' },
    ])
    const bare = wallHeat({
      build: { kind: 'single', beadWidth: 0.05, thickness: 0.05 },
      mix: job.mix,
      weather,
      start: weather.first + 36000,
      mixTemperature: 22,
      covers: [],
    })
    expect(checkCooling('B3', bare, weather, bare.start + 3 * 86400, 0.05)).toEqual([])
  })
})
