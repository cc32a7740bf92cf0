import { describe, expect, it } from 'vitest'
import { kept, newPlanCache, trimPlanCache } from './plan-cache.js'

const nothing = () => 0

describe('a plan cache', () => {
  it('makes a value once', () => {
    const cache = new Map<string, number>()
    let made = 0
    const make = () => ++made
    expect([kept(cache, 'a', make), kept(cache, 'a', make)]).toEqual([1, 1])
  })
  it('forgets what was asked for longest ago, and keeps what was asked for again', () => {
    const cache = newPlanCache()
    for (let i = 0; i < 10; i++) cache.cures.set(`${i}`, {} as never)
    kept(cache.cures, '0', nothing as never)
    trimPlanCache(cache, [], 1)
    expect([...cache.cures.keys()]).toEqual(['5', '6', '7', '8', '9', '0'])
  })
})
