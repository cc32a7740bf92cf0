import type { Lift } from '@dawnlift/core/campaign'
import type { Plan } from '@dawnlift/core/plan'
import { describe, expect, it } from 'vitest'
import { limitChanges } from './limit-changes.js'

type Row = readonly [id: string, layers: number, binding?: Lift['binding']['kind']]

/** Only what the comparison reads. */
const plan = (date: string, ...rows: Row[]): Plan =>
  ({
    job: { site: { timeZone: 'UTC' } },
    campaign: {
      finish: 0,
      days: [
        {
          date,
          lifts: rows.map(([id, layers, kind = 'lift-height']) => ({
            id,
            firstLayer: 11,
            lastLayer: 10 + layers,
            binding: { kind },
          })),
        },
      ],
    },
  }) as unknown as Plan

describe('limitChanges', () => {
  it('tells lifts that lost layers and leaves the others out', () =>
    expect(
      limitChanges(plan('2026-07-14', ['A1', 40], ['B1', 50]), plan('2026-07-14', ['A1', 38], ['B1', 50])),
    ).toEqual({
      lifts: [{ lift: 'A1', before: 40, after: 38 }],
      finish: { before: '2026-07-14', after: '2026-07-14' },
      days: { before: 1, after: 1 },
    }))
  it('tells new and dropped lifts and a finish that moved', () => {
    const { lifts, finish } = limitChanges(
      plan('2026-07-14', ['A1', 40], ['A2', 3]),
      plan('2026-07-13', ['A1', 40], ['B1', 7]),
    )
    expect(lifts).toEqual([
      { lift: 'A2', before: 3 },
      { lift: 'B1', after: 7 },
    ])
    expect(finish).toEqual({ before: '2026-07-14', after: '2026-07-13' })
  })
  it('tells another limit that binds though the layers stay', () =>
    expect(
      limitChanges(plan('2026-07-14', ['A1', 40]), plan('2026-07-14', ['A1', 40, 'wind'])).lifts,
    ).toEqual([{ lift: 'A1', before: 40, after: 40, nowBound: { kind: 'wind' } }]))
  it('says nothing when nothing changed', () =>
    expect(limitChanges(plan('2026-07-14', ['A1', 40]), plan('2026-07-14', ['A1', 40])).lifts).toEqual([]))
})
