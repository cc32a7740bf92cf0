import fc from 'fast-check'
import * as suncalc from 'suncalc'
import { describe, expect, it } from 'vitest'
import { daylight, extraterrestrialBeam, refraction, solarPosition, sunOfDay, sunTrack } from './index.js'

const degrees = 180 / Math.PI
// published [Reda2004] appendix 5, read second-hand: 2003-10-17 12:30:30 at UTC−7.
const place = { latitude: 39.742476, longitude: -105.1786, timeZone: 'Etc/GMT+7' }
const moment = Date.UTC(2003, 9, 17, 19, 30, 30) / 1000

describe('solarPosition', () => {
  it('meets the reference algorithm’s worked example', () => {
    const sun = solarPosition(moment, place.latitude, place.longitude)
    // 0.05°: the claim of the short algorithm without refraction; 0.02° with it.
    expect(Math.abs(90 - sun.altitude * degrees - 50.1279)).toBeLessThan(0.05)
    expect(Math.abs(sun.azimuth * degrees - 194.340241)).toBeLessThan(0.02)
    expect(Math.abs(sun.declination * degrees + 9.316179)).toBeLessThan(0.02)
    const apparent = sun.altitude + refraction(sun.altitude, 82000, 11)
    expect(Math.abs(90 - apparent * degrees - 50.111622)).toBeLessThan(0.02)
  })
  it('meets the short algorithm as worked out elsewhere', () => {
    // independent: the almanac’s short form computed apart, to its last printed digit.
    const sun = solarPosition(moment, place.latitude, place.longitude)
    expect(sun.declination * degrees).toBeCloseTo(-9.3158, 3)
    expect(sun.equationOfTimeMinutes).toBeCloseTo(14.6466, 2)
    expect(90 - sun.altitude * degrees).toBeCloseTo(50.1279, 3)
    expect(sun.azimuth * degrees).toBeCloseTo(194.3425, 3)
    expect(refraction(sun.altitude, 82000, 11) * degrees).toBeCloseTo(0.01633, 4)
  })
  it('agrees with an independent library all over the Earth for two centuries', () =>
    fc.assert(
      fc.property(
        fc.integer({ min: Date.UTC(1950, 0, 1) / 1000, max: Date.UTC(2050, 0, 1) / 1000 }),
        fc.double({ min: -89, max: 89, noNaN: true }),
        fc.double({ min: -180, max: 180, noNaN: true }),
        (at, latitude, longitude) => {
          // independent: suncalc 2.0.2, with its own refraction: compared where that is under 0.05°. Its claim 0.01°, ours 0.02°.
          const ours = solarPosition(at, latitude, longitude)
          if (ours.altitude < 20 / degrees || ours.altitude > 88 / degrees) return
          const theirs = suncalc.getPosition(new Date(at * 1000), latitude, longitude)
          const raised = (ours.altitude + refraction(ours.altitude, 101000, 10)) * degrees
          expect(Math.abs(raised - theirs.altitude)).toBeLessThan(0.03)
          const turn = Math.abs(ours.azimuth * degrees - theirs.azimuth)
          expect(Math.min(turn, 360 - turn) * Math.cos(ours.altitude)).toBeLessThan(0.03)
        },
      ),
      { numRuns: 500 },
    ))
  it('stands in the north at noon in the southern hemisphere', () => {
    const sun = solarPosition(Date.UTC(2026, 5, 21, 2) / 1000, -33.9, 151.2)
    expect(Math.abs(((sun.azimuth * degrees + 180) % 360) - 180)).toBeLessThan(5)
  })
})

describe('sunTrack', () => {
  it('keeps within 0.001° of the position worked out anew', () => {
    const track = sunTrack()
    for (let at = Date.UTC(2024, 1, 20) / 1000; at < Date.UTC(2024, 3, 10) / 1000; at += 3600) {
      // hand: the declination bends by at most 0.007°/day²; a chord over a day is off by an eighth of that.
      expect(
        Math.abs(Math.asin(track(at).sinDeclination) - Math.asin(sunOfDay(at).sinDeclination)) * degrees,
      ).toBeLessThan(0.001)
      expect(Math.abs(track(at).equationOfTimeMinutes - sunOfDay(at).equationOfTimeMinutes)).toBeLessThan(
        0.002,
      )
    }
  })
})

describe('daylight', () => {
  it('meets the reference day’s sunrise, noon and sunset', () => {
    const day = daylight(place, '2003-10-17')
    const clock = (at: number | undefined) => (at! - Date.UTC(2003, 9, 17, 7) / 1000) / 3600
    // published [Reda2004], second-hand: 6.212, 11.768, 17.314 h; 0.01 h is the short algorithm's half minute.
    expect(Math.abs(clock(day.rise) - 6.212)).toBeLessThan(0.01)
    expect(Math.abs(clock(day.noon) - 11.768)).toBeLessThan(0.01)
    expect(Math.abs(clock(day.set) - 17.314)).toBeLessThan(0.01)
  })
  it('agrees with an independent library below 60° of latitude', () => {
    // independent: suncalc 2.0.2; a minute covers both algorithms' claims.
    for (const [latitude, longitude, timeZone] of [
      [40, -3.7, 'Europe/Madrid'],
      [-34, 18.5, 'Africa/Johannesburg'],
      [12, 77, 'Asia/Kolkata'],
      [59, 24, 'Europe/Tallinn'],
    ] as const)
      for (const date of ['2026-01-15', '2026-03-21', '2026-06-21', '2026-10-30', '2024-02-29']) {
        const ours = daylight({ latitude, longitude, timeZone }, date)
        const theirs = suncalc.getTimes(new Date(ours.noon * 1000), latitude, longitude)
        expect(Math.abs(ours.rise! - theirs.sunrise!.getTime() / 1000)).toBeLessThan(60)
        expect(Math.abs(ours.set! - theirs.sunset!.getTime() / 1000)).toBeLessThan(60)
      }
  })
  it('knows the polar day and the polar night', () => {
    const north = { latitude: 78.2, longitude: 15.6, timeZone: 'Arctic/Longyearbyen' }
    expect(daylight(north, '2026-06-21')).toMatchObject({ kind: 'polar-day', length: 86400 })
    expect(daylight(north, '2026-12-21')).toMatchObject({ kind: 'polar-night', length: 0 })
    expect(daylight(north, '2026-12-21').rise).toBeUndefined()
  })
})

describe('extraterrestrialBeam', () => {
  // closed form: distance of the ellipse, 1/(1 ∓ 0.0167)² of the mean, 3.3 % up in January and down in July; the day within 0.1 %.
  it('is strongest in early January and weakest in early July', () => {
    expect(Math.abs(extraterrestrialBeam(Date.UTC(2026, 0, 3) / 1000) / 1367 - 1.0334)).toBeLessThan(0.001)
    expect(Math.abs(extraterrestrialBeam(Date.UTC(2026, 6, 4) / 1000) / 1367 - 0.9666)).toBeLessThan(0.001)
  })
})
