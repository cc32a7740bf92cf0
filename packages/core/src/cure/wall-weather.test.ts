import { describe, expect, it } from 'vitest'
import { dryInland, summerSite } from '../weather/fixtures/summer-site.js'
import {
  cloudTransmission,
  dewPoint,
  faceIrradiance,
  haurwitzGlobal,
  hoursFromNormals,
  skyTemperature,
  solarPosition,
} from '../weather/index.js'
import { cloudCovers, wallWeather } from './index.js'

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
