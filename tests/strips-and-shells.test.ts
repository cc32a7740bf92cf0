import type { Lift } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import { beforeAll, describe, expect, it } from 'vitest'
import { type Compared, compare, demoPlan, liftsOf } from './bench/strips-and-shells.js'

const lastOf = (plan: Plan, section: string): Lift =>
  liftsOf(plan).reduce((last, lift) =>
    lift.section === section && (last.section !== section || lift.lastLayer > last.lastLayer) ? lift : last,
  )

/**
 * A sample of what `tests/bench/strips-and-shells.bench.ts` asks of every lift: shells of the real beads, another model of the same
 * physics, against the strips that plan (independent).
 */
describe('strips of the house on the dry plain, against shells of its beads', () => {
  let [tied, webbed]: Compared[] = []
  beforeAll(async () => {
    const plan = await demoPlan('torrenubia')
    webbed = compare(plan, lastOf(plan, 'C'))
    tied = compare(plan, lastOf(plan, 'E'))
  }, 120_000)

  // The mesh that the product uses comes out 1 to 6 % high against one twice as fine: the strips may not use that up.
  it('promise no more than the shells bear, where of all lifts they come nearest to them', () => {
    expect(webbed!.share).toBeGreaterThan(0.85)
    expect(webbed!.share).toBeLessThan(1)
  })

  it('are a quarter under the shells and more where one wide bay between cross ties governs, and say so', () => {
    const { share, buckling } = tied!
    expect(buckling.quick.what).toBe('wythe')
    expect(1 / share).toBeGreaterThan(1.25)
    expect(share).toBeGreaterThan(0.6)
    expect(buckling.say).toContain(`shells bear ${(1 / share).toFixed(2)} times this`)
    expect(buckling.say).toContain('hinges a wythe at its ties')
  })
})
