import { describe, expect, it } from 'vitest'
import { ageFactor, defaultMix, type MixModel } from '../mix/index.js'
import { assessLift } from './assess-lift.js'
import type { PaceTable } from './pace-table.js'
import type { StandPanel } from './stand-geometry.js'
import { makeStanding, standRulesOf } from './standing.js'

const rule = (value: number) => ({ value, source: 'the job' })
const rules = { standSafety: rule(1.5), imperfection: rule(0.6) }
const double = { kind: 'double', thickness: 0.25, bead: 0.05, web: 'zigzag', pitch: 0.6 } as const
const panel = (changes: Partial<StandPanel> = {}): StandPanel => ({
  place: 'wall A, 0.00–3.00 m',
  wall: 'A',
  from: 0,
  to: 3,
  length: 3,
  bottom: 0,
  top: 2.7,
  supports: 'both',
  make: double,
  ...changes,
})
const trial = (layerTime: number, layers = 50, temperature = 20) => ({
  section: 'A',
  firstLayer: 1,
  start: 1_784_000_000,
  layerEnds: Array.from({ length: layers }, (_, i) => 1_784_000_000 + (i + 1) * layerTime),
  temperature,
})
const standing = (panels: readonly StandPanel[], mix: MixModel = defaultMix, strict = rules) =>
  makeStanding({ mix, print: { layerHeight: 0.02 }, rules: strict, sections: [{ section: 'A', panels }] })

describe('the standing function of a job', () => {
  it('lets a slower pace stand at least as high', () => {
    const stands = standing([panel()])
    const heights = [120, 240, 360, 480].map(time => stands(trial(time)).layers)
    expect(heights).toEqual([...heights].sort((a, b) => a - b))
    expect(heights[3]).toBeGreaterThan(heights[0]!)
  })

  it('lets a warmer mix stand at least as high', () => {
    const stands = standing([panel()])
    const heights = [5, 15, 25, 35].map(temperature => stands(trial(300, 50, temperature)).layers)
    expect(heights).toEqual([...heights].sort((a, b) => a - b))
  })

  it('stops a mix that never sets where the foot yields: n = σ/(ρgh·S), rounded down', () => {
    const yielding = { kind: 'linear', start: 4000, rate: 0 } as const
    const mix = { ...defaultMix, lower: { yield: yielding, stiffness: { start: 1e7, rate: 0, bend: 0 } } }
    const { layers, limit } = standing([panel()], mix)(trial(400))
    // hand: √3·4000/(2150·9.81·0.02·1.5) = 10.95
    expect(layers).toBe(10)
    expect(limit.kind).toBe('collapse')
  })

  it('stops a stiffening-free single leaf at imperfection/safety of the height of Greenhill', () => {
    const strong = { kind: 'linear', start: 1e6, rate: 0 } as const
    const mix = {
      ...defaultMix,
      density: 2070,
      lower: { yield: strong, stiffness: { start: 78100, rate: 0, bend: 0 } },
    }
    const leaf = panel({ supports: 'none', make: { kind: 'leaf', thickness: 0.055 } })
    const stands = makeStanding({
      mix,
      print: { layerHeight: 0.001 },
      rules,
      sections: [{ section: 'A', panels: [leaf] }],
    })
    // hand: (7.83735·78100·0.055²/(12·2070·9.81))^⅓ = 0.1966 m as a cantilever; shear with k = 1.42·π/(2·0.1893) makes
    // the leaf 1 + k²h²/(5·0.7) = 1.120 times softer, so 0.1893 m; times 0.6/1.5 = 75.7 layers of 1 mm, rounded down.
    expect(stands(trial(60, 150)).layers).toBe(75)
  })

  it('names the place that governs', () => {
    const make = { kind: 'leaf', thickness: 0.2 } as const
    const panels = [
      panel({ make }),
      panel({ make, place: 'wall B, 1.00–9.00 m', length: 8, supports: 'none' }),
    ]
    expect(standing(panels)(trial(480)).governs.place).toBe('wall B, 1.00–9.00 m')
  })

  it('refuses the first layer of a mix too soft to keep its shape', () => {
    const soft = { kind: 'linear', start: 200, rate: 1 } as const
    const mix = { ...defaultMix, lower: { ...defaultMix.lower, yield: soft } }
    const { layers, limit } = standing([panel()], mix)(trial(400))
    expect(layers).toBe(0)
    expect(limit.kind).toBe('first-layer')
  })

  it('judges a lift of a whole storey too', () => {
    const { layers, limit, safety } = standing([panel()])(trial(900, 140))
    expect(layers).toBeGreaterThan(30)
    expect(limit.capacity / limit.demand).toBeLessThan(1)
    expect(safety).toBeGreaterThanOrEqual(1.5)
  })

  it('judges uneven layers at their own clock, not at the pace of the quickest', () => {
    const even = trial(600, 50)
    const quick = { ...even, layerEnds: even.layerEnds.map((end, i) => (i >= 1 ? end - 420 : end)) }
    const stands = standing([panel()])
    expect(stands(quick).layers).toBeGreaterThan(stands(trial(180, 50)).layers)
    expect(stands(quick).layers).toBeLessThanOrEqual(stands(even).layers)
  })

  it('keeps its answer when the same lift is asked again', () => {
    const stands = standing([panel()])
    expect(stands(trial(400))).toEqual(stands({ ...trial(400), start: 1_784_000_000 }))
  })

  it('judges a lift at its own clock as one judged from nothing, and once for two plans of one wall', () => {
    const input = {
      mix: defaultMix,
      print: { layerHeight: 0.02 },
      rules,
      sections: [{ section: 'A', panels: [panel(), panel({ place: 'wall B', length: 1, supports: 'one' })] }],
    }
    const even = trial(300, 50)
    const uneven = {
      ...even,
      layerEnds: even.layerEnds.map((end, i) => end + 120 * Math.min(40, i)),
    }
    const tables = new Map<string, PaceTable>()
    const { layers, limit, safety, governs } = makeStanding(input, tables)(uneven)
    const ends = uneven.layerEnds.map(end => end - uneven.start)
    const factor = ageFactor(uneven.temperature, defaultMix)
    const alone = assessLift(input.sections[0]!, 1, { layerHeight: 0.02, ends, factor }, standRulesOf(input))
    expect({ layers, limit, safety, governs }).toEqual(alone)
    expect(layers).toBeLessThan(50)
    const [table] = tables.values()
    const known = table!.size()
    makeStanding(input, tables)({ ...uneven, section: 'A' })
    expect(table!.size()).toBe(known)
  })
})
