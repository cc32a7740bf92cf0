import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  convertUnit,
  type Dimension,
  formatClock,
  formatPlace,
  formatQuantity,
  parseClock,
  parseQuantity,
  unitTable,
  writeQuantity,
} from './index.js'

const read = (text: string, dimension: Dimension): number => {
  const result = parseQuantity(text, dimension)
  if (!result.ok) throw new Error(result.problems[0]?.say)
  return result.value
}

const refusal = (text: string, dimension: Dimension): string => {
  const result = parseQuantity(text, dimension)
  return result.ok ? `read as ${result.value}` : (result.problems[0]?.code ?? '')
}

const dimensions = Object.keys(unitTable) as Dimension[]

describe('parseQuantity', () => {
  // Origin: the definitions of inch (25.4 mm), pound (0.45359237 kg), US gallon (231 in³), standard gravity
  // (9.80665 m/s²) and °F; published (NIST Special Publication 811, appendix B, from memory) or hand arithmetic from them.
  // Tolerance: the digits printed here.
  const rows: readonly (readonly [string, Dimension, number, number])[] = [
    ['2.46 m', 'length', 2.46, 1e-12],
    ['8\' 1"', 'length', 97 * 0.0254, 1e-12],
    ['8 ft 1 in', 'length', 97 * 0.0254, 1e-12],
    ['8\' 1 1/2"', 'length', 97.5 * 0.0254, 1e-12],
    ['8\'-1 1/2"', 'length', 97.5 * 0.0254, 1e-12],
    ['8′ 1 1/2″', 'length', 97.5 * 0.0254, 1e-12],
    ['-8\' 6"', 'length', -102 * 0.0254, 1e-12],
    ['1/2 in', 'length', 0.0127, 1e-12],
    ['2,5 m', 'length', 2.5, 1e-12],
    ['18 mm', 'length', 0.018, 0],
    ['7.5 cm', 'length', 0.075, 0],
    ['0,150 m', 'length', 0.15, 1e-12],
    ['2\u202f460 mm', 'length', 2.46, 1e-12],
    ['20mm', 'length', 0.02, 1e-12],
    ['32 °C', 'temperature', 32, 1e-12],
    ['90 °F', 'temperature', 32.2222, 5e-5],
    ['−40 °F', 'temperature', -40, 1e-9],
    ['300 K', 'temperature', 26.85, 1e-9],
    ['9 °F', 'temperatureDifference', 5, 1e-12],
    ['25 km/h', 'windSpeed', 6.94444, 5e-6],
    ['20 mph', 'windSpeed', 8.9408, 5e-7],
    ['15 psi', 'pressure', 103421.36, 5e-3],
    ['4000 psi', 'pressure', 27579029, 1],
    ['1500 Pa.s', 'viscosity', 1500, 1e-9],
    ['1500 Pa s', 'viscosity', 1500, 1e-9],
    ['0.5 kg/m²/h', 'evaporation', 0.5, 1e-12],
    ['0.2 lb/ft2/h', 'evaporation', 0.97649, 5e-6],
    ['7 min', 'time', 420, 1e-12],
    ['1 h 30 min', 'time', 5400, 1e-12],
    ['3 gal/min', 'flow', 1.8927059e-4, 5e-12],
    ['140 lb/ft³', 'density', 140 * 16.01846, 7e-4],
    ['90°', 'angle', Math.PI / 2, 1e-12],
    ['50 %', 'share', 0.5, 1e-12],
    ['0.5', 'share', 0.5, 1e-12],
    ['0.5 1/d', 'rateConstant', 0.5 / 86400, 1e-15],
  ]
  it.each(rows)('reads “%s” as %s', (text, dimension, expected, tolerance) =>
    expect(Math.abs(read(text, dimension) - expected)).toBeLessThanOrEqual(tolerance),
  )

  it.each([
    ['2.46', 'length', 'quantity/no-unit'],
    ['', 'length', 'quantity/empty'],
    ['about 3 m', 'length', 'quantity/not-a-number'],
    ['1,500 mm', 'length', 'quantity/ambiguous-comma'],
    ['1 500 mm', 'length', 'quantity/unknown-unit'],
    ['3 kg', 'length', 'quantity/unknown-unit'],
    ['3 MM', 'length', 'quantity/unknown-unit'],
    ['15 mPa', 'pressure', 'quantity/unknown-unit'],
    ['6" 8\'', 'length', 'quantity/mixed-units'],
    ['8 ft 1 m', 'length', 'quantity/mixed-units'],
    ['8 ft -1 ft', 'length', 'quantity/mixed-units'],
    ['1/0 in', 'length', 'quantity/not-a-number'],
    ['1e999 m', 'length', 'quantity/not-a-number'],
    ['NaN m', 'length', 'quantity/not-a-number'],
    ['Infinity m', 'length', 'quantity/not-a-number'],
  ] as const)('refuses “%s” as a %s: %s', (text, dimension, code) =>
    expect(refusal(text, dimension)).toBe(code),
  )

  it('names the unit meant when only the capitals are wrong', () => {
    const result = parseQuantity('3 MM', 'length')
    expect(result.ok ? '' : result.problems[0]?.say).toContain('did you mean “mm”?')
  })

  it('never throws and never answers NaN, whatever the text', () =>
    fc.assert(
      fc.property(fc.string(), fc.constantFrom(...dimensions), (text, dimension) => {
        const result = parseQuantity(text, dimension)
        return !result.ok || Number.isFinite(result.value)
      }),
    ))
})

describe('writing and reading back', () => {
  it('gives the same number for every unit of every dimension', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...dimensions),
        fc.nat(),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (dimension, pick, value) => {
          const units = unitTable[dimension].units
          const unit = units[pick % units.length]!
          const back = read(writeQuantity(value, dimension, unit.names[0]), dimension)
          // 15 significant digits are written; an offset (°F, K) costs up to its own rounding.
          return (
            Math.abs(back - value) <=
            1e-14 * Math.abs(value) * 20 + Math.abs(unit.offset ?? 0) * 1e-13 + 1e-300
          )
        },
      ),
    ))

  it('keeps lengths within 1/32 inch in feet and inches', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -500, max: 500, noNaN: true }),
        metres =>
          Math.abs(read(formatQuantity(metres, 'length', 'imperial'), 'length') - metres) <=
          0.0254 / 32 + 1e-9,
      ),
    ))

  it('keeps every shown quantity within half its step', () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...dimensions.filter(each => each !== 'length')),
        fc.constantFrom('metric', 'imperial'),
        fc.double({ min: -2000, max: 2000, noNaN: true }),
        (dimension, units, shown) => {
          const table = unitTable[dimension]
          const inside = read(`${shown} ${table.shown[units]}`, dimension)
          const back = read(formatQuantity(inside, dimension, units), dimension)
          const step = read(`${table.step[units]} ${table.shown[units]}`, dimension)
          const zero = read(`0 ${table.shown[units]}`, dimension)
          return Math.abs(back - inside) <= (step - zero) * 0.5001
        },
      ),
    ))

  it.each([
    [2.4638, '8\' 1"'],
    [2.4765, '8\' 1 1/2"'],
    [0.0127, '1/2"'],
    [0.3048, '1\' 0"'],
    [-0.0254, '-1"'],
    [0.3047, '1\' 0"'],
    [0, '0"'],
  ])('shows %d m as %s', (metres, text) => expect(formatQuantity(metres, 'length', 'imperial')).toBe(text))
  it.each([
    [0.9994, '999 mm'],
    // hand: 999.6 mm rounds to 1000 of them, and those are a metre.
    [0.9996, '1 m'],
    [-0.9996, '-1 m'],
  ])('shows %d m as %s by the metric measure', (metres, text) =>
    expect(formatQuantity(metres, 'length', 'metric')).toBe(text),
  )
})

describe('formatPlace', () => {
  // Hand: 4 ft 1 3/16 in = 1.249 m; 2 ft 7 1/2 in = 0.8001 m.
  it('gives both coordinates as the site measures them', () => {
    expect(formatPlace([1.249, 0.8001], 'metric')).toBe('(1.25, 0.80 m)')
    expect(formatPlace([1.24936, 0.8001], 'imperial')).toBe(`(4' 1 3/16", 2' 7 1/2")`)
  })
})

describe('convertUnit', () => {
  it('turns °F into °C as temperatures', () => expect(convertUnit(212, '°F', '°C')).toBeCloseTo(100, 9))
  it('knows no way from metres to kilograms', () => expect(convertUnit(1, 'm', 'kg')).toBeUndefined())
  it('leaves a unit outside the table alone', () => expect(convertUnit(3, 'W/m²K', 'W/m²K')).toBe(3))
})

describe('clock times', () => {
  it.each([
    ['5:00', 18000],
    ['05:30', 19800],
    ['17:45:10', 63910],
    ['5:30 pm', 63000],
    ['12:00 am', 0],
    ['24:00', 86400],
  ])('reads %s', (text, seconds) => {
    const result = parseClock(text)
    expect(result.ok && result.value).toBe(seconds)
  })
  it.each(['5', '25:00', '5:60', '13:00 pm', '24:01', 'noon', '0:00 am'])('refuses “%s”', text =>
    expect(parseClock(text).ok).toBe(false),
  )
  it('come back to the minute they were written at', () =>
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1440 }), minutes => {
        const result = parseClock(formatClock(minutes * 60))
        return result.ok && result.value === minutes * 60
      }),
    ))
})
