import { describe, expect, it } from 'vitest'
import type { Campaign } from './campaign.js'
import { checkCampaign } from './check-campaign.js'
import { explainLift, sayLever } from './explain-lift.js'
import { growing, inventedHours, inventedInput, inventedWork, type Sky } from './invented-site.js'
import { leverSettings, pullLever } from './lever.js'
import { mostBinding } from './most-binding.js'
import { scheduleCampaign } from './schedule-campaign.js'

/** Mild until ten, then a mix of 34 °C that water of 10 °C would cool to its limit. */
const hotFromTen = (_: number, hour: number): Sky => (hour < 10 ? { air: 20 } : { air: 28, waterNeeded: 10 })
const hot = inventedInput([inventedWork('A', 100, 6)], 20, {
  hours: inventedHours('2026-06-01', 20, hotFromTen),
})
const first = (campaign: Campaign) => campaign.days[0]!.lifts[0]!

describe('a lift stopped by the heat', () => {
  const campaign = scheduleCampaign(hot)
  const lift = first(campaign)
  // Hand: 26 °C at 09:30 and 34 °C at 10:30 pass 32 °C at 10:15; from 05:30 that is 285 min, 47 layers of 6 min; the rule allows 50.
  it('has the layers that fit before a quarter past ten', () => {
    expect([lift.lastLayer, lift.wishedLayers]).toEqual([47, 50])
    expect(lift.binding).toMatchObject({ kind: 'mix-hot', demand: 34, capacity: 32, unit: '°C' })
  })
  it('gets the layers up to the rule by water of 8 °C, as 10 °C would do', () => {
    expect(lift.gains).toContainEqual(
      expect.objectContaining({ lever: 'chilled-water', setting: 8, layers: 3 }),
    )
    expect(lift.gains?.find(gain => gain.lever === 'chilled-water')?.bindsNext.kind).toBe('lift-height')
  })
  it('says so in one sentence', () => {
    expect(
      explainLift(
        { ...lift, nextGain: lift.gains!.find(gain => gain.lever === 'chilled-water')! },
        'metric',
        'UTC',
      ),
    ).toBe(
      'stops at layer 47 of 50: mix passes 32 °C at 10:15; chilled water at 8 °C buys 3 layers and brings the finish 1 day forward; then the height rule stops it',
    )
    expect(explainLift(lift, 'imperial', 'UTC')).toContain('mix passes 90 °F at 10:15')
  })
  // Hand: three lifts of 47, 47, 6 become two of 50.
  it('is worth a day to the whole campaign when the water is chilled', () => {
    const pulled = scheduleCampaign(pullLever(hot, { kind: 'chilled-water', setting: 8 })!)
    expect([campaign.days.length, pulled.days.length]).toEqual([3, 2])
    expect(mostBinding(pulled)).toBe('lift-height')
  })
  it('is not moved by water that is still too warm', () =>
    expect(pullLever(hot, { kind: 'chilled-water', setting: 12 })).toBeUndefined())
})

describe('a lift on a slow mix', () => {
  // Hand: n layers weigh 450·n, layer 1 bears 6000 + 1·age. At 18 °C the mix gains 2^(−0.2) = 0.8706 Pa/s, in 240 s a layer
  // 208.9 Pa. n·450 ≤ 6000 + 208.9·(n − 1) → n ≤ 5791.1/241.1 = 24.02.
  const slow = inventedInput([inventedWork('A', 60, 4)], 20, {
    hours: inventedHours('2026-06-01', 20, () => ({ air: 12 })),
    physics: growing(450, 6000, 1),
  })
  const lift = first(scheduleCampaign(slow))
  it('ends where the first layer would give', () => {
    expect(lift.lastLayer).toBe(24)
    expect(lift.binding.kind).toBe('collapse')
  })
  // Hand, layers of 360 s: 313.4 Pa a layer; n ≤ (6000 − 313.4)/(450 − 313.4) = 41.6.
  it('gets taller at a slower pace', () =>
    expect(lift.nextGain).toMatchObject({ lever: 'slower-pace', setting: 50, layers: 17 }))
})

describe('levers', () => {
  it('are planned for real: each row is a campaign that keeps every rule of the changed job', () => {
    const kinds = ['earlier-start', 'faster-nozzle', 'taller-lift', 'longer-shift', 'night-start'] as const
    for (const lever of kinds.flatMap(kind => leverSettings(hot, kind))) {
      const changed = pullLever(hot, lever)!
      expect(checkCampaign(changed, scheduleCampaign(changed, 'brisk')), sayLever(lever, 'metric')).toEqual(
        [],
      )
    }
  })
})

describe('what binds next', () => {
  // Hand: a lintel on layer 55 cuts the second lift to 10 of 50 layers, five open hours cut each lift to 45 of 50: the lintel takes most, but no lever
  // moves it; heat is what one can do something about.
  it('is told of what a lever could move, not of a lintel', () => {
    const ends = [{ afterLayer: 55, reason: 'lintel' as const, ref: 'L1' }]
    const lintelled = { ...hot, work: [{ ...inventedWork('A', 120, 6), liftEnds: ends }] }
    const campaign = scheduleCampaign(lintelled)
    expect(campaign.days.flatMap(day => day.lifts.map(one => one.binding.kind))).toContain('lintel-head')
    expect(mostBinding(campaign)).toBe('mix-hot')
  })
})
