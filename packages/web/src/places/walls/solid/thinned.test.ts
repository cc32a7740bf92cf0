import { describe, expect, it } from 'vitest'
import { thinned } from './thinned.js'

const circle = (points: number) =>
  Array.from({ length: points }, (_, i): [number, number] => {
    const turn = (i / points) * 2 * Math.PI
    return [Math.cos(turn), Math.sin(turn)]
  })

describe('a thinned ring', () => {
  it('keeps its corners and loses what lies on its sides', () =>
    expect(
      thinned(
        [
          [0, 0],
          [1, 0],
          [2, 0.001],
          [3, 0],
          [3, 2],
          [0, 2],
          [0, 1],
        ],
        0.004,
      ),
    ).toEqual([
      [0, 0],
      [3, 0],
      [3, 2],
      [0, 2],
    ]))
  it('of a circle keeps as many points as the tolerance asks', () => {
    // Closed form: a chord over the angle a of a unit circle lies 1 − cos(a/2) off it; a halving search may double the count.
    const least = Math.PI / Math.acos(1 - 0.01)
    const kept = thinned(circle(1000), 0.01).length
    expect(kept).toBeGreaterThanOrEqual(Math.floor(least))
    expect(kept).toBeLessThanOrEqual(2 * Math.ceil(least))
  })
})
