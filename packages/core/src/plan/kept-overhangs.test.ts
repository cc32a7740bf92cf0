import { beforeAll, describe, expect, it } from 'vitest'
import { initGeometry, type Polygon } from '../geometry/index.js'
import type { Job, Opening, Wall } from '../job/index.js'
import type { Section } from '../section/index.js'
import type { Band, SectionBands } from '../wall/index.js'
import { type KeptOverhangs, keptOverhangs } from './kept-overhangs.js'

beforeAll(() => initGeometry())

const box = (width: number): Polygon => ({
  outer: [
    [0, 0],
    [width, 0],
    [width, 0.3],
    [0, 0.3],
  ],
  holes: [],
})
const band = (fromLayer: number, toLayer: number, body: readonly Polygon[]): Band => ({
  fromLayer,
  toLayer,
  body,
  bodyArea: 0.3,
  beads: [],
  thinPlaces: [],
})

/** A wall of 2 m up to layer 10, of 3 m above: one metre hangs over nothing. */
const [low, high] = [[box(2)], [box(3)]]
const laid = (bands: readonly Band[]): SectionBands => ({ section: 'A', layers: 20, bands, volume: 1 })
const stepped = laid([band(1, 10, low), band(11, 20, high)])
const section: Section = { id: 'A', stretches: [{ wall: 'W', from: 0, to: 3 }], joints: [] }
const wall = {
  id: 'W',
  centreline: {
    points: [
      [0, 0.15],
      [3, 0.15],
    ],
    bulges: [0],
    closed: false,
  },
  thickness: 0.3,
} as unknown as Wall
const job = {
  print: { beadWidth: 0.05, layerHeight: 0.02, overhang: 0.3 },
  walls: [wall],
  openings: [],
  embeds: [],
} as unknown as Job
const lintel = {
  id: 'D',
  wall: 'W',
  at: 2.5,
  width: 1,
  sill: 0,
  head: 0.1,
  lintel: { height: 0.1, bearing: 0.2 },
} as unknown as Opening

describe('what hangs over, kept from plan to plan', () => {
  it('is looked at once while bands and carriers stay', () => {
    const cache = new Map<string, KeptOverhangs>()
    const [first] = keptOverhangs(job, [section], [stepped], cache)
    expect(first?.check).toBe('unsupported')
    // other objects of other names, the same bodies
    const again = laid(stepped.bands.map(each => ({ ...each })))
    expect(keptOverhangs({ ...job }, [section], [again], cache)[0]).toBe(first)
  })
  it('is looked at anew when a lintel comes to carry it, a body changes, or the step moves up', () => {
    const cache = new Map<string, KeptOverhangs>()
    const [first] = keptOverhangs(job, [section], [stepped], cache)
    expect(keptOverhangs({ ...job, openings: [lintel] }, [section], [stepped], cache)).toEqual([])
    const plumb = laid([band(1, 10, high), band(11, 20, high)])
    expect(keptOverhangs(job, [section], [plumb], cache)).toEqual([])
    const later = laid([band(1, 12, low), band(13, 20, high)])
    expect(keptOverhangs(job, [section], [later], cache)[0]?.at).not.toBe(first?.at)
  })
})
