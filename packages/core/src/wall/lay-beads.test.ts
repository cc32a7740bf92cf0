import { beforeAll, describe, expect, it } from 'vitest'
import {
  distance,
  flattenPath,
  initGeometry,
  nearestOnPath,
  type Point,
  pathBounds,
  pathLength,
  regionContains,
} from '../geometry/index.js'
import type { Band, Bead } from './bead.js'
import { beadLengthPerMetre } from './bead-length.js'
import { tieStart } from './corner.js'
import { house } from './fixtures/house.js'
import {
  double,
  embed,
  fixture,
  line,
  opening,
  print,
  solid,
  type WallFixture,
  wall,
} from './fixtures/invented.js'
import { plans } from './fixtures/plans.js'
import { type BandCache, layAllBeads } from './lay-beads.js'
import type { WallParts } from './parts.js'
import { sayThinPlace } from './thin-words.js'
import { validateBand } from './validate-band.js'

beforeAll(() => initGeometry())

const named = (name: string): WallFixture => plans.find(plan => plan.name === name)!
const lay = ({ parts, sections }: WallFixture) => layAllBeads(parts, sections)
const bandAt = (plan: WallFixture, layer: number): Band =>
  lay(plan)[0]!.bands.find(band => band.fromLayer <= layer && layer <= band.toLayer)!
const ofRole = (band: Band, role: Bead['role']) => band.beads.filter(bead => bead.role === role)
const clearOf = (beads: readonly Bead[], point: Point) =>
  Math.min(...beads.map(bead => nearestOnPath(bead.path, point).distance - bead.width / 2))

describe('every fixture', () => {
  it.each([...plans, house].map(plan => [plan.name, plan] as const))(
    'keeps the invariants of its bands: %s',
    (_, plan) => {
      for (const { bands } of lay(plan)) for (const band of bands) expect(validateBand(band)).toEqual([])
    },
  )
  it('survives structuredClone', () => {
    const laid = lay(named('curved'))
    expect(structuredClone(laid)).toEqual(laid)
  })
  it('covers its layers without gap', () => {
    for (const { bands, layers } of lay(house)) {
      expect(bands[0]!.fromLayer).toBe(1)
      expect(bands.at(-1)!.toLayer).toBe(layers)
      expect(bands.slice(1).map(band => band.fromLayer)).toEqual(
        bands.slice(0, -1).map(band => band.toLayer + 1),
      )
    }
  })
})

describe('a double wall', () => {
  it('has wythes half a bead inside its faces', () => {
    const [wythe] = ofRole(bandAt(named('straight'), 1), 'wythe')
    expect(pathBounds(wythe!.path)).toEqual({ least: [0.025, -0.1].map(near), most: [3.975, 0.1].map(near) })
  })
  it('ties both wythes, lapping a fifth of a bead onto each', () => {
    for (const web of ['zigzag', 'crosstie', 'wave'] as const) {
      const band = bandAt(
        fixture(web, { walls: [wall('w', line([0, 0], [4, 0]), { makeUp: double(web, 0.6) })] }),
        1,
      )
      const [tie] = ofRole(band, 'web')
      const [wythe] = ofRole(band, 'wythe')
      const { least, most } = pathBounds(tie!.path)
      // From the middle of the wythe to the middle of the tie: one bead less the lap.
      expect(most[1]).toBeCloseTo(0.1 - 0.04, 6)
      expect(least[1]).toBeCloseTo(-0.1 + 0.04, 6)
      for (const end of [tie!.path.points[0]!, tie!.path.points.at(-1)!])
        expect(nearestOnPath(wythe!.path, end).distance).toBeCloseTo(0.04, 6)
    }
  })
  it('ties onto its wythes where these swing round an acute inside corner', () => {
    const band = bandAt(named('acute bend and acute tee, rounded'), 1)
    const ends = ofRole(band, 'web').flatMap(({ path }) => [path.points[0]!, path.points.at(-1)!])
    expect(ends.length).toBeGreaterThan(6)
    for (const end of ends) {
      const away = Math.min(...ofRole(band, 'wythe').map(({ path }) => nearestOnPath(path, end).distance))
      // One bead less two fifths of the lap of 10 mm, which is what the end keeps at least.
      expect(away).toBeLessThan(0.046 + 1e-4)
    }
  })
  it('starts its tie past a sharp corner so that the end laps', () => {
    const rounded = { ...print, cornerRadius: 0.06 }
    // hand: r 0.035, at 60° r/tan 30° = 0.06062, √(0.106² − 0.1²) = 0.03516.
    expect(tieStart(Math.PI / 3, rounded)).toBeCloseTo(0.02546, 5)
    expect(tieStart(Math.PI / 2, rounded)).toBe(0)
    expect(tieStart(Math.PI / 3, print)).toBe(0)
  })
  it('ties where the layers below tie, though openings begin between', () => {
    const plan = fixture('window', {
      walls: [wall('w', line([0, 0], [6, 0]))],
      openings: [opening('o', 'w', 3.1, 1.2)],
    })
    const peaks = (layer: number) =>
      ofRole(bandAt(plan, layer), 'web').flatMap(tie => tie.path.points.slice(1, -1))
    const [below, beside] = [peaks(1), peaks(60)]
    expect(beside.length).toBeGreaterThan(8)
    for (const peak of beside)
      expect(Math.min(...below.map(other => distance(other, peak)))).toBeLessThan(1e-9)
  })
  it('keeps arcs as arcs in its wythes', () => {
    const [wythe] = ofRole(bandAt(named('curved'), 1), 'wythe')
    expect(wythe!.path.points.length).toBeLessThan(12)
    expect(wythe!.path.bulges.filter(bulge => bulge !== 0)).toHaveLength(2)
  })
  it('leaves its columns clear between their closers', () => {
    const band = bandAt(named('column and pier'), 1)
    expect(ofRole(band, 'closer')).toHaveLength(4)
    for (const x of [1.06, 1.2, 1.34])
      for (const y of [-0.07, 0, 0.07])
        expect(clearOf([...ofRole(band, 'web'), ...ofRole(band, 'closer')], [x, y])).toBeGreaterThan(0)
  })
  it('keeps its tie out of a pipe in the cavity', () => {
    expect(clearOf(ofRole(bandAt(named('recesses'), 5), 'web'), [4.3, 0])).toBeGreaterThan(0.04 - 1e-6)
  })
  it('runs round a chase as one loop', () => {
    const wythes = ofRole(bandAt(named('recesses'), 1), 'wythe')
    expect(wythes.map(bead => bead.path.closed)).toEqual([true])
    expect(clearOf(wythes, [1.6, -0.09])).toBeGreaterThan(0.03 - 1e-6)
  })
  it('interrupts the nearer wythe where a niche leaves room for one, and says so', () => {
    const band = bandAt(named('recesses'), 60)
    expect(ofRole(band, 'wythe').filter(bead => !bead.path.closed)).toHaveLength(1)
    expect(band.thinPlaces.map(place => place.recess)).toEqual([
      { ref: 'e3', left: expect.closeTo(0.08, 9), interrupted: false },
    ])
    const says = (units: 'metric' | 'imperial') =>
      band.thinPlaces.map(place => sayThinPlace(place, print, units))
    expect(says('metric')).toEqual([expect.stringContaining('e3 leaves 80 mm of wall')])
    // Hand: 80 mm / 25.4 = 3.15 in.
    expect(says('imperial')).toEqual([expect.stringContaining('e3 leaves 3.15 in of wall')])
    expect(clearOf(ofRole(band, 'wythe'), [2.6, -0.09])).toBeGreaterThan(0)
  })
})

describe('a single wall', () => {
  it('goes once round a room and butts its stem against it', () => {
    const lines = ofRole(bandAt(named('single room with a stem'), 1), 'line')
    expect(lines.map(bead => bead.path.closed).sort()).toEqual([false, true])
    const stem = lines.find(bead => !bead.path.closed)!
    // The stem's middle stops one bead less the lap from the other's.
    expect(Math.min(...stem.path.points.map(point => point[1]))).toBeCloseTo(0.04, 9)
  })
  it('stops half a bead short of an opening', () => {
    const lines = ofRole(bandAt(named('single room with a stem'), 60), 'line')
    const ends = lines.flatMap(({ path }) => (path.closed ? [] : [path.points[0]!, path.points.at(-1)!]))
    for (const x of [1.475, 2.525])
      expect(Math.min(...ends.map(end => distance(end, [x, 3])))).toBeLessThan(1e-6)
  })
})

describe('a solid wall', () => {
  // hand: straight 4 m × 0.2 m; per layer h·(area) − (2 faces and 2 ends) × h²(1 − π/4)/2.
  it('holds the volume of its body less its rounded sides', () => {
    const plan = fixture('solid', {
      walls: [wall('w', line([0, 0], [4, 0]), { makeUp: solid, thickness: 0.2, top: 0.02 })],
    })
    const wanted = 0.8 * 0.02 - 8.4 * 0.5 * 0.02 ** 2 * (1 - Math.PI / 4)
    // The loops turn sharp corners, where inside and outside of a bead balance but its rounded sides do not: 0.2 %.
    expect(lay(plan)[0]!.volume / wanted).toBeCloseTo(1, 2)
  })
})

describe('a changed plan', () => {
  it('computes only the bands an embed touches again', () => {
    const cache: BandCache = new Map()
    const before = layAllBeads(house.parts, house.sections, cache)
    const known = cache.size
    const embeds = house.parts.embeds.map(one => (one.id === 'b0' ? { ...one, at: one.at + 0.03 } : one))
    const after = layAllBeads({ ...house.parts, embeds }, house.sections, cache)
    const touched = after[0]!.bands.filter((band, i) => band.body !== before[0]!.bands[i]?.body)
    expect(cache.size - known).toBe(touched.length)
    expect(touched.length).toBeGreaterThan(0)
    expect(touched.length).toBeLessThan(4)
    expect(after[1]!.bands.every((band, i) => band.body === before[1]!.bands[i]!.body)).toBe(true)
  })
  const pipes = fixture('two windows, a box and a pipe', {
    walls: [wall('w', line([0, 0], [9, 0])), wall('v', line([4.5, 0], [4.5, 3]), { thickness: 0.2 })],
    openings: [
      opening('a', 'w', 2, 1, { sill: 0.8, head: 2 }),
      opening('b', 'w', 7, 1, { sill: 1, head: 2 }),
    ],
    embeds: [embed('p', 'w', 5.5, { face: 'middle', bottom: 1.2, height: 0.4 }), embed('q', 'v', 1.5)],
    print: { ...print, cornerRadius: 0.06 },
  })
  it('is laid as it would be from nothing, whichever of its parts changed', () => {
    const cache: BandCache = new Map()
    const { parts, sections } = pipes
    layAllBeads(parts, sections, cache)
    const { walls, embeds, openings } = parts
    const [w, v] = [walls[0]!, walls[1]!]
    const changed: WallParts[] = [
      ...embeds.map(one => ({
        ...parts,
        embeds: embeds.map(other => (other === one ? { ...one, at: one.at + 0.03 } : other)),
      })),
      { ...parts, openings: openings.slice(1) },
      { ...parts, walls: [w, { ...v, thickness: 0.24 }] },
      { ...parts, walls: [w, { ...v, makeUp: double('wave', 0.4) }] },
      { ...parts, print: { ...parts.print, cornerRadius: 0.04 } },
      { ...parts, print: { ...parts.print, beadWidth: 0.045 } },
      { ...parts, columns: [{ id: 'c', wall: 'w', at: 3.2, length: 0.3, thickness: 0.35, cover: 0.03 }] },
    ]
    for (const each of changed)
      expect(layAllBeads(each, sections, cache)).toEqual(layAllBeads(structuredClone(each), sections))
  })
  it('shares what its bands have in common: polygons, wythes and ties', () => {
    const { bands } = lay(pipes)[0]!
    const layer = (k: number) => bands.find(band => band.fromLayer <= k && k <= band.toLayer)!
    const shared = <Item>(these: readonly Item[], those: readonly Item[]) =>
      these.filter(item => those.includes(item)).length
    const paths = (k: number, role: Bead['role']) => ofRole(layer(k), role).map(({ path }) => path)
    expect([45, 55, 65].map(k => layer(k).body.length)).toEqual([2, 3, 3])
    // The pier before the first window goes on beside the second; the pipe changes ties alone.
    expect(shared(layer(55).body, layer(45).body)).toBe(1)
    expect(shared(layer(65).body, layer(55).body)).toBe(3)
    expect(shared(paths(65, 'wythe'), paths(55, 'wythe'))).toBe(3)
    expect(paths(65, 'web').length - shared(paths(65, 'web'), paths(55, 'web'))).toBe(2)
  })
  it('gives the same beads with and without a cache', () => {
    const cache: BandCache = new Map()
    layAllBeads(house.parts, house.sections, cache)
    expect(layAllBeads(house.parts, house.sections, cache)).toEqual(layAllBeads(house.parts, house.sections))
  })
})

describe('beadLengthPerMetre', () => {
  const webs = ['zigzag', 'crosstie', 'wave'] as const
  it.each(
    webs.flatMap(
      web =>
        [
          [web, 0],
          [web, 0.06],
        ] as const,
    ),
  )('is what a long straight wall takes: %s, corners of %d m', (web, cornerRadius) => {
    const long = wall('w', line([0, 0], [60, 0]), { makeUp: double(web, 0.5), thickness: 0.3 })
    const plan = fixture('long', { walls: [long], print: { ...print, cornerRadius } })
    const total = bandAt(plan, 1).beads.reduce((sum, bead) => sum + pathLength(bead.path), 0)
    // Jambs, and the tie that stops short of them: under a metre in sixty.
    expect(Math.abs(total / 60 - beadLengthPerMetre(long, plan.parts.print))).toBeLessThan(1 / 60)
  })
})

function near(value: number) {
  return expect.closeTo(value, 6)
}

describe('a relief', () => {
  it('keeps every bead inside its wavy body', () => {
    for (const band of lay(named('relief'))[0]!.bands)
      for (const { path } of band.beads)
        expect(flattenPath(path).every(point => regionContains(band.body, point))).toBe(true)
  })
})
