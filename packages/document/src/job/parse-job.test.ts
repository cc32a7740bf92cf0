import { describe, expect, it } from 'vitest'
import { newJobText, parseJob } from './index.js'

describe('the job of `dawnlift new`', () => {
  it('reads without a problem', () => {
    const parsed = parseJob(newJobText('Shed'))
    expect(parsed.ok ? [] : parsed.problems).toEqual([])
  })
})
