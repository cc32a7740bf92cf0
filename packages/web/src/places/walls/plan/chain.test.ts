import { describe, expect, it } from 'vitest'
import { chainPath, emptyChain, lastDirection, withCorner, withoutCorner } from './chain.js'

describe('a chain of corners', () => {
  const two = withCorner(withCorner(emptyChain, [0, 0], false), [3, 0], false)
  it('is a line from corner to corner, and on to the cross', () => {
    expect(two).toEqual({
      points: [
        [0, 0],
        [3, 0],
      ],
      bulges: [0],
    })
    expect(chainPath(two, [3, 2])?.points).toEqual([
      [0, 0],
      [3, 0],
      [3, 2],
    ])
    expect(lastDirection(two)).toEqual([1, 0])
  })
  it('does not set a corner twice', () => expect(withCorner(two, [3, 0], false)).toBe(two))
  it('takes the end of an arc and then a point on it', () => {
    const pending = withCorner(two, [5, 0], true)
    expect(pending.points).toHaveLength(2)
    // hand: from (3,0) through (4,1) to (5,0) is a half circle turning right: bulge −1.
    const arc = withCorner(pending, [4, 1], true)
    expect(arc.points.at(-1)).toEqual([5, 0])
    expect(arc.bulges[1]).toBeCloseTo(-1, 9)
    expect(lastDirection(arc)).toBeUndefined()
  })
  it('takes back first the arc’s end, then the corner before', () => {
    const pending = withCorner(two, [5, 0], true)
    expect(withoutCorner(pending)).toEqual(two)
    expect(withoutCorner(two).points).toEqual([[0, 0]])
  })
})
