import type { Plan } from '@dawnlift/core/plan'
import { describe, expect, it } from 'vitest'
import { planPacker, planUnpacker } from './plan-parcels.js'

/** The cure of a lift that stays as it was. */
const kept = { lift: 'A1' }

/** As much of a plan as travels in pieces. */
const planOf = (bands: readonly object[], hours: readonly number[]): Plan =>
  ({
    bands: [{ section: 'A', layers: 4, bands }],
    routes: [{ section: 'A', routes: bands.map(band => ({ of: band })) }],
    campaign: { days: [], hours: hours.map(start => ({ start })) },
    cure: [kept],
    findings: [],
  }) as unknown as Plan

const [low, high, higher] = [{ fromLayer: 1 }, { fromLayer: 2 }, { fromLayer: 3 }]

function post() {
  const [pack, unpacker] = [planPacker(), planUnpacker()]
  return (plan: Plan) => {
    const { packed, messages } = structuredClone(pack(plan))
    for (const parcels of messages) unpacker.take(parcels)
    return { plan: unpacker.plan(packed), messages }
  }
}

describe('a plan on its way between threads', () => {
  it('arrives as it was sent', () => {
    const plan = planOf(
      [low, high],
      Array.from({ length: 300 }, (_, hour) => hour),
    )
    expect(post()(plan).plan).toEqual(plan)
  })
  it('has pieces it had before as the same objects, and does not send them again', () => {
    const send = post()
    const hours = [1, 2]
    const first = planOf([low, high], hours)
    const before = send(first).plan
    const second = { ...planOf([low, higher], hours), campaign: first.campaign }
    const { plan, messages } = send(second)
    expect(plan).toEqual(second)
    expect(plan.bands[0]?.bands[0]).toBe(before.bands[0]?.bands[0])
    expect(messages.flat().map(each => each.value)).not.toContainEqual(low)
    expect(messages.flat().map(each => each.value)).not.toContainEqual(kept)
    expect(plan.cure[0]).toBe(before.cure[0])
  })
  it('does not lose pieces of the next plan that come before this one is put together', () => {
    const [pack, unpacker] = [planPacker(), planUnpacker()]
    const [first, second] = [planOf([low], [1]), planOf([high], [2])].map(pack)
    for (const each of [first!, second!])
      for (const parcels of structuredClone(each.messages)) unpacker.take(parcels)
    unpacker.plan(first!.packed)
    expect(unpacker.plan(second!.packed).bands[0]?.bands).toEqual([high])
  })
  it('comes in messages of few pieces', () => {
    const bands = Array.from({ length: 50 }, (_, index) => ({ fromLayer: index }))
    expect(Math.max(...post()(planOf(bands, [1])).messages.map(each => each.length))).toBeLessThanOrEqual(8)
  })
})
