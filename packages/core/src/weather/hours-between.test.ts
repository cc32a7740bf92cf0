import { describe, expect, it } from 'vitest'
import { hoursBetween } from './hours-between.js'

// Hours 0 to 9, the fifth and sixth missing.
const hours = [0, 1, 2, 3, 4, 7, 8, 9].map(hour => ({ start: hour * 3600 }))
const numbers = (from: number, until: number) =>
  hoursBetween(hours, from * 3600, until * 3600).map(({ start }) => start / 3600)

describe('the hours between two moments', () => {
  it('are those that lie there in part, a moment on the hour belonging to the hour it begins', () => {
    expect(numbers(1.5, 3.5)).toEqual([1, 2, 3])
    expect(numbers(2, 4)).toEqual([2, 3])
    expect(numbers(-5, 1)).toEqual([0])
    expect(numbers(9.99, 20)).toEqual([9])
  })
  it('are none in a gap, before the first and after the last', () => {
    expect(numbers(5, 7)).toEqual([])
    expect(numbers(-3, 0)).toEqual([])
    expect(numbers(10, 12)).toEqual([])
    expect(hoursBetween([], 0, 1)).toEqual([])
  })
})
