import type { Plan } from '@dawnlift/core/plan'
import { describe, expect, it } from 'vitest'
import { layerAt, standingLayers } from './standing.js'

const lift = (section: string, firstLayer: number, start: number, layerEnds: readonly number[]) => ({
  section,
  firstLayer,
  lastLayer: firstLayer + layerEnds.length - 1,
  start,
  end: layerEnds.at(-1)!,
  layerEnds,
})
/** Section A gets layers 1–3, then B 1–2, then A 4–5, a layer every 10 s. */
const plan = {
  campaign: {
    days: [
      { lifts: [lift('A', 1, 0, [10, 20, 30]), lift('B', 1, 100, [110, 120])] },
      { lifts: [lift('A', 4, 200, [210, 220])] },
    ],
  },
} as unknown as Plan

describe('standingLayers', () => {
  it('counts what is down at the moment, section by section', () => {
    expect([...standingLayers(plan, 25)]).toEqual([['A', 2]])
    expect([...standingLayers(plan, 211)]).toEqual([
      ['A', 4],
      ['B', 2],
    ])
  })
})

describe('layerAt', () => {
  it('is the layer going down while a lift runs, else the highest that stands', () => {
    expect([-5, 0, 15, 50, 115, 150, 215, 500].map(moment => layerAt(plan, moment))).toEqual([
      1, 1, 2, 3, 2, 3, 5, 5,
    ])
  })
})
