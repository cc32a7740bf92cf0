import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { closestName, editDistance } from './index.js'

describe('editDistance', () => {
  // published: kitten → sitting 3 (the textbook example, from memory); hand: a swap of neighbours counts once.
  it.each([
    ['kitten', 'sitting', 3],
    ['heigt', 'height', 1],
    ['hieght', 'height', 1],
    ['', 'abc', 3],
    ['same', 'same', 0],
  ])('from %s to %s is %d', (from, to, distance) => expect(editDistance(from, to)).toBe(distance))
  it('is the same both ways and never more than the longer word', () =>
    fc.assert(
      fc.property(fc.string({ maxLength: 12 }), fc.string({ maxLength: 12 }), (a, b) => {
        const distance = editDistance(a, b)
        return distance === editDistance(b, a) && distance <= Math.max(a.length, b.length)
      }),
    ))
})

describe('closestName', () => {
  it('finds what was meant', () =>
    expect(closestName('liftHight', ['liftHeight', 'restMost'])).toBe('liftHeight'))
  it('does not guess when nothing is near', () =>
    expect(closestName('colour', ['liftHeight', 'restMost'])).toBeUndefined())
})
