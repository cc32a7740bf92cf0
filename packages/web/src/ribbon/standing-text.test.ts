import type { Lift } from '@dawnlift/core/campaign'
import { describe, expect, it } from 'vitest'
import { standingText } from './standing-text.js'

const lift = {
  id: 'B1',
  firstLayer: 3,
  lastLayer: 5,
  start: 100,
  end: 400,
  layerEnds: [200, 300, 400],
} as unknown as Lift
const plan = {
  campaign: { days: [{ date: '2026-07-06', number: 1, start: 0, end: 500, lifts: [lift], chilled: false }] },
}

describe('what stands at a moment', () => {
  it('is nothing before the first lift', () =>
    expect(standingText(plan, 50)).toBe('0 of 3 section layers stand'))
  it('is the layer going down while a lift runs', () =>
    expect(standingText(plan, 250)).toBe('B1: layer 4 of 5 going down'))
  it('is all of it when the lift is up', () =>
    expect(standingText(plan, 400)).toBe('3 of 3 section layers stand'))
})
