import { describe, expect, it } from 'vitest'
import type { Finding } from '../result/index.js'
import { gathered } from './gathered-findings.js'

const finding = (change: Partial<Finding>): Finding => ({
  check: 'heat',
  at: 'A1',
  demand: 60,
  capacity: 50,
  unit: '°C',
  source: 'the job',
  verdict: 'warn',
  say: '',
  ...change,
})

describe('findings of many lifts', () => {
  it('are told once a check: the one farthest out, with how many more there are', () => {
    const told = gathered([finding({}), finding({ at: 'B2', demand: 71 }), finding({ at: 'C3', demand: 65 })])
    expect(told.map(({ at, demand }) => [at, demand])).toEqual([['B2 and 2 more', 71]])
  })

  it('let a failure stand before a warning that is farther out', () =>
    expect(gathered([finding({ demand: 90 }), finding({ at: 'B2', verdict: 'fail' })])[0]!.at).toBe(
      'B2 and 1 more',
    ))

  it('leave out what passes', () => expect(gathered([finding({ verdict: 'pass' })])).toEqual([]))
})
