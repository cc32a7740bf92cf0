import { beforeAll, describe, expect, it } from 'vitest'
import {
  initGeometry,
  intersection,
  type Path,
  regionArea,
  regionRings,
  ringLength,
} from '../geometry/index.js'
import { sectionBody } from './body.js'
import { embed, fixture, line, print, solid, type WallFixture, wall } from './fixtures/invented.js'
import { plans } from './fixtures/plans.js'
import { layAllBeads } from './lay-beads.js'

beforeAll(() => initGeometry())

const named = (name: string): WallFixture => plans.find(plan => plan.name === name)!
const outline = (region: ReturnType<typeof sectionBody>) =>
  regionRings(region).reduce((sum, ring) => sum + ringLength(ring), 0)

describe('the body of a section', () => {
  // independent: shapely 1.8.5 with GEOS 3.11.1, 2026-11-25, fixtures/shapely_areas.py; sharp corners, 1.25 m above the slab.
  // Strips lap by 0.1 µm at their ends, and arcs are chords within 0.05 mm: the outer 3.34 m lose 2/3 of that, the inner 2.95 m gain it: 1.3e-5 m².
  it.each([
    ['straight', 1.0, 8.5, 5e-7],
    ['acute', 1.25, 10.5, 5e-7],
    ['tee', 1.71875, 14.25, 5e-7],
    ['slanting tee, drawn to the face', 1.8065308, 14.90543, 5e-7],
    ['cross', 1.9375, 16.0, 5e-7],
    ['curved', 1.5353984, 12.783185, 2e-5],
    ['change of thickness', 1.2, 8.7, 5e-7],
    ['recesses', 1.378, 11.28, 5e-7],
    ['solid with recesses', 0.9096, 11.2, 5e-7],
    ['column and pier', 1.325, 10.8, 5e-7],
  ])('of "%s" has the area and outline shapely finds', (name, area, length, tolerance) => {
    const { parts, sections } = named(name)
    const body = sectionBody(parts, sections[0]!, 1.25)
    expect(Math.abs(regionArea(body) - area)).toBeLessThan(tolerance)
    expect(Math.abs(outline(body) - length)).toBeLessThan(1e-4)
  })

  // Chords within 0.05 mm: 2/3 of that along 0.72 m of arc is 2.4e-5 m².
  // closed form: a corner rounded by r loses (1 − π/4)r², or gains it inside. Elbow: 5 corners outward by 85 mm, 1 inward by 35 mm.
  it('has its corners rounded as the nozzle turns', () => {
    const { parts, sections } = named('right angle')
    const corner = (r: number) => (1 - Math.PI / 4) * r * r
    const body = sectionBody(parts, sections[0]!, 1)
    expect(Math.abs(regionArea(body) - (1.25 - 5 * corner(0.085) + corner(0.035)))).toBeLessThan(2.4e-5)
  })

  // A random plan (seed 606): the foot of a slanting double stem reached through the middle of the solid wall into its chase.
  it('leaves a chase open where the foot of another wall reaches into it', () => {
    const walls = [
      wall('m', line([0, 0], [2, 0]), { makeUp: solid, thickness: 0.113 }),
      wall('s', line([0.6, 0], [1.2427876, 0.7660444]), { thickness: 0.2 }),
    ]
    const embeds = [
      embed('e', 'm', 0.54, {
        kind: 'chase',
        face: 'right',
        width: 0.127,
        depth: 0.063,
        bottom: 0,
        height: 2.4,
      }),
    ]
    const { parts, sections } = fixture('foot', { walls, embeds })
    const body = sectionBody(parts, sections[0]!, 1)
    const chase = [
      [0.4765, -0.0565],
      [0.6035, -0.0565],
      [0.6035, 0.0065],
      [0.4765, 0.0065],
    ] as const
    const inside = regionArea(intersection(body, [{ outer: chase, holes: [] }]))
    expect(inside).toBeLessThan(1e-8)
  })

  it('squares off a corner too sharp to be mitred', () => {
    const { parts, sections } = named('very acute')
    const xs = regionRings(sectionBody(parts, sections[0]!, 1))
      .flat()
      .map(point => point[0])
    expect(Math.max(...xs)).toBeLessThan(3 + 3 * 0.125 + 1e-6)
  })

  it('is gone in an opening and back above its lintel', () => {
    const { parts, sections } = named('closed room')
    const area = (z: number) => regionArea(sectionBody(parts, sections[0]!, z))
    expect(area(1.5)).toBeLessThan(area(0.5))
    expect(area(2.2)).toBeCloseTo(area(2.0), 9)
    expect(area(2.35)).toBeGreaterThan(area(0.5))
  })

  it.each(['tee between two sections', 'corner between two sections'])(
    'leaves the other section its own: %s',
    name => {
      const { parts, sections } = named(name)
      const [a, b] = sections.map(section => sectionBody(parts, section, 1))
      expect(regionArea(intersection(a!, b!))).toBeLessThan(1e-7)
      // Together they are the plan printed in one: nothing is missing at the joint.
      const whole = { id: 'W', stretches: sections.flatMap(section => section.stretches), joints: [] }
      const sum = regionArea(a!) + regionArea(b!)
      expect(Math.abs(sum - regionArea(sectionBody(parts, whole, 1)))).toBeLessThan(1e-6)
    },
  )
})

describe('walls of two make-ups at a corner', () => {
  // hand: double 2.1 × 0.3 to the outer face, solid 3 − 0.15 by 0.2 beside it.
  it('share it without gap or lap', () => {
    const { parts, sections } = named('double and solid at a corner')
    const sharp = sectionBody({ ...parts, print: { ...parts.print, cornerRadius: 0 } }, sections[0]!, 1)
    expect(sharp.map(polygon => regionArea([polygon])).sort()).toEqual([
      expect.closeTo(2.85 * 0.2, 6),
      expect.closeTo(2.1 * 0.3, 6),
    ])
  })
})

describe('a plan a thousand times larger or smaller', () => {
  const scaled = (k: number, { parts }: WallFixture): WallFixture =>
    fixture('scaled', {
      walls: parts.walls.map(w => ({
        ...w,
        centreline: grow(w.centreline, k),
        thickness: w.thickness * k,
        top: w.top * k,
      })),
      print: { ...print, beadWidth: print.beadWidth * k, layerHeight: print.layerHeight * k },
    })
  const grow = (path: Path, k: number): Path => ({
    ...path,
    points: path.points.map(([x, y]) => [x * k, y * k] as const),
  })

  it.each(['straight', 'acute', 'cross'])('has its body scaled by the square: %s', name => {
    const plan = named(name)
    const area = regionArea(sectionBody(plan.parts, plan.sections[0]!, 1))
    const large = scaled(1000, plan)
    expect(regionArea(sectionBody(large.parts, large.sections[0]!, 1000)) / (area * 1e6)).toBeCloseTo(1, 6)
    // Strips lap by 0.1 µm, which on walls a quarter of a millimetre thick is a part in a thousand.
    const small = scaled(0.001, plan)
    expect(regionArea(sectionBody(small.parts, small.sections[0]!, 0.001)) / (area * 1e-6)).toBeCloseTo(1, 2)
  })
})

describe('a wall far from the origin', () => {
  it('is laid as it is at the origin', () => {
    const length = (x: number) => {
      const { parts, sections } = fixture('far', { walls: [wall('w', line([x, x], [x + 3, x + 1]))] })
      return layAllBeads(parts, sections)[0]!.volume
    }
    expect(length(2000)).toBeCloseTo(length(0), 6)
  })
})
