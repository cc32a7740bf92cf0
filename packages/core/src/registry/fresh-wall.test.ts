import { describe, expect, it } from 'vitest'
import { calculateFormula } from '../formula/index.js'
import { allFormulas } from './index.js'

const formula = (name: string) => {
  const found = allFormulas.find(each => each.name === name)
  if (!found) throw new Error(`no formula ${name}`)
  return found
}
const answer = (name: string, more: Readonly<Record<string, number>> = {}): number => {
  const { inputs, calculate } = formula(name)
  return calculate({ ...Object.fromEntries(inputs.map(each => [each.name, each.example])), ...more })
}

// L₀ of the example leaf, 100 kPa, 50 mm, 2150 kg/m³: (1e5·0.05²/(12·0.91·2150·9.81))^⅓ = 0.102771 m
const unit = 0.102771
// the wall's length in metres where heights are tabulated over a width of 10·L₀
const wide = { curing: 0, length: 10 * unit }

describe('formulas of the fresh wall, in shown units', () => {
  it.each([
    // stand
    ['collapse-height-exponential', { curing: 0.131822 }, 9.0672 * 0.284475, 'closed form: r 10, ξ̄ 0.25'],
    ['collapse-layers', {}, 25, 'hand: 2(3000 − 0.2·480)/(421.83 − 2·0.2·480) = 25.27'],
    ['von-mises-strength', {}, 8.4524, 'hand: √3(2000 + 0.8·3600)'],
    ['free-buckling-height', {}, 0.254623, 'independent: integration, scipy 1.17.1'],
    ['free-buckling-height-exponential', {}, 0.422359, 'independent: integration, scipy 1.17.1'],
    ['buckling-height-fit', {}, 0.262586, 'hand: ξ̄ 0.4933'],
    ['strip-buckling-height', wide, 2.1317 * unit, 'independent: table of another code'],
    ['strip-buckling-height-clamped', wide, 2.2358 * unit, 'independent: table of another code'],
    ['ring-buckling-factor', {}, 0.143423, 'hand: 0.605·1e5·0.05/(2150·9.81)'],
    ['curvature-gain', { length: 3 }, 4.02492, 'hand: 0.9/√0.05, under the inertia’s 541'],
    ['wind-cracking', {}, 17.5763, 'hand: 2·21,091.5·0.05²/6'],
    ['construction-wind', {}, 0.75, 'published [ASCE37], from memory'],
    // bond, mix
    ['drying-rest', {}, 30, 'hand: 0.25/0.5 h'],
    ['age-at-yield', {}, 60, 'hand: (2800 − 1000)/0.5 s'],
    // pump, nozzle
    ['hose-aggregate-rounded', {}, 20, 'published [ACI304-2R], second-hand'],
    ['hose-rise', {}, 0.67689, 'hand: 2300·9.81·3'],
    ['hose-wall-stress', {}, 625, 'hand: 10 bar·0.05/(4·20)'],
    ['hose-stopped', {}, 33.3409, 'hand: 50 − 25·exp(−0.40592)'],
    ['nozzle-temperature', {}, 33.4978, 'hand: 53.628 + (32.184 − 53.628)·0.93874'],
    ['nozzle-water', {}, 6.0908, 'hand: 20 − 5.4978/(0.42105·0.93874)'],
    ['nozzle-ice', {}, 13.965, 'hand: 5.4978 of 0.16·99.6/0.38·0.93874'],
    // machine, trials
    ['pump-setting', {}, 95, 'hand: 15 + 10·8'],
    ['bead-width', {}, 46.5143, 'hand: 42.2222 + 20(1 − π/4)'],
    ['bead-pump-flow', {}, 8.66045, 'hand: 914.159 mm²·150 mm/s/0.95'],
    ['corner-widening', {}, Math.SQRT2, 'closed form'],
    // pours
    ['pour-column-rate', {}, 1.57941, 'hand: (40 − 7.2)·37.8/785'],
    ['pour-weight-factor', { density: 2000 }, 0.931034, 'hand: ½(1 + 2000/2320)'],
  ] as const)('%s with %j gives %d (%s)', (name, more, expected, _origin) =>
    expect(Math.abs(answer(name, more) / expected - 1)).toBeLessThan(
      // tables of four decimals, heights by march and bisection; else print rounding
      name.includes('buckling-height') ? 1e-3 : 2e-5,
    ),
  )

  it('give back what another turned round', () => {
    const rate = answer('pour-column-rate', { pressure: 50 })
    expect(answer('pour-column', { rate, height: 9 })).toBeCloseTo(50, 6)
    const water = answer('nozzle-water', { target: 30 })
    expect(answer('nozzle-temperature', { water })).toBeCloseTo(30, 9)
  })

  // Never an infinite height by accident: it is no answer, and what it would mean is said.
  it.each([
    ['collapse-height', { rate: '5 Pa/s' }, 'it never does'],
    ['strip-buckling-height', { length: '0.3 m', curing: '50 kPa/min' }, 'not up to 20 m'],
    ['drying-rest', { evaporation: '0 kg/m²/h' }, 'it does not dry'],
    ['age-at-yield', { rate: '0 Pa/s' }, 'never'],
  ])('%s says what it means to have no end', (name, more, words) => {
    const example = Object.fromEntries(
      formula(name).inputs.map(each => [each.name, `${each.example} ${each.unit}`.trim()]),
    )
    const read = calculateFormula(formula(name), { ...example, ...more })
    expect(read.ok ? '' : read.problems[0]!.say).toMatch(new RegExp(`: ${words}$`))
  })

  it.each([
    ['hose-pressure-bingham', { flow: '0 L/min' }, 'flow is 0 L/min, outside the range of the source'],
    ['yield-stress-linear', { age: '-5 min' }, 'age is -5 min, outside the range of the source'],
    ['free-buckling-height', { modulus: '0 kPa' }, 'modulus is 0 kPa, outside the range of the source'],
    ['strip-buckling-height', { curing: '-5 kPa/min' }, 'curing is -5 kPa/min, outside the range'],
    ['spread-yield-stress', { diameter: '0 mm' }, 'diameter is 0 mm, outside the range'],
    ['pour-column-rate', { pressure: '10 kPa' }, 'even 30 kPa is too much'],
  ])('%s of an input that cannot be is a problem that names it', (name, more, words) => {
    const example = Object.fromEntries(
      formula(name).inputs.map(each => [each.name, `${each.example} ${each.unit}`.trim()]),
    )
    const read = calculateFormula(formula(name), { ...example, ...more })
    expect(read.ok ? '' : read.problems[0]!.say).toContain(words)
  })
})
