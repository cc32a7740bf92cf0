import { beforeAll, describe, expect, it } from 'vitest'
import { initGeometry, type Polygon } from '../geometry/index.js'
import type { Job, Opening, Wall } from '../job/index.js'
import type { Band, SectionBands } from './bead.js'
import { checkOverhang, type KnownSteps } from './overhang.js'

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
    const known: KnownSteps = new WeakMap()
    const [first] = checkOverhang(job, stepped, known)
    expect(first?.check).toBe('unsupported')
    // other objects of other names, the same bodies
    const again = laid(stepped.bands.map(each => ({ ...each })))
    expect(checkOverhang({ ...job }, again, known)[0]!.point).toBe(first!.point)
    expect(checkOverhang(job, again)[0]!.point).not.toBe(first!.point)
  })
  it('is looked at anew when a lintel comes to carry it, a body changes, or the step moves up', () => {
    const known: KnownSteps = new WeakMap()
    const [first] = checkOverhang(job, stepped, known)
    expect(checkOverhang({ ...job, openings: [lintel] }, stepped, known)).toEqual([])
    const plumb = laid([band(1, 10, high), band(11, 20, high)])
    expect(checkOverhang(job, plumb, known)).toEqual([])
    const later = laid([band(1, 12, low), band(13, 20, high)])
    expect(checkOverhang(job, later, known)[0]?.at).not.toBe(first?.at)
  })
})
