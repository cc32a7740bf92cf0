import { describe, expect, it } from 'vitest'
import { isShaded, openSky, shadeHeight, sunlitShare } from './index.js'

const rad = Math.PI / 180
const south = { from: [-50, -4], to: [50, -4], top: 3 } as const

describe('shade of neighbours', () => {
  it('reaches to the height that the sun’s slope gives', () => {
    // hand: sun in the south at 30°: 4 m away the ray is 4·tan 30° = 2.309 m higher; 3 − 2.309 = 0.691 m is the edge of shade.
    const sun = { altitude: 30 * rad, azimuth: Math.PI }
    expect(isShaded([0, 0], 0.68, sun, 0, [south])).toBe(true)
    expect(isShaded([0, 0], 0.7, sun, 0, [south])).toBe(false)
  })
  it('does not fall from a wall behind the sun or beside the ray', () => {
    expect(isShaded([0, 0], 0, { altitude: 10 * rad, azimuth: 0 }, 0, [south])).toBe(false)
    expect(
      isShaded([0, 0], 0, { altitude: 10 * rad, azimuth: Math.PI }, 0, [{ ...south, from: [5, -4] }]),
    ).toBe(false)
  })
  it('covers half a wall where its edge is at half height', () => {
    const sun = { altitude: Math.atan(2 / 4), azimuth: Math.PI }
    // hand: edge at 3 − 2 = 1 m of 0…2 m.
    expect(sunlitShare([0, 0], [0, 2], sun, 0, [south])).toBe(0.5)
  })
  it('is what many rays along the wall find', () => {
    // independent: the share of 400 rays, each asked apart, that meet none of three neighbours.
    const walls = [
      south,
      { from: [-2, 3], to: [6, -3], top: 1.4 },
      { from: [3, -9], to: [3, 9], top: 2.2 },
    ] as const
    for (const [altitude, azimuth] of [
      [12, 95],
      [35, 170],
      [50, 200],
      [8, 262],
    ] as const) {
      const sun = { altitude: altitude * rad, azimuth: azimuth * rad }
      const rays = Array.from(
        { length: 400 },
        (_, i) => !isShaded([0, 0], ((i + 0.5) / 400) * 1.8, sun, 0, walls),
      )
      expect(
        Math.abs(sunlitShare([0, 0], [0, 1.8], sun, 0, walls) - rays.filter(Boolean).length / 400),
      ).toBeLessThan(0.004)
    }
  })
  it('turns with the building', () => {
    const sun = { altitude: 30 * rad, azimuth: Math.PI + 0.4 }
    // hand: with the y axis turned by 0.4 rad the neighbour on −y stands towards azimuth π + 0.4.
    expect(shadeHeight([0, 0], sun, 0.4, [south])).toBeCloseTo(3 - 4 * Math.tan(30 * rad), 9)
  })
})

describe('openSky', () => {
  it('is whole on an open field and 1 − sin β before a long wall', () => {
    expect(openSky([0, 0], 1, Math.PI, 0, [])).toBe(1)
    const long = (top: number) => [{ from: [-1e5, -4], to: [1e5, -4], top } as const]
    for (const top of [2, 4, 8]) {
      // closed form: the view factor of an endless wall over a strip, 1 − sin β with tan β = (top − 1)/4.
      const exact = 1 - Math.sin(Math.atan((top - 1) / 4))
      expect(Math.abs(openSky([0, 0], 1, Math.PI, 0, long(top)) - exact)).toBeLessThan(0.03)
    }
  })
  it('is not lessened by a wall behind the face or below the point', () => {
    expect(openSky([0, 0], 1, 0, 0, [south])).toBe(1)
    expect(openSky([0, 0], 4, Math.PI, 0, [south])).toBe(1)
  })
})
