import { beforeAll, describe, expect, it } from 'vitest'
import { distance, initGeometry, nearestOnPath, type Point, pathLength } from '../geometry/index.js'
import type { Embed } from '../job/index.js'
import { bandLayerVolume } from './band-volume.js'
import type { Band } from './bead.js'
import { faceLoss } from './bead-section.js'
import { embed, fixture, line, loop, opening, print, solid, wall } from './fixtures/invented.js'
import { plans } from './fixtures/plans.js'
import { layAllBeads } from './lay-beads.js'
import { sayThinPlace } from './thin-words.js'
import { validateBand } from './validate-band.js'

beforeAll(() => initGeometry())

const height = print.layerHeight

/** Four metres of solid wall with what is cut into it, as its first layer is printed. */
function layer(thickness: number, embeds: readonly Partial<Embed>[], rest: Partial<typeof print> = {}): Band {
  const { parts, sections } = fixture('solid', {
    walls: [wall('w', line([0, 0], [4, 0]), { makeUp: solid, thickness })],
    embeds: embeds.map((each, i) => embed(`e${i}`, 'w', 2, { bottom: 0, height: 2.4, ...each })),
    print: { ...print, ...rest },
  })
  return layAllBeads(parts, sections)[0]!.bands[0]!
}

const niche = (depth: number, width = 1): Partial<Embed> => ({ kind: 'niche', depth, width })

/** Distance from a point to the side of the nearest bead; negative inside it. */
const clearance = ({ beads }: Band, point: Point): number =>
  Math.min(...beads.map(({ path, width }) => nearestOnPath(path, point).distance - width / 2))

/** How often the beads lie over a point, taken as wide as their pitch. */
const layersOver = ({ beads }: Band, point: Point): number =>
  beads.reduce((sum, { path, width }) => {
    const half = (width - height * (1 - Math.PI / 4)) / 2
    return sum + (nearestOnPath(path, point).distance < half ? 1 : 0)
  }, 0)

describe('a solid wall with a recess in its face', () => {
  const depths = [0.1, 0.15, 0.2, 0.3].flatMap(thickness =>
    Array.from(
      { length: Math.round((thickness - 0.05) / 0.01) },
      (_, i) => [thickness, 0.01 * (i + 1)] as const,
    ),
  )
  // Hand: less the niche of 1 m, along which the outline gains twice its depth. A bead that ends in a half circle loses at most a
  // quarter of a squared bead, 6 cm² of the 3,500 and more.
  it.each(depths)('of %d m, %d m deep, holds what its body holds', (thickness, depth) => {
    const band = layer(thickness, [niche(depth)])
    const faces = 2 * (4 + thickness) + 2 * depth
    const wanted = (4 * thickness - depth) * height - faces * faceLoss(height)
    expect(Math.abs(bandLayerVolume(band) / wanted - 1)).toBeLessThan(0.007)
    expect(validateBand(band)).toEqual([])
    expect(band.thinPlaces).toEqual([])
  })
  it.each(depths)('of %d m, %d m deep, is laid once at every place behind it', (thickness, depth) => {
    const band = layer(thickness, [niche(depth)])
    const left = thickness - depth
    // Clear of the beads' sides, which meet within a grid of 1.7 mm where they do.
    const over = Array.from({ length: Math.floor(left / 0.0017) - 2 }, (_, i) =>
      layersOver(band, [2.013, -thickness / 2 + 0.003 + 0.0017 * i]),
    )
    expect(over.filter(count => count > 1).length).toBeLessThanOrEqual(1)
    expect(over.filter(count => count === 0).length).toBeLessThanOrEqual(2)
  })
  it('of 60 mm in a wall of 150 mm goes round behind it in a loop and along its middle, 47 mm wide', () => {
    // Hand: 150 mm hold 4 beads at 36.43 mm. The 90 mm behind hold 85.71 mm at pitch: one pair leaves 12.85, less than the narrowest
    // bead of 15.71; two beads instead share 42.85 each, 47.15 mm wide.
    const narrow = layer(0.15, [niche(0.06)]).beads.filter(({ width }) => width > 0.045)
    expect(narrow.map(({ width }) => width * 1000)).toEqual([expect.closeTo(47.15, 1)])
    expect(narrow[0]?.path.closed).toBe(true)
  })
  it('keeps its beads within what is left of it beside an opening', () => {
    const { parts, sections } = fixture('solid', {
      walls: [wall('w', line([0, 0], [4, 0]), { makeUp: solid, thickness: 0.2 })],
      openings: [opening('o', 'w', 1.5, 1)],
      embeds: [embed('e', 'w', 2.1, { kind: 'niche', bottom: 0, height: 2.4, width: 0.3, depth: 0.09 })],
    })
    for (const band of layAllBeads(parts, sections)[0]!.bands) expect(validateBand(band)).toEqual([])
  })
  it('40 mm wide is filled across behind it', () => {
    const band = layer(0.14, [{ kind: 'pipe', face: 'middle', width: 0.04, depth: 0.04 }])
    const across = band.beads.filter(({ path }) => !path.closed)
    // Hand: 50 mm on either side, 45.7 at pitch; the run of 40 mm and what the loops leave beside it hold one bead.
    expect(across).toHaveLength(2)
    for (const { path } of across) expect(pathLength(path)).toBeLessThan(0.01)
    expect(clearance(band, [2, 0.045])).toBeLessThan(0)
  })
  it('bends with a round wall', () => {
    const { parts, sections } = fixture('round', {
      walls: [wall('w', { ...loop([-2, 0], [2, 0]), bulges: [1, 1] }, { makeUp: solid, thickness: 0.2 })],
      embeds: [embed('e', 'w', 3, { kind: 'niche', bottom: 0, height: 2.4, width: 0.6, depth: 0.09 })],
    })
    const band = layAllBeads(parts, sections)[0]!.bands[0]!
    expect(validateBand(band)).toEqual([])
    expect(bandLayerVolume(band) / height / band.bodyArea).toBeGreaterThan(0.96)
  })
})

describe('recesses beside each other in a solid wall', () => {
  it('that leave less than a bead between them are told by both names', () => {
    const band = layer(0.15, [
      { kind: 'chase', face: 'left', depth: 0.03, width: 0.06 },
      { kind: 'pipe', face: 'middle', depth: 0.05, width: 0.04 },
    ])
    const told = band.thinPlaces.filter(({ kind }) => kind === 'recess')
    // Hand: the chase reaches in to 45 mm from the middle, the pipe out to 25.
    expect(told.map(({ recess }) => [recess?.ref, recess?.left])).toEqual([
      ['e0 and e1', expect.closeTo(0.02, 9)],
    ])
    expect(sayThinPlace(told[0]!, print, 'metric')).toContain('e0 and e1 leaves 20 mm of wall')
    expect(distance(told[0]!.point, [2, 0.035])).toBeLessThan(1e-9)
  })
  it('hold what shapely finds of their body', () => {
    const { parts, sections } = plans.find(({ name }) => name === 'solid with recesses')!
    const band = layAllBeads(parts, sections)[0]!.bands.find(({ fromLayer }) => fromLayer === 51)!
    // independent: shapely 1.8.5 with GEOS 3.11.1, 2026-11-25, fixtures/shapely_areas.py: area and outline. Ends of beads as above.
    const [area, outline] = [0.9096, 11.2]
    const wanted = area * height - outline * faceLoss(height)
    expect(Math.abs(bandLayerVolume(band) / wanted - 1)).toBeLessThan(0.01)
  })
})

describe('a pier of a solid wall between two openings', () => {
  const pier = (length: number): Band => {
    const { parts, sections } = fixture('pier', {
      walls: [wall('w', line([0, 0], [4, 0]), { makeUp: solid, thickness: 0.2 })],
      openings: [
        opening('o', 'w', 1.5 - length / 2, 1, { sill: 0 }),
        opening('p', 'w', 2.5 + length / 2, 1, { sill: 0 }),
      ],
    })
    return layAllBeads(parts, sections)[0]!.bands[0]!
  }
  // Hand: 200 mm hold six beads at 32.62 mm, 36.91 wide: two need 69.53 mm, and may be a tenth closer.
  it('too narrow for two beads is told with what they need, as they lie on each other', () => {
    const [told, ...more] = pier(0.06).thinPlaces
    expect(more).toEqual([])
    expect([told?.kind, told?.point.map(each => Math.round(each * 1000))]).toEqual(['doubled', [2000, 0]])
    expect(sayThinPlace(told!, print, 'metric')).toContain('two beads need 69.5 mm, less is there')
  })
  it('with room for two is not', () => {
    expect(pier(0.065).thinPlaces).toEqual([])
    expect(pier(0.2).thinPlaces).toEqual([])
  })
})

describe('a thin solid wall', () => {
  it('as thick as a bead is its centreline', () => {
    const band = layer(0.05, [])
    expect(band.beads.map(({ role, path }) => [role, path.closed])).toEqual([['line', false]])
    expect(pathLength(band.beads[0]!.path)).toBeCloseTo(3.95, 9)
  })
  it('a little thicker is a loop of two narrow beads', () => {
    const band = layer(0.06, [])
    expect(band.beads.map(({ width, path }) => [path.closed, width * 1000])).toEqual([
      // Hand: (60 − 4.292)/2 + 4.292.
      [true, expect.closeTo(32.146, 3)],
    ])
    expect(validateBand(band)).toEqual([])
  })
})
