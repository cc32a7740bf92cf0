import { beforeAll, describe, expect, it } from 'vitest'
import { initGeometry, polygonArea } from '../geometry/index.js'
import type { Wall } from '../job/index.js'
import { sectionBody } from './index.js'

const wall: Wall = {
  id: 'W',
  name: 'W',
  centreline: {
    points: [
      [0, 0],
      [9.1, 0.7],
    ],
    bulges: [0],
    closed: false,
  },
  makeUp: { kind: 'double', web: 'zigzag', webPitch: 0.4 },
  thickness: 0.25,
  base: 0,
  top: 2.8,
  joints: [],
}
const openings = [{ id: 'D', wall: 'W', kind: 'door' as const, at: 4, width: 0.9, sill: 0, head: 2.1 }]
const print = { beadWidth: 0.05, layerHeight: 0.02, cornerRadius: 0.06, overhang: 0.12, speed: 0.15 }

describe('a section that ends in line with a jamb', () => {
  beforeAll(() => initGeometry())

  it('keeps nothing of the wall beside the door: every piece of its body can hold a bead', () => {
    const section = { id: 'A', stretches: [{ wall: 'W', from: 3.55, to: 9.127 }], joints: [] }
    const areas = sectionBody({ walls: [wall], openings, embeds: [], columns: [], print }, section, 1).map(
      polygonArea,
    )
    expect(areas).toHaveLength(1)
    expect(areas[0]).toBeGreaterThan(1)
  })
})
