import { describe, expect, it } from 'vitest'
import { coursesOf } from './courses.js'

const band = { fromLayer: 3, toLayer: 6 }
const section = { layers: 5, shares: [0, 0, 0.5, 0.5, 1, 1] }

describe('courses of a band', () => {
  it('are its layers one by one, as far as they stand', () =>
    expect(coursesOf(band, section, false).map(each => each.toLayer)).toEqual([3, 4, 5]))
  it('are drawn together where they have one shade', () =>
    expect(coursesOf(band, section, true)).toEqual([
      { toLayer: 4, layers: 2, share: 0.5 },
      { toLayer: 5, layers: 1, share: 1 },
    ]))
  it('are none before the nozzle gets there', () =>
    expect(coursesOf(band, { layers: 2, shares: [0, 0] }, true)).toEqual([]))
})
