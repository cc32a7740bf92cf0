import { describe, expect, it } from 'vitest'
import { atOrAbove, type Field, isoLines } from './contours.js'

const range = (count: number) => Array.from({ length: count }, (_, index) => index)
const field = (at: (x: number, y: number) => number): Field => ({
  xs: range(41),
  ys: range(41),
  values: range(41).map(x => range(41).map(y => at(x, y))),
})
const area = (ring: readonly (readonly [number, number])[]): number =>
  ring.reduce((sum, [x, y], index) => {
    const [u, v] = ring[(index + 1) % ring.length]!
    return sum + (x * v - u * y) / 2
  }, 0)

describe('contours', () => {
  it('of a slope are straight and one piece', () => {
    const lines = isoLines(
      field(x => x),
      12.25,
    )
    expect(lines).toHaveLength(1)
    expect(lines[0]).toHaveLength(41)
    expect(lines[0]!.every(([x]) => Math.abs(x - 12.25) < 1e-9)).toBe(true)
  })

  it('of a cone are one closed ring at its radius', () => {
    const lines = isoLines(
      field((x, y) => -Math.hypot(x - 20, y - 20)),
      -15.3,
    )
    expect(lines).toHaveLength(1)
    // Linear between places 1 apart: a circle is cut by at most 1/(8·15.3).
    for (const [x, y] of lines[0]!) expect(Math.abs(Math.hypot(x - 20, y - 20) - 15.3)).toBeLessThan(0.02)
  })

  it('hold the area of what lies above', () => {
    const rings = atOrAbove(
      field((x, y) => -Math.hypot(x - 20, y - 20)),
      -15.3,
    )
    const held = rings.reduce((sum, ring) => sum + area(ring), 0)
    // closed form: πr²; a chord polygon of steps ≤ √2 loses under 0.5 %
    expect(held / (Math.PI * 15.3 ** 2)).toBeCloseTo(1, 2)
    expect(held).toBeLessThan(Math.PI * 15.3 ** 2)
  })
})
