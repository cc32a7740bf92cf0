import { describe, expect, it } from 'vitest'
import type { Opening, Wall } from '../job/index.js'
import { standGeometry } from './derive-geometry.js'

const print = { beadWidth: 0.05, layerHeight: 0.02 }
const wall = (
  id: string,
  points: readonly (readonly [number, number])[],
  changes: Partial<Wall> = {},
): Wall => ({
  id,
  name: id,
  centreline: { points, bulges: points.slice(1).map(() => 0), closed: false },
  makeUp: { kind: 'double', web: 'zigzag', webPitch: 0.6 },
  thickness: 0.25,
  base: 0,
  top: 2.7,
  joints: [],
  ...changes,
})
const whole = (walls: readonly Wall[], lengths: readonly number[]) => ({
  id: 'S',
  stretches: walls.map((w, i) => ({ wall: w.id, from: 0, to: lengths[i]! })),
  joints: [],
})
const window = (at: number, width: number): Opening => ({
  id: 'w1',
  wall: 'A',
  kind: 'window',
  at,
  width,
  sill: 0.9,
  head: 2.1,
})
const spans = (panels: readonly { from: number; to: number; supports: string }[]) =>
  panels.map(({ from, to, supports }) => [from, to, supports])

describe('panels of a section', () => {
  it('are called by their stretch in the units of the site', () => {
    const a = wall('A', [
      [0, 0],
      [3.048, 0],
    ])
    const places = (units: 'metric' | 'imperial') =>
      standGeometry(whole([a], [3.048]), [a], [], print, [], units).panels.map(({ place }) => place)
    expect(places('metric')).toEqual(['wall A, 0.00–3.05 m'])
    // hand: 3.048 m are ten feet
    expect(places('imperial')).toEqual([`wall A, 0' 0" to 10' 0"`])
  })
  it('run between the corners of one wall, its ends being free', () => {
    const a = wall('A', [
      [0, 0],
      [4, 0],
      [4, 3],
    ])
    expect(spans(standGeometry(whole([a], [7]), [a], [], print).panels)).toEqual([
      [0, 4, 'one'],
      [4, 7, 'one'],
    ])
  })

  it('end at a T-junction on the wall that is met and on the wall that meets', () => {
    const a = wall('A', [
      [0, 0],
      [6, 0],
    ])
    const b = wall('B', [
      [2, 0],
      [2, 3],
    ])
    const { panels } = standGeometry(whole([a, b], [6, 3]), [a, b], [], print)
    expect(spans(panels.filter(p => p.wall === 'A'))).toEqual(
      [
        [2, 6, 'one'],
        [0, 2, 'one'],
      ].sort((x, y) => Number(x[0]) - Number(y[0])),
    )
    expect(spans(panels.filter(p => p.wall === 'B'))).toEqual([[0, 3, 'one']])
  })

  it('are not held by a neighbour of another section', () => {
    const a = wall('A', [
      [0, 0],
      [6, 0],
    ])
    const b = wall('B', [
      [2, 0],
      [2, 3],
    ])
    expect(spans(standGeometry(whole([a], [6]), [a, b], [], print).panels)).toEqual([[0, 6, 'none']])
  })

  it('are cut by a window between its sill and head only', () => {
    const a = wall('A', [
      [0, 0],
      [6, 0],
    ])
    const { panels } = standGeometry(whole([a], [6]), [a], [window(3, 1)], print)
    expect(panels.map(({ bottom, top, from, to }) => [bottom, top, from, to])).toEqual([
      [0, 0.9, 0, 6],
      [0.9, 2.1, 0, 2.5],
      [0.9, 2.1, 3.5, 6],
      [2.1, 2.7, 0, 6],
    ])
  })

  it('go round a closed room from corner to corner', () => {
    const room: readonly (readonly [number, number])[] = [
      [0, 0],
      [4, 0],
      [4, 3],
      [0, 3],
    ]
    const a = wall('A', room, { centreline: { points: room, bulges: [0, 0, 0, 0], closed: true } })
    const { panels } = standGeometry(whole([a], [14]), [a], [], print)
    expect(panels.map(({ length, supports }) => [length, supports])).toEqual([
      [4, 'both'],
      [3, 'both'],
      [4, 'both'],
      [3, 'both'],
    ])
  })

  it('are a ring where the wall is a full circle', () => {
    const circle = { points: [[-1, 0] as const, [1, 0] as const], bulges: [1, 1], closed: true }
    const a = wall('A', [], { centreline: circle })
    const { panels } = standGeometry(whole([a], [2 * Math.PI]), [a], [], print)
    expect(panels.map(({ supports, radius }) => [supports, radius])).toEqual([['ring', 1]])
  })

  it('do not take a stub shorter than two thicknesses for a return', () => {
    const a = wall('A', [
      [0, 0],
      [4, 0],
      [4, 0.3],
    ])
    const { panels } = standGeometry(whole([a], [4.3]), [a], [], print)
    expect(panels.map(({ supports }) => supports)).toEqual(['none'])
  })
})
