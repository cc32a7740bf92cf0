import { describe, expect, it } from 'vitest'
import { layersByRule } from './campaign-input.js'

describe('layersByRule', () => {
  it.each([
    // hand: 1.5 m of 20 mm is 75 whole layers; 1.49 m leaves 10 mm over; four feet of three quarters of an inch is 64.
    [1.5, 0.02, 75],
    [1.49, 0.02, 74],
    [4 * 0.3048, 0.75 * 0.0254, 64],
  ])('in %d m of %d m are %d layers', (lift, layer, count) => expect(layersByRule(lift, layer)).toBe(count))
  it('counts every whole number of layers whole, whatever binary makes of it', () => {
    // closed form: n·h/h = n. 0.3/0.1 is 2.9999999999999996 in double precision.
    for (let count = 1; count <= 200; count++) expect(layersByRule(count * 0.015, 0.015)).toBe(count)
    expect(layersByRule(0.3, 0.1)).toBe(3)
  })
  it('is none where the rule is lower than a layer', () => expect(layersByRule(0.01, 0.02)).toBe(0))
})
