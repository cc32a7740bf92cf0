import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Wall } from '../job/index.js'
import { cornersOf, type Face, nearestCorner } from './corner.js'
import { placeAt } from './station.js'
import { exampleWall } from './trade-example.js'

const along = (wall: Wall, walls: readonly Wall[], face: Face, at: number) =>
  nearestCorner(cornersOf(wall, walls), face, at)

describe('nearestCorner', () => {
  // A room 6 × 4 m on its centrelines, walls 0.3 m, round anticlockwise: left faces look inwards.
  const room = [
    exampleWall('S', [
      [0, 0],
      [6, 0],
    ]),
    exampleWall('E', [
      [6, 0],
      [6, 4],
    ]),
    exampleWall('N', [
      [6, 4],
      [0, 4],
    ]),
    exampleWall('W', [
      [0, 4],
      [0, 0],
    ]),
  ] as const

  it.each([
    // hand: the inside corner lies half the other wall (0.15 m) in from the centrelines' crossing, the outside one as far out
    ['left', 2, 1.85, 'corner of S and W'],
    ['right', 2, 2.15, 'corner of S and W'],
    ['left', 5, 0.85, 'corner of S and E'],
    ['right', 5, 1.15, 'corner of S and E'],
  ] as const)('on the %s face at %d m the tape shows %d m', (face, at, tape, name) => {
    const found = along(room[0], room, face, at)
    expect(found?.along).toBeCloseTo(tape, 9)
    expect(found?.corner.name).toBe(name)
  })

  it('is measured to the face corner also at a slant', () => {
    // hand: walls 0.3 m meeting at 60°: the inside faces cross 0.15·(1 + cos 60°)/sin 60° = 0.2598 m along
    const slant = exampleWall('V', [
      [0, 0],
      [2, 2 * Math.tan(Math.PI / 3)],
    ])
    const found = along(room[0], [room[0], slant], 'left', 2)
    expect(found?.along).toBeCloseTo(2 - (0.15 * 1.5) / Math.sin(Math.PI / 3), 9)
  })

  it('takes the foot of a wall that ends against it, on the side it comes to', () => {
    const partition = exampleWall(
      'P',
      [
        [2, 0.15],
        [2, 3],
      ],
      { thickness: 0.2 },
    )
    const walls = [room[0], partition]
    // hand: the partition's far face stands at 2 + 0.1
    expect(along(room[0], walls, 'left', 2.5)?.along).toBeCloseTo(0.4, 9)
    expect(along(room[0], walls, 'right', 2.5)?.along).toBeCloseTo(2.5, 9)
  })

  it('of a wall ending against another is on the face it ends at', () => {
    const partition = exampleWall(
      'P',
      [
        [2, 0],
        [2, 3],
      ],
      { thickness: 0.2 },
    )
    // hand: the south wall's inner face lies 0.15 above its centreline
    expect(along(partition, [room[0], partition], 'left', 1)?.along).toBeCloseTo(0.85, 9)
    expect(along(partition, [room[0], partition], 'right', 1)?.along).toBeCloseTo(0.85, 9)
  })

  it('of a lone wall is its end', () => {
    const lone = exampleWall('L', [
      [0, 0],
      [6, 0],
    ])
    expect(along(lone, [lone], 'left', 5)).toMatchObject({ along: 1, corner: { name: 'end of L' } })
  })

  it('takes a bend of the wall itself', () => {
    const bent = exampleWall('B', [
      [0, 0],
      [3, 0],
      [3, 3],
    ])
    // hand: left is the inside: its corner lies 0.15 before the bend on one arm, 0.15 after it on the other
    expect(along(bent, [bent], 'left', 3.5)).toMatchObject({ corner: { name: 'bend 1 of B' } })
    expect(along(bent, [bent], 'left', 3.5)?.along).toBeCloseTo(0.35, 6)
    expect(along(bent, [bent], 'right', 3.5)?.along).toBeCloseTo(0.65, 6)
    expect(along(bent, [bent], 'left', 2.5)?.along).toBeCloseTo(0.35, 6)
  })

  it('leaves a wall that goes straight on unnamed', () => {
    const next = exampleWall('X', [
      [6, 0],
      [9, 0],
    ])
    const names = cornersOf(room[0], [room[0], next]).map(corner => corner.name)
    expect(names.some(name => name.includes('X'))).toBe(false)
  })

  it('names the same point in the building whichever of two walls is measured', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 155, noNaN: true }),
        fc.double({ min: 0.1, max: 0.5, noNaN: true }),
        fc.double({ min: 0.1, max: 0.5, noNaN: true }),
        (degrees, first, second) => {
          const angle = (degrees * Math.PI) / 180
          const a = exampleWall(
            'A',
            [
              [5, 0],
              [0, 0],
            ],
            { thickness: first },
          )
          const b = exampleWall(
            'B',
            [
              [0, 0],
              [5 * Math.cos(angle), 5 * Math.sin(angle)],
            ],
            { thickness: second },
          )
          for (const face of ['left', 'right'] as const) {
            const [p, q] = [
              [a, -1],
              [b, 1],
            ].map(([wall, towards]) => {
              const own = wall as Wall
              const corner = cornersOf(own, [a, b]).find(
                c => c.face === face && c.towards === towards && c.name.includes(' and '),
              )!
              const place = placeAt(own.centreline, corner.station)
              const side = ((face === 'left' ? 1 : -1) * own.thickness) / 2
              return [
                place.point[0] - side * Math.sin(place.heading),
                place.point[1] + side * Math.cos(place.heading),
              ]
            })
            // The two faces cross in one point.
            expect(Math.hypot(p![0]! - q![0]!, p![1]! - q![1]!)).toBeLessThan(1e-6)
          }
        },
      ),
    )
  })
})
