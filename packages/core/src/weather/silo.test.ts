import { describe, expect, it } from 'vitest'
import { dryInland, summerSite } from './fixtures/summer-site.js'
import { hoursFromNormals, siloGainOf, siloTemperatures, solAir } from './index.js'

const { site } = summerSite
const silo = { diameter: 2.4, height: 5, mass: 20000, absorptance: 0.6 }
const hours = hoursFromNormals(dryInland, site, '2026-07-01', 31)
const shade = hours.map(hour => ({ ...hour, air: 30, global: 0, beam: 0, diffuse: 0 }))

describe('siloTemperatures', () => {
  it('cools a warm silo in steady shade by one exponential', () => {
    const run = siloTemperatures(site, shade, silo, 60)
    // closed form: U = 1/(1/15 + 1/3) = 2.5 W/m²K over 37.699 m² and 20 t · 921.14 J/kgK.
    const rate = (2.5 * Math.PI * 2.4 * 5) / (20000 * 0.22 * 4187)
    expect(run[0]).toBeCloseTo(30 + 30 * Math.exp(-rate * 3600), 9)
    expect(run[99]).toBeCloseTo(30 + 30 * Math.exp(-rate * 360000), 9)
  })
  it('settles at the mean of sun and air', () => {
    const small = siloTemperatures(site, hours, { ...silo, mass: 3000 }, 25)
    const settled = small.slice(-240).reduce((a, b) => a + b, 0) / 240
    const lastDays = hours.slice(-240)
    const air = lastDays.reduce((sum, hour) => sum + hour.air, 0) / 240
    // The mean of a linear body is the mean of what drives it; half a kelvin for the month's drift.
    expect(Math.abs(settled - air - siloGainOf(site, lastDays, silo))).toBeLessThan(0.5)
  })
  it('swings less the more it holds, and gains less when white', () => {
    const swing = (mass: number) => {
      const run = siloTemperatures(site, hours, { ...silo, mass }, 28).slice(-24)
      return Math.max(...run) - Math.min(...run)
    }
    expect(swing(2000)).toBeGreaterThan(3 * swing(20000))
    expect(siloGainOf(site, hours, { absorptance: 0.3 })).toBeCloseTo(siloGainOf(site, hours, silo) / 2, 9)
  })
})

describe('solAir', () => {
  // hand [ASHRAE2017]: to + a I/17, two decimals.
  it.each([
    [35, 0.6, 800, 63.24],
    [30, 0.9, 900, 77.65],
    [30, 0.45, 700, 48.53],
  ])('at %d °C, keeping %d of %d W/m², is %d °C', (air, absorbed, sun, wanted) =>
    expect(solAir(air, absorbed, sun, 17)).toBeCloseTo(wanted, 2),
  )
  it('is 3.7 K lower on a roof under a clear sky', () =>
    expect(solAir(30, 0, 0, 17, 63)).toBeCloseTo(30 - 3.70588, 4))
})
