import { describe, expect, it } from 'vitest'
import type { Job } from '../job/index.js'
import type { SectionBands } from '../wall/index.js'
import { thinPlaces } from './thin-places.js'

const job = { print: { beadWidth: 0.05 }, units: 'metric' } as Job

type ThinPlace = SectionBands['bands'][number]['thinPlaces'][number]

const recess = (ref: string, left: number): ThinPlace => ({
  point: [1, 0],
  area: 0,
  kind: 'recess',
  recess: { ref, left, interrupted: false },
})
const band = (fromLayer: number, toLayer: number, each: readonly ThinPlace[]) => ({
  fromLayer,
  toLayer,
  body: [],
  bodyArea: 0,
  beads: [],
  thinPlaces: each,
})
const told = (...bands: readonly ReturnType<typeof band>[]) =>
  thinPlaces(job, [{ section: 'A', layers: 90, bands, volume: 0 }]).map(({ at, say }) => `${at}: ${say}`)

describe('thin places of a plan', () => {
  it('are told once for a recess that goes through several bands, with the least it leaves', () => {
    const found = told(
      band(1, 50, [recess('n', 0.08)]),
      band(51, 51, [recess('n', 0.0875)]),
      band(52, 52, [recess('n', 0.095)]),
    )
    expect(found).toEqual([expect.stringContaining('section A, layers 1 to 52: n leaves 80 mm of wall')])
  })
  it('are told again where the recess comes back, and for every other one', () => {
    const found = told(
      band(1, 10, [recess('n', 0.08), recess('m', 0.09)]),
      band(11, 20, []),
      band(21, 30, [recess('n', 0.08)]),
    )
    expect(found).toHaveLength(3)
  })
  it('that stay the same from band to band are told once, and others each', () => {
    const thin: ThinPlace = { point: [1, 0], area: 1e-3, kind: 'void' }
    const [moved, grown] = [
      { ...thin, point: [1.01, 0] },
      { ...thin, area: 2e-3 },
    ] as const
    expect(told(band(1, 10, [thin]), band(11, 20, [thin]), band(31, 40, [thin]))).toHaveLength(2)
    expect(told(band(1, 10, [thin]), band(11, 20, [moved]), band(21, 30, [grown]))).toHaveLength(3)
    expect(told(band(1, 10, [thin]), band(11, 20, [{ ...thin, kind: 'thin' }]))).toHaveLength(2)
  })
})
