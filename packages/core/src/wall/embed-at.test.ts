import { beforeAll, describe, expect, it } from 'vitest'
import { initGeometry, regionArea } from '../geometry/index.js'
import type { Embed, Wall } from '../job/index.js'
import { sectionBody } from './body.js'
import { checkWalls } from './check-walls.js'
import { embedAt, headLayers } from './embed-at.js'
import { embed, fixture, line, print, single, solid, type WallFixture, wall } from './fixtures/invented.js'
import { layAllBeads } from './lay-beads.js'
import { layerMiddle } from './layers.js'
import { checkOverhang } from './overhang.js'
import { validateBand } from './validate-band.js'

beforeAll(() => initGeometry())

// Layers of 20 mm; a layer may step in by 0.15 × 50 mm = 7.5 mm.
const niche = (rest: Partial<Embed> = {}): Embed =>
  embed('n', 'w', 2, {
    kind: 'niche',
    bottom: 1,
    height: 0.5,
    width: 0.4,
    depth: 0.12,
    head: 'corbelled',
    ...rest,
  })
const plan = (one: Embed, rest: Partial<Wall> = {}): WallFixture =>
  fixture('niche', { walls: [wall('w', line([0, 0], [4, 0]), { thickness: 0.3, ...rest })], embeds: [one] })
const lay = ({ parts, sections }: WallFixture) => layAllBeads(parts, sections)[0]!
const codes = (one: Embed, rest: Partial<Wall> = {}) =>
  checkWalls(plan(one, rest).parts).map(({ code }) => code)
const sizeAt = (one: Embed, layer: number) => {
  const { width, depth } = embedAt(one, layerMiddle(layer, print.layerHeight), print)
  return [width * 1000, depth * 1000].map(each => Math.round(each * 1e6) / 1e6)
}

describe('a corbelled head', () => {
  // Hand: 120 mm deep, 7.5 mm a layer: 16 steps close it, the last of them above the niche. Its top is layer 75, so layer 60 is whole.
  it('comes in from both sides and the back by the step allowed, up to the top of its niche', () => {
    expect(headLayers(niche(), print)).toBe(15)
    expect([60, 61, 62, 75].map(layer => sizeAt(niche(), layer))).toEqual([
      [400, 120],
      [385, 112.5],
      [370, 105],
      [175, 7.5],
    ])
  })
  it('closes from the sides alone where it goes right through', () => {
    const hatch = niche({ face: 'through', width: 0.2, depth: 0.3 })
    // Hand: 100 mm a side, 7.5 mm a layer: ⌈13.3⌉ − 1.
    expect(headLayers(hatch, print)).toBe(13)
    expect(sizeAt(hatch, 75)).toEqual([5, 300])
  })
  it('is none unless asked for', () => {
    const { head: _, ...flat } = niche()
    expect(embedAt(flat, 1.49, print)).toBe(flat)
  })
  it.each([
    ['double', {}],
    ['solid', { makeUp: solid }],
  ])('hangs over nothing in a %s wall, where a flat one does', (_, rest) => {
    const { head: __, ...flat } = niche()
    const [closing, open] = [plan(niche(), rest), plan(flat, rest)]
    expect(checkOverhang(closing.parts, lay(closing))).toEqual([])
    expect(checkOverhang(open.parts, lay(open)).map(({ check }) => check)).toEqual(['unsupported'])
    for (const band of lay(closing).bands) expect(validateBand(band)).toEqual([])
  })
  it('hangs over nothing right through a single wall', () => {
    const vent = plan(niche({ face: 'through', width: 0.2, depth: 0.05 }), {
      makeUp: single,
      thickness: 0.05,
    })
    expect(checkOverhang(vent.parts, lay(vent))).toEqual([])
  })
  it('takes from each layer of the wall what is left open on it', () => {
    const { parts, sections } = plan(niche())
    const area = (layer: number) =>
      regionArea(sectionBody(parts, sections[0]!, layerMiddle(layer, print.layerHeight)))
    // Hand: 4 × 0.3 less width × depth of the layer.
    expect(area(60)).toBeCloseTo(1.2 - 0.4 * 0.12, 6)
    expect(area(62)).toBeCloseTo(1.2 - 0.37 * 0.105, 6)
    expect(area(76)).toBeCloseTo(1.2, 6)
  })
  it('makes a band of each layer it closes on, and no more', () => {
    const bands = lay(plan(niche())).bands.map(({ fromLayer, toLayer }) => [fromLayer, toLayer])
    expect(bands).toEqual([
      [1, 50],
      [51, 60],
      ...Array.from({ length: 15 }, (_, i) => [61 + i, 61 + i]),
      [76, 120],
    ])
  })
})

describe('a head that cannot close', () => {
  it('within its height is a problem with the height it needs', () => {
    const [problem] = checkWalls(plan(niche({ height: 0.3 })).parts)
    expect(problem?.code).toBe('embed/head-too-low')
    // Hand: 16 layers of 20 mm.
    expect(problem?.say).toContain('needs 0.320 m')
    expect(codes(niche({ height: 0.32 }))).toEqual([])
  })
  it('where no step is allowed is a problem', () => {
    const { parts } = plan(niche())
    const none = { ...parts, print: { ...parts.print, overhang: 0 } }
    expect(checkWalls(none).map(({ code }) => code)).toEqual(['embed/head-too-low'])
  })
  it('belongs to no niche or gap, or has no back to close on', () => {
    expect(codes(niche({ kind: 'sleeve', face: 'through' }))).toEqual(['embed/no-head'])
    expect(codes(niche({ method: 'cut' }))).toEqual(['embed/no-head'])
    expect(codes(niche({ depth: 0.26 }))).toEqual(['embed/no-head'])
  })
})
