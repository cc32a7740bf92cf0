import type { Plan } from '@dawnlift/core/plan'
import { describe, expect, it } from 'vitest'
import { isConfirmed } from './planning.js'

/** As much of a plan as its days are told by. */
const planOf = (lastLayer: number, more: Partial<Plan> = {}): Plan =>
  ({
    campaign: { days: [{ date: '2026-07-06', lifts: [{ id: 'A1', lastLayer }] }], hours: [{ start: 0 }] },
    findings: [],
    ...more,
  }) as unknown as Plan

describe('a search after days were held', () => {
  it('confirms them where it comes to the same, whatever objects it is made of', () => {
    expect(isConfirmed(planOf(48, { held: true }), planOf(48))).toBe(true)
  })
  it('does not where a lift, a finding or the bound is another', () => {
    expect(isConfirmed(planOf(48, { held: true }), planOf(49))).toBe(false)
    const finding = { check: 'late' } as Plan['findings'][number]
    expect(isConfirmed(planOf(48, { held: true }), planOf(48, { findings: [finding] }))).toBe(false)
    const { campaign } = planOf(48)
    const bound = { days: 19, how: 'every order tried' }
    expect(isConfirmed(planOf(48), planOf(48, { campaign: { ...campaign, bound } }))).toBe(false)
  })
})
