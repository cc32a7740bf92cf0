import { describe, expect, it } from 'vitest'
import {
  evaporationMenzel,
  evaporationPerHour,
  evaporationUnrounded,
  latentHeat,
  windAtHeight,
} from './index.js'

const mph = 0.44704
const fahrenheit = (f: number) => (f - 32) / 1.8
const near = (found: number, wanted: number, relative: number) =>
  expect(Math.abs(found - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted))

describe('evaporationPerHour', () => {
  // hand: the two forms worked out independently in double precision; 0.5 % is the print.
  // Tc, Ta, r, V km/h → rounded form, unrounded form
  it.each([
    [30, 30, 0.5, 20, 0.9578, 0.9998],
    [25, 25, 0.5, 10, 0.4244, 0.4427],
    [35, 35, 0.2, 25, 2.372, 2.479],
    [20, 5, 0.5, 20, 0.9159, 0.9547],
  ])(
    'over %d °C in air of %d °C, humidity %d, %d km/h has its two values',
    (concrete, air, humidity, kmh, rounded, exact) => {
      const drying = { air, humidity, wind: kmh / 3.6 }
      near(evaporationPerHour(drying, concrete), rounded, 0.005)
      near(evaporationUnrounded(drying, concrete), exact, 0.005)
    },
  )

  it('meets the chart’s own reading of 0.25 lb/ft²h within 6 %', () =>
    // published [ACI305-2010] chart, from memory; a chart is read to 5 or 6 %. 80 °F, 50 %, concrete 87 °F, 12 mph.
    near(
      evaporationUnrounded({ air: fahrenheit(80), humidity: 0.5, wind: 12 * mph }, fahrenheit(87)) / 4.8824,
      0.25,
      0.06,
    ))

  it('is nothing over concrete as warm as saturated air, and dew on colder concrete', () => {
    expect(evaporationPerHour({ air: 30, humidity: 1, wind: 3 }, 30)).toBe(0)
    expect(evaporationPerHour({ air: 30, humidity: 1, wind: 3 }, 20)).toBeLessThan(0)
  })
  it('grows with wind and dryness', () => {
    const at = (humidity: number, wind: number) => evaporationPerHour({ air: 30, humidity, wind }, 32)
    expect(at(0.2, 3)).toBeGreaterThan(at(0.5, 3))
    expect(at(0.5, 6)).toBeGreaterThan(at(0.5, 3))
  })
  it('counts metres per second where the source counts kilometres per hour', () =>
    // A wind of 10 m/s is 36 km/h: (36 + 4)/(0 + 4) times still air.
    near(
      evaporationPerHour({ air: 30, humidity: 0.5, wind: 10 }, 30) /
        evaporationPerHour({ air: 30, humidity: 0.5, wind: 0 }, 30),
      10,
      1e-12,
    ))
})

describe('evaporationMenzel', () => {
  // published [Lerch1957] table of drying conditions, from memory; each cell agrees with the independent formula within 7 %
  // (the table rounds to 0.005). Left out: wind 0 and 5 mph at 70 °F, 50 and 100 °F of row c, 80 °F of row d: unexplained there.
  // concrete °F, air °F, RH %, wind mph, lb/ft²h
  it.each([
    [70, 70, 70, 10, 0.062],
    [70, 70, 70, 15, 0.085],
    [70, 70, 70, 20, 0.11],
    [70, 70, 70, 25, 0.135],
    [70, 70, 90, 10, 0.02],
    [70, 70, 50, 10, 0.1],
    [70, 70, 30, 10, 0.135],
    [70, 70, 10, 10, 0.175],
    [60, 60, 70, 10, 0.043],
    [80, 80, 70, 10, 0.077],
    [90, 90, 70, 10, 0.11],
    [70, 50, 70, 10, 0.125],
    [70, 30, 70, 10, 0.165],
    [80, 40, 100, 10, 0.205],
    [70, 40, 100, 10, 0.13],
    [60, 40, 100, 10, 0.075],
    [80, 40, 50, 25, 0.525],
    [70, 40, 50, 25, 0.357],
    [60, 40, 50, 25, 0.242],
    [70, 40, 50, 0, 0.035],
    [70, 40, 50, 10, 0.162],
    [90, 90, 10, 0, 0.07],
    [90, 90, 10, 10, 0.336],
    [90, 90, 10, 25, 0.74],
  ])('concrete %d °F, air %d °F, %d per cent, %d mph: %d lb/ft²h', (concrete, air, humidity, wind, printed) =>
    near(
      evaporationMenzel(
        { air: fahrenheit(air), humidity: humidity / 100, wind: wind * mph },
        fahrenheit(concrete),
      ) / 4.8824,
      printed,
      0.07,
    ),
  )
})

describe('windAtHeight', () => {
  it('is 0.8706 of it at 3.8 m, and grows with the height', () => {
    // hand: ln 0.38 = −0.967584; /7 = −0.138226; e of it 0.870902.
    near(windAtHeight(1, 3.8), 0.870902, 1e-5)
    const winds = [0.1, 0.5, 2, 10, 50].map(height => windAtHeight(5, height))
    expect(winds).toEqual([...winds].sort((a, b) => a - b))
  })
  it('doubles at 128 times the height', () =>
    // closed form: 2⁷ = 128.
    near(windAtHeight(5, 64) / windAtHeight(5, 0.5), 2, 1e-12))
  it('is the mast’s own wind at 10 m and two thirds of it at 0.5 m', () => {
    expect(windAtHeight(6, 10)).toBe(6)
    // common practice: airport wind × ⅔ at 0.5 m; the power law gives 0.652, print rounding of ⅔.
    near(windAtHeight(6), 4, 0.03)
  })
})

describe('latentHeat', () => {
  // hand: (2501 − 2.361·30)/3.6 = 675.04 W/m² for 1 kg/m²h; rounded print.
  it.each([
    [1, 675],
    [0.5, 338],
    [0.25, 169],
  ])('turns %d kg/m²h at 30 °C into %d W/m²', (rate, watts) =>
    expect(Math.abs((rate / 3600) * latentHeat(30) - watts)).toBeLessThanOrEqual(0.6),
  )
})
