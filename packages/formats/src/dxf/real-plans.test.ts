import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { type Path, type Point, pathLength } from '@dawnlift/core/geometry'
import type { DrawingMapping } from '@dawnlift/document/job'
import { parseJob, readJobFiles } from '@dawnlift/document/job'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { noRealInputs, realFolder } from '../../../../tests/sources.js'
import { type Drawing, drawingWalls, type PlanToWrite, readDrawing, writeDrawing } from './index.js'
import { mapping, straight } from './invented-mapping.js'

const read = (drawing: Drawing, map: DrawingMapping) => {
  const result = drawingWalls(drawing, map)
  if (!result.ok) throw new Error(result.problems.map(each => each.say).join('\n'))
  return result.value
}
describe('writeDrawing', () => {
  const plan: PlanToWrite = {
    unit: 'mm',
    paths: [
      {
        layer: 'W',
        path: {
          points: [
            [0, 0],
            [5, 0],
            [5, 4],
          ],
          bulges: [0, 0.4142],
          closed: false,
        },
      },
      {
        layer: 'W',
        path: {
          points: [
            [1, 1],
            [2, 1],
            [2, 2],
          ],
          bulges: [0, -0.3, 0],
          closed: true,
        },
      },
    ],
    texts: [{ layer: 'N', point: [1, 2], text: 'مدخل — süd', height: 0.2 }],
    symbols: { S: [straight([-0.5, 0], [0.5, 0])] },
    blocks: [
      {
        layer: 'O',
        symbol: 'S',
        point: [2.5, 0],
        turn: 30,
        attributes: { MARK: 'F1', TYPE: 'window', NOTE: '8\' 1"' },
      },
    ],
  }
  it('is read back as what was written', () => {
    const back = readDrawing(writeDrawing(plan))
    if (!back.ok) throw new Error(back.problems[0]?.say)
    expect(back.value.unit).toBe('mm')
    expect(back.value.paths.filter(each => each.layer === 'W').map(each => each.path)).toEqual(
      plan.paths.map(each => each.path),
    )
    expect(back.value.texts.map(({ text, point }) => ({ text, point }))).toEqual([
      { text: 'مدخل — süd', point: [1, 2] },
    ])
    expect(back.value.blocks[0]).toMatchObject({
      layer: 'O',
      point: [2.5, 0],
      attributes: plan.blocks[0]?.attributes,
    })
  })
})

describe('any plan of lines and arcs', () => {
  const coordinate = fc.integer({ min: -30_000, max: 30_000 }).map(millimetres => millimetres / 1000)
  const corner = fc.record({ x: coordinate, y: coordinate, bulge: fc.constantFrom(0, 0, 0.4142, -1, 0.05) })
  const path = fc
    .tuple(fc.array(corner, { minLength: 2, maxLength: 6 }), fc.boolean())
    .map(([corners, closed]): Path => {
      const ring = closed && corners.length > 2
      const bulges = corners.map(each => each.bulge).slice(0, ring ? corners.length : -1)
      return { points: corners.map(({ x, y }): Point => [x, y]), bulges, closed: ring }
    })
    // A closed path that ends on its first corner is written without the doubled corner.
    .filter(({ points, closed }) => !closed || points[0]!.join() !== points.at(-1)!.join())
  const units = fc.constantFrom('mm', 'cm', 'm', 'in', 'ft')

  it('comes back from the file as it was written, in every unit', () =>
    fc.assert(
      fc.property(fc.array(path, { minLength: 1, maxLength: 8 }), units, (paths, unit) => {
        const text = writeDrawing({
          unit,
          paths: paths.map(each => ({ layer: 'W', path: each })),
          texts: [],
          symbols: {},
          blocks: [],
        })
        const back = readDrawing(text, { unit })
        if (!back.ok) throw new Error(back.problems[0]?.say)
        expect(back.value.paths.map(each => [each.path.closed, each.path.bulges])).toEqual(
          paths.map(each => [each.closed, each.bulges]),
        )
        // The file keeps a billionth of a unit.
        const off = back.value.paths.flatMap((each, i) =>
          each.path.points.map((point, j) =>
            Math.hypot(point[0] - paths[i]!.points[j]![0], point[1] - paths[i]!.points[j]![1]),
          ),
        )
        expect(Math.max(...off)).toBeLessThan(1e-8)
      }),
      { numRuns: 40 },
    ))
})

describe('the demo jobs', () => {
  const open = (folder: string) => {
    const beside = (name: string) =>
      readFileSync(new URL(`../../../../examples/${folder}/${name}`, import.meta.url))
    const text = beside('job.yaml').toString()
    const files = readJobFiles(text)
    if (!files.ok || !files.value.drawing) throw new Error('no drawing')
    const plan = readDrawing(beside(files.value.drawing.file))
    if (!plan.ok) throw new Error(plan.problems[0]?.say)
    const parsed = parseJob(text, { drawing: read(plan.value, files.value.drawing) })
    if (!parsed.ok) throw new Error(parsed.problems.map(each => each.say).join('\n'))
    return parsed.value
  }
  it.each([
    // hand: sums of the sides; quarter arcs π/2·r; the bow has chord 10 m and bulge 0.16: 16.025 m · 4·atan(0.16) = 10.1698 m.
    ['torrenubia', 10, 15, 74, 7, 15 + 7.6 + 1.2 * Math.PI + 12.6 + 10.1698 + 2 * 3.8 + 2 * 8.8 + 2 * 4.8],
    ['tern-cottage', 7, 8, 21, 4, (20 + 2 * Math.PI + 15.5 + 24 + 19.5 + 7.5 + 8 + 6) * 0.3048],
  ])(
    '%s is read whole, its drawing without a note',
    (folder, wallCount, openings, embeds, columns, length) => {
      const { job, notes } = open(folder)
      expect(notes).toEqual([])
      expect([job.walls.length, job.openings.length, job.embeds.length, job.columns.length]).toEqual([
        wallCount,
        openings,
        embeds,
        columns,
      ])
      expect(job.walls.reduce((sum, wall) => sum + pathLength(wall.centreline), 0)).toBeCloseTo(length, 3)
    },
  )
})

const folder = realFolder('dxf')
describe.skipIf(!existsSync(folder))(
  `real drawings${existsSync(folder) ? '' : ` (skipped: ${noRealInputs})`}`,
  () => {
    const real = (name: string, layers: DrawingMapping['layers'], thickness: number) => {
      const drawing = readDrawing(readFileSync(join(folder, name)), { unit: 'm' })
      if (!drawing.ok) throw new Error(drawing.problems[0]?.say)
      return read(drawing.value, mapping(layers, thickness))
    }
    const lengths = (name: string, layer: string) =>
      real(name, { [layer]: { is: 'walls', type: 'wall' } }, 0.16)
        .walls.map(wall => pathLength(wall.centreline).toFixed(6))
        .sort()

    // independent: the same floor was drawn once as centrelines and once as face outlines; each is the answer sheet of the other.
    it('one floor gives the same walls from its centrelines and from its face outlines', () =>
      expect(lengths('mlstruct302-double.dxf', 'WALL')).toEqual(
        lengths('mlstruct302-centreline.dxf', 'WALL-CL'),
      ))

    it('nine walls with gaps at corners and tees close to one outer ring of the building’s size', () => {
      const layers = {
        'WALL-EXT': { is: 'walls', type: 'wall' },
        'WALL-INT': { is: 'walls', type: 'wall' },
      } as const
      const ring = real('fzk-eg-midline.dxf', layers, 0.3).walls.find(wall => wall.centreline.closed)
      // hand: 12 m × 10 m outside, walls 0.30 m: the middle line is 2·(11.7 + 9.7) m long.
      expect(ring ? pathLength(ring.centreline) : 0).toBeCloseTo(42.8, 9)
    })
  },
)
