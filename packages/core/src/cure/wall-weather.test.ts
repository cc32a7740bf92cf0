import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dryInland, summerSite } from '../weather/fixtures/summer-site.js'
import {
  cloudTransmission,
  dewPoint,
  evaporationPerHour,
  faceIrradiance,
  haurwitzGlobal,
  hoursFromNormals,
  humidityRatio,
  saturationPressure,
  skyTemperature,
  solarPosition,
} from '../weather/index.js'
import {
  buildingFilm,
  cloudCovers,
  covers,
  faceBalance,
  faceLaw,
  wallWeather,
  windFilm,
  windOfFilm,
} from './index.js'

const { site } = summerSite
const hours = hoursFromNormals(dryInland, site, '2026-07-14', 2)

describe('cloudCovers', () => {
  it('finds the cover that thinned the sun, and keeps it through the night', () => {
    for (const cover of [0, 0.3, 0.7, 1]) {
      const thinned = hours.map(hour => {
        const sine = Math.sin(solarPosition(hour.start + 1800, site.latitude, site.longitude).altitude)
        return { ...hour, global: haurwitzGlobal(sine) * cloudTransmission(cover) }
      })
      const found = cloudCovers(site, thinned)
      expect(found[12]).toBeCloseTo(cover, 6)
      expect(found[26]).toBeCloseTo(cover, 6)
      expect(found[0]).toBe(0.5)
    }
  })
})

describe('wallWeather', () => {
  it('gives each face its own sun, shade taken off the beam alone', () => {
    const open = wallWeather(site, hours, { leftBearing: Math.PI, height: 1 })
    const shaded = wallWeather(site, hours, {
      leftBearing: Math.PI,
      height: 1,
      sunlit: (_, side) => (side === 'left' ? 0 : 1),
    })
    const hour = hours[13]!
    const sun = solarPosition(hour.start + 1800, site.latitude, site.longitude)
    const face = faceIrradiance(hour, sun, Math.PI)
    expect(open.sunLeft[13]).toBeCloseTo(face.total, 9)
    expect(shaded.sunLeft[13]).toBeCloseTo(face.sky + face.ground, 9)
    expect(shaded.sunRight[13]).toBe(open.sunRight[13])
  })
  it('lets the face see half the sky and half the ground', () => {
    const weather = wallWeather(site, hours, { leftBearing: 0, height: 1 })
    const hour = hours[2]!
    const sky = skyTemperature(hour.air, dewPoint(hour.air, hour.humidity), cloudCovers(site, hours)[2]!)
    expect(weather.surroundings[2]! - 273.15).toBeGreaterThan(sky)
    expect(weather.surroundings[2]! - 273.15).toBeLessThan(hour.air)
  })
  it('blows harder higher up', () => {
    const film = (height: number) => wallWeather(site, hours, { leftBearing: 0, height }).film[12]!
    expect(film(3)).toBeGreaterThan(film(0.5))
    // Below half a metre the profile is not trusted.
    expect(film(0)).toBe(film(0.5))
  })
})

describe('buildingFilm', () => {
  // published [ISO6946-2017] annex, from memory, two decimals: Rse with emissivity 0.9 at 10 °C (hr 4.63) for 1 to 10 m/s.
  it.each([
    [1, 0.08],
    [2, 0.06],
    [3, 0.05],
    [4, 0.04],
    [5, 0.04],
    [7, 0.03],
    [10, 0.02],
  ])('at %d m/s makes the table’s %d m²K/W', (wind, printed) =>
    expect(Math.abs(1 / (buildingFilm(wind) + 0.9 * 5.149) - printed)).toBeLessThanOrEqual(0.0051),
  )
})

describe('windFilm', () => {
  it('dries a wet face as the evaporation formula does, from still air to 20 km/h', () => {
    // published [Watmuff1977] by the Lewis analogy against published [Uno1998]: two ways to one rate, within 15 % (each claims 30 to 40 %).
    for (const kmh of [0, 5, 10, 20]) {
      const vapour = humidityRatio(0.5 * saturationPressure(30), 101325)
      const face = {
        air: 30,
        vapour,
        film: windFilm(kmh / 3.6),
        surroundings: 303.15,
        sun: 0,
        pressure: 101325,
      }
      const lewis = faceBalance(face, covers['wet-burlap'], 1, 30).water * 3600
      const index = evaporationPerHour({ air: 30, humidity: 0.5, wind: kmh / 3.6 }, 30)
      expect(Math.abs(lewis / index - 1)).toBeLessThan(0.15)
    }
  })
  it.each([
    // hand: 2.8 + 3·0, 2.8 + 3·1, 2.8 + 3·5.
    [0, 2.8],
    [1, 5.8],
    [5, 17.8],
  ])('at %d m/s is %d W/m²K', (wind, film) => expect(windFilm(wind)).toBeCloseTo(film, 12))
  it('is turned round without loss', () => expect(windOfFilm(windFilm(3.7))).toBeCloseTo(3.7, 12))
})

describe('faceBalance', () => {
  // published [ISO6946-2017] table of the black-body coefficient, from memory, one decimal.
  it.each([
    [-10, 4.1],
    [0, 4.6],
    [10, 5.1],
    [20, 5.7],
    [30, 6.3],
  ])('radiates at %d °C by the table’s %d W/m²K', (mean, printed) => {
    const face = { air: mean, vapour: 0, film: 0, surroundings: mean + 273.15 + 1, sun: 0, pressure: 101325 }
    const black = { ...covers['curing-compound'], emissivity: 1 }
    expect(Math.abs(faceBalance(face, black, 0, mean - 1).longwave / 2 - printed)).toBeLessThanOrEqual(0.05)
  })
  it('lets half the heat through a resistance as large as its film', () => {
    // closed form: h and R = 1/h in a row.
    const face = { air: 20, vapour: 0, film: 10, surroundings: 293.15, sun: 0, pressure: 101325 }
    const sheet = { ...covers['white-sheet'], emissivity: 0, resistance: 0.1 }
    expect(faceBalance(face, sheet, 0, 30).total).toBeCloseTo(-50, 9)
  })
  it('has a law that touches it', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -5, max: 60, noNaN: true }),
        fc.constantFrom(...Object.values(covers)),
        (surface, cover) => {
          const face = { air: 25, vapour: 0.008, film: 11, surroundings: 288, sun: 400, pressure: 98000 }
          const law = faceLaw(face, cover, cover.evaporation === 'none' ? 0 : 1, surface)
          const { total } = faceBalance(face, cover, cover.evaporation === 'none' ? 0 : 1, surface)
          expect(Math.abs(law.gain - law.loss * surface - total)).toBeLessThan(1e-8 * (1 + Math.abs(total)))
        },
      ),
    ))
})
