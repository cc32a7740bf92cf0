import { describe, expect, it } from 'vitest'
import { line, loop, wall } from './fixtures/invented.js'
import { findJunctions } from './junction.js'

const kinds = (...walls: Parameters<typeof findJunctions>[0]) =>
  findJunctions(walls).map(({ kind, arms }) => `${kind} ${arms.length}`)

describe('findJunctions', () => {
  it('finds a corner where ends meet, though a hair apart', () => {
    expect(kinds(wall('a', line([0, 0], [3, 0])), wall('b', line([3.0005, 0.0003], [3, 2])))).toEqual([
      'corner 2',
    ])
  })
  it('finds a tee where an end meets a wall that goes on, drawn to its centreline or to its face', () => {
    for (const foot of [0, 0.125])
      expect(kinds(wall('a', line([0, 0], [3, 0])), wall('b', line([1, foot], [1, 2])))).toEqual(['tee 3'])
  })
  it('puts a slanting stem drawn to the face on the centreline, straight on', () => {
    const [junction] = findJunctions([
      wall('a', line([0, 0], [5, 0])),
      wall('b', line([2, 0.125], [3, 1.125])),
    ])
    expect(junction!.point[0]).toBeCloseTo(1.875, 9)
    expect(junction!.point[1]).toBeCloseTo(0, 9)
  })
  it('finds a cross where walls go through each other, and where two stems meet on a third', () => {
    expect(kinds(wall('a', line([0, 0], [4, 0])), wall('b', line([2, -1], [2, 1])))).toEqual(['cross 4'])
    expect(
      kinds(
        wall('a', line([0, 0], [4, 0])),
        wall('b', line([2, 0], [2, 1])),
        wall('c', line([2, 0], [2, -1])),
      ),
    ).toEqual(['tee 4'])
  })
  it('finds none where walls pass each other by', () => {
    expect(kinds(wall('a', line([0, 0], [4, 0])), wall('b', line([2, 0.2], [2, 1])))).toEqual([])
  })
  it('joins a partition to both sides of a closed room', () => {
    expect(kinds(wall('a', loop([0, 0], [4, 0], [4, 3], [0, 3])), wall('b', line([2, 0], [2, 3])))).toEqual([
      'tee 3',
      'tee 3',
    ])
  })
})
