import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Path, Point } from '../geometry/index.js'
import { line } from './invented-section.js'
import { PathPool } from './path-pool.js'

const anyPath = fc
  .array(fc.tuple(fc.integer({ min: 0, max: 2 }), fc.integer({ min: 0, max: 2 })), {
    minLength: 2,
    maxLength: 4,
  })
  .map((points): Path => line(...(points as Point[])))

describe('a path pool', () => {
  it('gives one object and one number for one content, and for no other', () =>
    fc.assert(
      fc.property(fc.array(anyPath, { maxLength: 30 }), paths => {
        const pool = new PathPool()
        for (const path of paths) {
          const { path: found, id } = pool.pooled(path)
          expect(found).toEqual(path)
          expect(pool.pooled(structuredClone(path))).toEqual({ path: found, id })
          expect(pool.pooled(structuredClone(path)).path).toBe(found)
        }
        const texts = paths.map(path => JSON.stringify(path))
        const ids = paths.map(path => pool.pooled(path).id)
        paths.forEach((_, i) => {
          paths.forEach((__, k) => {
            if (texts[i] !== texts[k]) expect(ids[i]).not.toBe(ids[k])
          })
        })
      }),
      { numRuns: 60 },
    ))
  it('keeps paths apart whose points happen to add up alike', () => {
    // what is added up is x + 0.375·y, here 3.375 for both second points
    const [a, b] = [line([1, 1], [3, 1]), line([1, 1], [3.375, 0])]
    const pool = new PathPool()
    const [first, second] = [pool.pooled(a), pool.pooled(b)]
    expect(pool.byContent.size).toBe(1)
    expect([first.path, second.path]).toEqual([a, b])
    expect(first.id).not.toBe(second.id)
  })
  it('tells a loop from the open path along it', () => {
    const open = line([0, 0], [1, 0], [1, 1])
    const pool = new PathPool()
    pool.pooled(open)
    expect(pool.pooled({ ...open, bulges: [0, 0, 0], closed: true }).path.closed).toBe(true)
  })
})
