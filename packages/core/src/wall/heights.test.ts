import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { house } from './fixtures/house.js'
import { fixture, line, opening, wall } from './fixtures/invented.js'
import { bandLimits, heightSnaps, layerCount } from './heights.js'
import { layerMiddle, layersBelow } from './layers.js'

describe('layersBelow', () => {
  // hand: a layer lies below a height when its middle does.
  it.each([
    [0, 0.02, 0],
    [0.9, 0.02, 45],
    [0.905, 0.02, 45],
    [0.911, 0.02, 46],
    [2.1, 0.015, 140],
  ])('%d m in layers of %d m is %i layers', (height, layer, count) =>
    expect(layersBelow(height, layer)).toBe(count),
  )
  it('snaps by at most half a layer', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4000 }), fc.constantFrom(0.01, 0.012, 0.015, 0.02), (mm, h) => {
        expect(Math.abs(layersBelow(mm / 1000, h) * h - mm / 1000)).toBeLessThanOrEqual(h / 2 + 1e-9)
      }),
    )
  })
})

describe('bands', () => {
  const plan = fixture('one window', {
    walls: [wall('w', line([0, 0], [4, 0]))],
    openings: [opening('o', 'w', 2, 1, { sill: 0.907 })],
  })
  it('change at the sill, and at the top of the lintel; the lintel fills the opening above the head', () => {
    expect(bandLimits(plan.parts, plan.sections[0]!)).toEqual([
      { fromLayer: 1, toLayer: 45 },
      { fromLayer: 46, toLayer: 105 },
      { fromLayer: 106, toLayer: 115 },
      { fromLayer: 116, toLayer: 120 },
    ])
  })
  it('say which heights were moved, and to where', () => {
    const [snap, ...rest] = heightSnaps(plan.parts, plan.sections[0]!)
    expect(rest).toEqual([])
    expect(snap).toEqual({ what: 'o sill', asked: 0.907, got: expect.closeTo(0.9, 9) })
  })
  it('hold layers that all see the same openings', () => {
    const h = house.parts.print.layerHeight
    for (const { fromLayer, toLayer } of bandLimits(house.parts, house.sections[0]!)) {
      const seen = (layer: number) =>
        house.parts.openings
          .filter(
            ({ sill, head, lintel }) =>
              sill < layerMiddle(layer, h) && layerMiddle(layer, h) <= head + (lintel?.height ?? 0),
          )
          .map(o => o.id)
      expect(seen(toLayer)).toEqual(seen(fromLayer))
    }
  })
  it('end at the top of the tallest wall', () =>
    expect(layerCount(house.parts, house.sections[0]!)).toBe(140))
})
