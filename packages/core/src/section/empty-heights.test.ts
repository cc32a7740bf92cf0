import { describe, expect, it } from 'vitest'
import type { Embed, Opening, Wall } from '../job/index.js'
import { checkBuildable, emptyHeights, proposeSections } from './index.js'
import type { Stretch } from './section.js'
import type { SectionJob } from './section-job.js'

const wall = (id: string, points: Wall['centreline']['points'], rest: Partial<Wall> = {}): Wall => ({
  id,
  name: id,
  centreline: { points, bulges: points.slice(1).map(() => 0), closed: false },
  makeUp: { kind: 'double', web: 'zigzag', webPitch: 0.6 },
  thickness: 0.25,
  base: 0,
  top: 2.4,
  joints: [],
  ...rest,
})

const window: Opening = {
  id: 'F1',
  wall: 'W1',
  kind: 'window',
  at: 3,
  width: 1,
  sill: 0.9,
  head: 2,
  lintel: { height: 0.2, bearing: 0.15, kind: 'precast' },
}

const long = wall('W1', [
  [0, 0],
  [6, 0],
])

const job = (change: Partial<SectionJob> = {}): SectionJob & { embeds: readonly Embed[]; columns: [] } => ({
  walls: [long],
  openings: [window],
  embeds: [],
  columns: [],
  print: { beadWidth: 0.05, layerHeight: 0.02, cornerRadius: 0.03, overhang: 0.2, speed: 0.1 },
  rules: { layerTimeMost: { value: 3600, source: 'the job' } } as SectionJob['rules'],
  sections: [],
  noCutAt: [],
  ...change,
})

const on = (from: number, to: number, name = 'W1'): Stretch => ({ wall: name, from, to })
const empty = (stretches: readonly Stretch[], change: Partial<SectionJob> = {}) =>
  emptyHeights(job(change), stretches).map(({ from, to }) => [from, to].map(each => Number(each.toFixed(6))))

describe('heights at which a section has nothing to print', () => {
  it('are those of the opening, its lintel included, where only sill and head are left', () =>
    expect(empty([on(2.5, 3.5)])).toEqual([[0.9, 2.2]]))
  it('are none with a bead’s width of wall beside the opening, and all the same with less', () => {
    expect(empty([on(2.45, 3.5)])).toEqual([])
    expect(empty([on(2.47, 3.5)])).toEqual([[0.9, 2.2]])
  })
  it('are none when another stretch of the section stands there', () =>
    expect(empty([on(2.5, 3.5), on(4, 5)])).toEqual([]))
  it('reach up from the slab below a wall that begins higher', () => {
    const lifted = { walls: [{ ...long, base: 1 }], openings: [] }
    expect(empty([on(0, 6)], lifted)).toEqual([[0, 1]])
  })
  it('do not count above the last material: a sill panel in an opening up to the top ends there', () => {
    const { lintel: _, ...open } = window
    expect(empty([on(2.5, 3.5)], { openings: [{ ...open, head: 2.4 }] })).toEqual([])
  })
  it('are all heights of a stretch that lies wholly in a hole, or in the wall it meets', () => {
    expect(empty([on(2.6, 2.9)], { openings: [{ ...window, sill: 0, head: 2.4 }] })).toEqual([[0, 2.4]])
    const stem = wall('W2', [
      [1, 0],
      [1, 2],
    ])
    // Hand: half of 250 mm is the other wall’s, 50 mm a bead.
    expect(empty([on(0, 0.17, 'W2')], { walls: [long, stem] })).toEqual([[0, 2.4]])
    expect(empty([on(0, 0.18, 'W2')], { walls: [long, stem] })).toEqual([])
  })
  it('count what a sleeve takes through the whole of a pier', () => {
    const sleeve = {
      id: 'E1',
      wall: 'W1',
      kind: 'sleeve',
      trade: 'plumbing',
      face: 'through',
      at: 2.3,
      bottom: 1,
      width: 0.34,
      height: 0.2,
      depth: 0.25,
      method: 'gap',
    } as const
    expect(empty([on(2.1, 3.5)], { embeds: [sleeve] })).toEqual([[1, 1.2]])
  })
})

describe('sections with nothing to print on some height', () => {
  const byHand = [
    { id: 'West', stretches: [on(0, 2.5)] },
    { id: 'Window', stretches: [on(2.5, 3.5)] },
    { id: 'East', stretches: [on(3.5, 6)] },
  ]
  it('set by hand are a problem that names the section, the heights and the opening', () => {
    const [problem, ...more] = checkBuildable(job({ sections: byHand }))
    expect(more).toEqual([])
    expect(problem).toMatchObject({ code: 'section/nothing-to-print', at: 'sections[1]' })
    expect(problem?.say).toContain('Section Window has nothing to print from 900 mm to 2.2 m (opening F1)')
  })
  it('set by hand give way to a division that can be printed', () => {
    const { sections, problems } = proposeSections(job({ sections: byHand }))
    expect(problems.map(({ code }) => code)).toEqual(['section/nothing-to-print'])
    expect(sections.map(({ id }) => id)).toEqual(['A'])
  })
  it('are a problem of the wall where no division can help', () => {
    const island = wall(
      'W9',
      [
        [0, 4],
        [2, 4],
      ],
      { base: 0.5 },
    )
    const [problem, ...more] = checkBuildable(job({ walls: [long, island] }))
    expect(more).toEqual([])
    expect(problem).toMatchObject({ code: 'wall/nothing-to-print', at: 'walls[1]' })
    expect(problem?.say).toContain('Wall W9 has nothing to print from 0 mm to 500 mm')
    expect(checkBuildable(job())).toEqual([])
  })
})
