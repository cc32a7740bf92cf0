import { describe, expect, it } from 'vitest'
import { countdown, spell } from './today-list.js'

describe('the time left', () => {
  it.each([
    [59, '59 s'],
    [119, '1 min'],
    [3599, '59 min'],
    [3660, '1 h 01 min'],
    [90_000, 'a day'],
    [200_000, '2 days'],
  ])('%d seconds is rounded down to %s', (seconds, said) => expect(spell(seconds)).toBe(said))
})

describe('the countdown', () => {
  const call = { at: 10_000, until: 11_800 }
  it('counts to the beginning', () => expect(countdown(9_400, call)).toBe('in 10 min'))
  it('then to the moment it is too late', () => expect(countdown(10_600, call)).toBe('now, 20 min left'))
  it('then says how long it has been over', () => expect(countdown(12_400, call)).toBe('40 min ago'))
  it('says now for what has no end', () => expect(countdown(10_020, { at: 10_000 })).toBe('now'))
})
