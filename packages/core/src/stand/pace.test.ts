import { describe, expect, it } from 'vitest'
import { foreignUnits } from '../../../../tests/foreign-units.js'
import { defaultMix, type MixModel } from '../mix/index.js'
import { checkStanding } from './check-standing.js'
import { formulas } from './formulas.js'
import { evenEnds, shortestLayerTime, tallestLift } from './pace.js'
import { standChart } from './stand-chart.js'
import type { StandPanel } from './stand-geometry.js'
import { makeStanding } from './standing.js'
import { checkWind, windSpeedBorne } from './wind-check.js'

const rule = (value: number) => ({ value, source: 'the job' })
const make = { kind: 'double', thickness: 0.25, bead: 0.05, web: 'zigzag', pitch: 0.6 } as const
const panel: StandPanel = {
  place: 'wall A, 0.00–3.00 m',
  wall: 'A',
  from: 0,
  to: 3,
  length: 3,
  bottom: 0,
  top: 2.7,
  supports: 'both',
  make,
}
const inputOf = (mix: MixModel = defaultMix) => ({
  mix,
  print: { layerHeight: 0.02 },
  rules: { standSafety: rule(1.5), imperfection: rule(0.6) },
  sections: [{ section: 'A', panels: [panel] }],
})
const lift = { section: 'A', firstLayer: 1, layers: 40, temperature: 20 }
const paces = { fastest: 30, slowest: 3600 }
const never: MixModel = {
  ...defaultMix,
  lower: { yield: { kind: 'linear', start: 3000, rate: 0 }, stiffness: { start: 3e5, rate: 0, bend: 0 } },
}

describe('both directions', () => {
  it('agree: the lift stands at the shortest layer time and not two seconds faster', () => {
    const answer = shortestLayerTime(inputOf(), lift, paces)
    if (answer.kind !== 'time') throw new Error('the lift stands at some pace')
    expect(tallestLift(inputOf(), lift, answer.layerTime).allAsked).toBe(true)
    expect(tallestLift(inputOf(), lift, answer.layerTime - 2).allAsked).toBe(false)
  })
  it('answer never, not a time, for a mix that never sets', () => {
    const answer = shortestLayerTime(inputOf(never), lift, paces)
    expect(answer.kind).toBe('never')
    expect(answer.assessment.limit.kind).toBe('collapse')
  })
  it('answer a finite height for a mix that never sets, however slow', () => {
    expect(tallestLift(inputOf(never), { ...lift, layers: 400 }, 36_000).layers).toBeLessThan(20)
  })
  it('give the height the scheduler is given', () => {
    const { layers } = tallestLift(inputOf(), lift, 300)
    const trial = { section: 'A', firstLayer: 1, start: 1000, temperature: 20 }
    const standing = makeStanding(inputOf())({
      ...trial,
      layerEnds: evenEnds(40, 300).map(end => end + 1000),
    })
    expect(standing.layers).toBe(layers)
  })
})

describe('the chart of height against time', () => {
  const chart = standChart(inputOf(), { ...lift, start: 0, layerEnds: evenEnds(30, 420) })
  it('has a moment for every layer, in the order of time', () => {
    expect(chart.moments).toHaveLength(30)
    expect(chart.moments[29]).toMatchObject({ layers: 30, time: 30 * 420, height: 0.6 })
  })
  it('gives a foot that gets stronger', () => {
    const heights = chart.moments.map(({ collapseHeight }) => collapseHeight)
    expect(heights).toEqual([...heights].sort((a, b) => a - b))
  })
  it('allows what the scheduler allows at every moment', () => {
    const standing = makeStanding(inputOf())
    for (const moment of chart.moments) {
      const layerEnds = evenEnds(moment.layers, 420)
      const { layers, safety, governs } = standing({ ...lift, start: 0, layerEnds })
      expect(moment.allowedHeight).toBeCloseTo((layers * 0.02 * safety) / 1.5, 12)
      expect(moment.place).toBe(governs.place)
    }
  })
  it('allows at least the tallest lift at this pace, and less than one layer more', () => {
    const asked = { ...lift, layers: 60 }
    const tallest = tallestLift(inputOf(), asked, 420)
    const long = standChart(inputOf(), { ...lift, start: 0, layerEnds: evenEnds(tallest.layers + 2, 420) })
    expect(tallest.allAsked).toBe(false)
    const stands = long.moments.map(moment => moment.allowedHeight >= moment.height * 0.98)
    expect(stands.slice(0, tallest.layers).every(Boolean)).toBe(true)
    expect(long.moments.at(-1)!.allowedHeight).toBeLessThan(long.moments.at(-1)!.height)
  })
})

describe('bad input for standing', () => {
  it('is none for the default mix', () => expect(checkStanding(inputOf())).toEqual([]))
  it('is a stiffness of zero or NaN, a strength of zero, and rules without sense, all told at once', () => {
    const soft = {
      yield: { kind: 'linear', start: 0, rate: 0 },
      stiffness: { start: Number.NaN, rate: 0, bend: 0 },
    } as const
    const input = {
      ...inputOf({ ...defaultMix, lower: soft }),
      rules: { standSafety: rule(0), imperfection: rule(2) },
    }
    const codes = new Set(checkStanding(input).map(({ code }) => code))
    expect(codes).toEqual(
      new Set(['stand/no-strength', 'stand/no-stiffness', 'stand/safety', 'stand/imperfection']),
    )
  })
  it('is a modulus that falls below zero inside the tested time', () => {
    const falling = { ...defaultMix.lower, stiffness: { start: 1e5, rate: 0, bend: -1 } }
    const codes = checkStanding(inputOf({ ...defaultMix, lower: falling })).map(({ code }) => code)
    expect(codes).toContain('stand/no-stiffness')
  })
})

describe('what is said of bad input for standing', () => {
  const soft = {
    yield: { kind: 'linear', start: -20, rate: 0 },
    stiffness: { start: 0, rate: 0, bend: 0 },
  } as const
  const input = {
    ...inputOf({ ...defaultMix, density: 200, lower: soft }),
    print: { layerHeight: -0.02 },
    sections: [{ section: 'A', panels: [{ ...panel, make: { ...make, pitch: 0.03, thickness: 0.04 } }] }],
  }
  it.each(['metric', 'imperial'] as const)('is in the units of a job that is %s', units => {
    const said = checkStanding({ ...input, units }).map(({ say }) => say)
    expect(said.length).toBeGreaterThan(6)
    expect(said.flatMap(each => foreignUnits(each, units))).toEqual([])
  })
  it('tells a modulus that falls below zero in the unit it is thought in, and one that is none', () => {
    const lower = { ...soft, stiffness: { start: 2e5, rate: -100, bend: 0 } }
    const said = (stiffness: MixModel['lower']['stiffness']) =>
      checkStanding(inputOf({ ...defaultMix, lower: { ...lower, stiffness } }))
        .map(({ say }) => say)
        .join(' ')
    expect(said(lower.stiffness)).toMatch(/The stiffness at an age of [\d.]+ h is -[\d.]+ (kPa|MPa);/)
    expect(said({ start: Number.NaN, rate: 0, bend: 0 })).toContain(
      'The stiffness at the nozzle is no number;',
    )
  })
  it('tells a stress of nothing from a small one, and when', () => {
    const said = checkStanding(input)
      .map(({ say }) => say)
      .join('\n')
    expect(said).toContain('The yield stress at the nozzle is -20 Pa; it has to be above 0.')
    expect(said).toContain('Found 200 kg/m³; allowed is 500 kg/m³ to 8000 kg/m³.')
    expect(said).toContain('Found 30 mm; allowed is more than a bead, 50 mm.')
  })
})

describe('a wall in the wind', () => {
  const wall = { place: 'wall A', make, density: 2150, state: 'green', height: 1, jointTension: 0 } as const
  const rules = { coefficient: 1.4, safety: 1.5 }
  it('bears less the higher it is', () => {
    const speeds = [0.5, 1, 2].map(height => windSpeedBorne({ ...wall, height }, rules))
    expect(speeds).toEqual([...speeds].sort((a, b) => b - a))
  })
  it('bears more once its joints bear tension', () => {
    const hard = { ...wall, state: 'hard', height: 2.7 } as const
    expect(windSpeedBorne({ ...hard, jointTension: 1e5 }, rules)).toBeGreaterThan(windSpeedBorne(hard, rules))
  })
  it('is told with its numbers and its caution', () => {
    const finding = checkWind(wall, 60, rules)
    expect(finding.verdict).toBe('fail')
    expect(finding.say).toMatch(/licensed engineer/)
  })
})

describe('the standing formulas of the registry', () => {
  it.each(formulas)('answer a number for their example: $name', formula => {
    const inputs = Object.fromEntries(formula.inputs.map(({ name, example }) => [name, example]))
    expect(formula.calculate(inputs)).toBeGreaterThan(0)
  })
  it('have names of their own', () =>
    expect(new Set(formulas.map(({ name }) => name)).size).toBe(formulas.length))
})
