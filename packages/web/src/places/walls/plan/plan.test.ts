import { bulgeThrough, type Point } from '@dawnlift/core/geometry'
import type { Embed, Opening, Wall } from '@dawnlift/core/job'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { pathData } from '../../../parts/path-data.js'
import type { Draft } from '../draft.js'
import { inOrder, stepTo } from '../thing.js'
import { endAt, thingAt } from './hit.js'
import { openingPiece } from './shapes.js'
import { alongStep, guidesAlong, snapAlong, snapHeight } from './snap-along.js'
import { pointAtLength, snapPoint } from './snap-point.js'
import { fitView, panned, pinched, toBuilding, toScreen, type View, zoomed } from './view.js'

const wall = (id: string, ...points: Point[]): Wall => ({
  id,
  name: id,
  centreline: { points, bulges: points.slice(1).map(() => 0), closed: false },
  makeUp: { kind: 'double', web: 'zigzag', webPitch: 0.4 },
  thickness: 0.2,
  base: 0,
  top: 2.6,
  joints: [],
})
const opening = (id: string, on: string, at: number, width = 1): Opening => ({
  id,
  wall: on,
  kind: 'window',
  at,
  width,
  sill: 0.9,
  head: 2.1,
})
const embed = (id: string, on: string, at: number): Embed => ({
  id,
  wall: on,
  kind: 'box',
  trade: 'electrical',
  face: 'left',
  at,
  bottom: 0.3,
  width: 0.07,
  height: 0.07,
  depth: 0.05,
  method: 'cut',
})
const draft: Draft = {
  walls: [wall('S', [0, 0], [6, 0]), wall('E', [6, 0], [6, 4])],
  openings: [opening('F1', 'S', 2), opening('D1', 'E', 2)],
  embeds: [embed('E2', 'S', 4), embed('E1', 'S', 1.6)],
  columns: [],
  print: { beadWidth: 0.05, layerHeight: 0.02, cornerRadius: 0.05, overhang: 0.1, speed: 0.1 },
  units: 'metric',
}

describe('view', () => {
  const size = { width: 800, height: 500 }
  const view: View = { middle: [3, 2], scale: 60 }
  const near = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])
  it('maps to the screen and back', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -50, max: 50, noNaN: true }),
        fc.double({ min: -50, max: 50, noNaN: true }),
        (x, y) => {
          expect(near(toBuilding(view, size, toScreen(view, size, [x, y])), [x, y])).toBeLessThan(1e-9)
        },
      ),
    ))
  it('keeps what lies under the pointer where it is while zooming', () => {
    const at: Point = [137, 402]
    expect(near(toBuilding(zoomed(view, size, 2.5, at), size, at), toBuilding(view, size, at))).toBeLessThan(
      1e-9,
    )
  })
  it('keeps both fingers on what they hold', () => {
    const [before, after] = [
      [
        [200, 200],
        [400, 200],
      ],
      [
        [150, 260],
        [450, 260],
      ],
    ] as const
    const moved = pinched(view, size, before, after)
    for (const finger of [0, 1])
      expect(
        near(toBuilding(moved, size, after[finger]!), toBuilding(view, size, before[finger]!)),
      ).toBeLessThan(1e-9)
  })
  it('follows the hand', () => expect(toScreen(panned(view, 30, -20), size, [3, 2])).toEqual([430, 230]))
  it('shows all of the plan', () => {
    const fit = fitView({ least: [-5, 0], most: [15, 3] }, size)
    for (const corner of [
      [-5, 0],
      [15, 3],
    ] as const) {
      const [x, y] = toScreen(fit, size, corner)
      expect(x >= 0 && x <= 800 && y >= 0 && y <= 500).toBe(true)
    }
  })
})

describe('thingAt', () => {
  it('takes the embed before the opening before the wall', () => {
    // E1 at 1.6 stands in the window F1, which runs from 1.5 to 2.5.
    expect(thingAt(draft, [1.6, 0.05], 0.02)).toEqual({ kind: 'embed', id: 'E1' })
    expect(thingAt(draft, [2.2, 0.05], 0.02)).toEqual({ kind: 'opening', id: 'F1' })
    expect(thingAt(draft, [5, -0.09], 0.02)).toEqual({ kind: 'wall', id: 'S' })
  })
  it('finds nothing beside a wall but within reach of a finger it does', () => {
    expect(thingAt(draft, [4.8, 0.3], 0.02)).toBeUndefined()
    expect(thingAt(draft, [4.8, 0.3], 0.25)).toEqual({ kind: 'wall', id: 'S' })
  })
  it('finds the nearer end of a wall', () => {
    expect(endAt(draft, 'S', [5.9, 0.1], 0.2)).toBe('end')
    expect(endAt(draft, 'S', [3, 0], 0.2)).toBeUndefined()
  })
})

describe('things in order', () => {
  const things = inOrder(draft)
  it('go along each wall from its start', () =>
    expect(things.map(each => each.id)).toEqual(['S', 'E1', 'F1', 'E2', 'E', 'D1']))
  it('are gone through by one, by wall, and round', () => {
    expect(stepTo(things, { kind: 'embed', id: 'E1' }, 'next')?.id).toBe('F1')
    expect(stepTo(things, { kind: 'opening', id: 'D1' }, 'next')?.id).toBe('S')
    expect(stepTo(things, { kind: 'embed', id: 'E2' }, 'nextWall')?.id).toBe('E')
    expect(stepTo(things, undefined, 'next')?.id).toBe('S')
  })
})

describe('snapAlong', () => {
  const guides = guidesAlong(draft, { kind: 'embed', id: 'E2' })
  const by = { step: alongStep('metric'), reach: 0.03 }
  it('lines up by its middle or by an edge', () => {
    expect(snapAlong(2.02, 0.07, 6, guides, by)).toEqual({ at: 2, to: 'middle of F1' })
    // hand: its left edge on the jamb at 2.5 puts the middle at 2.5 + 0.035.
    const beside = snapAlong(2.55, 0.07, 6, guides, by)
    expect([beside.at.toFixed(4), beside.to]).toEqual(['2.5350', 'edge of F1'])
  })
  it('falls onto whole centimetres or half inches elsewhere', () => {
    expect(snapAlong(4.737, 0.07, 6, guides, by)).toEqual({ at: 4.74 })
    expect(snapAlong(4.737, 0.07, 6, [], { step: alongStep('imperial'), reach: 0 }).at / 0.0127).toBeCloseTo(
      373,
      9,
    )
  })
  it('never leaves the wall', () =>
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 20, noNaN: true }),
        fc.double({ min: 0.05, max: 3, noNaN: true }),
        (asked, width) => {
          const { at } = snapAlong(asked, width, 6, guides, by)
          expect(at - width / 2 >= -1e-9 && at + width / 2 <= 6 + 1e-9).toBe(true)
        },
      ),
    ))
  it('knows where a wall meets this one', () =>
    expect(guides).toContainEqual({ at: 6, for: 'middle', say: 'wall E' }))
})

describe('snapHeight', () => {
  it('falls onto layers', () => expect(snapHeight(0.913, 0.02, 0, 2.6)).toEqual({ at: 0.92, to: 'layer 46' }))
  it('stays in the wall', () => expect(snapHeight(9, 0.02, 0, 2.4).at).toBe(2.4))
})

describe('snapPoint', () => {
  const by = { reach: 0.15, step: 0.01 }
  it('falls onto ends before walls', () => {
    expect(snapPoint(draft, [6.05, 3.93], by)).toEqual({ point: [6, 4], to: 'end of E' })
    expect(snapPoint(draft, [3.02, 0.1], by)).toEqual({ point: [3.02, 0], to: 'wall S' })
  })
  it('runs square from the corner before, in whole steps', () =>
    expect(snapPoint(draft, [2.008, 3.16], { ...by, from: [2, 1] })).toEqual({
      point: [2, 3.16],
      to: 'square',
    }))
  it('runs on at a right angle to a wall that lies askew', () => {
    const along: Point = [0.6, 0.8]
    const { point, to } = snapPoint(draft, [2 - 0.8 * 1.5, 2 + 0.6 * 1.5 + 0.02], {
      ...by,
      from: [2, 2],
      along,
    })
    expect(to).toBe('square')
    expect((point[0] - 2) * along[0] + (point[1] - 2) * along[1]).toBeCloseTo(0, 9)
  })
  it('takes a typed length in the direction shown', () =>
    expect(pointAtLength([1, 1], [4, 5], 2.5)).toEqual([2.5, 3]))
})

describe('shapes', () => {
  it('draw an opening as wide as it is and as thick as its wall', () => {
    const ring = openingPiece(draft.walls[0]!, draft.openings[0]!)
    expect(ring.map(point => point.map(each => Number(each.toFixed(3))))).toEqual([
      [1.5, 0.1],
      [2.5, 0.1],
      [2.5, -0.1],
      [1.5, -0.1],
    ])
  })
  it('draw an arc by its radius and the side it turns to', () => {
    const bulge = bulgeThrough([0, 0], [1, -1], [2, 0])
    // hand: a half circle turning left has bulge 1 and radius half its chord.
    expect(bulge).toBeCloseTo(1, 9)
    expect(
      pathData({
        points: [
          [0, 0],
          [2, 0],
        ],
        bulges: [bulge],
        closed: false,
      }),
    ).toBe('M0.0000 0.0000A1.0000 1.0000 0 0 1 2.0000 0.0000')
  })
})
