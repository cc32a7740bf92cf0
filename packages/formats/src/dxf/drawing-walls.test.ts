import { type Path, type Point, pathLength } from '@dawnlift/core/geometry'
import type { DrawingMapping } from '@dawnlift/document/job'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Drawing, type DrawnBlock, drawingWalls } from './index.js'
import { mapping, straight } from './invented-mapping.js'

const sheet = (paths: readonly Path[], more: Partial<Drawing> = {}): Drawing => ({
  version: 'AC1027',
  unit: 'm',
  metresPerUnit: 1,
  paths: paths.map(path => ({ layer: 'W', entity: 'LINE', path })),
  texts: [],
  blocks: [],
  leftOut: {},
  notes: [],
  least: [0, 0],
  most: [10, 10],
  ...more,
})

const walls = { W: { is: 'walls', type: 'wall' } } as const
const block = (layer: string, point: Point, attributes: Record<string, string>): DrawnBlock => ({
  layer,
  name: 'B',
  point,
  attributes,
  least: point,
  most: point,
})

const read = (drawing: Drawing, map: DrawingMapping) => {
  const result = drawingWalls(drawing, map)
  if (!result.ok) throw new Error(result.problems.map(each => each.say).join('\n'))
  return result.value
}
const problems = (drawing: Drawing, map: DrawingMapping) => {
  const result = drawingWalls(drawing, map)
  return result.ok ? [] : result.problems.map(each => each.code)
}

describe('lines become walls', () => {
  it('end to end, whatever direction they were drawn in, to one closed wall', () => {
    const found = read(
      sheet([
        straight([0, 0], [4, 0]),
        straight([4, 3], [4, 0]),
        straight([0, 3], [4, 3]),
        straight([0, 3], [0, 0]),
      ]),
      mapping(walls),
    )
    expect(found.walls.map(wall => [wall.id, wall.centreline.closed, pathLength(wall.centreline)])).toEqual([
      ['W1', true, 14],
    ])
  })
  it('separate where three meet', () => {
    const found = read(
      sheet([straight([0, 0], [4, 0]), straight([4, 0], [8, 0]), straight([4, 0], [4, 3])]),
      mapping(walls),
    )
    expect(found.walls.length).toBe(3)
  })
  it('separate where the type changes', () => {
    const drawing = sheet([straight([0, 0], [4, 0]), straight([4, 0], [4, 3])])
    const typed = {
      ...drawing,
      paths: drawing.paths.map((path, i) => ({ ...path, layer: i === 0 ? 'W' : 'X' })),
    }
    expect(read(typed, mapping({ ...walls, X: { is: 'walls', type: 'other' } })).walls.length).toBe(2)
  })
  it('joined over gaps within the tolerance, each join reported', () => {
    const found = read(sheet([straight([0, 0], [4, 0]), straight([4.004, 0], [4, 3])]), mapping(walls))
    expect(found.walls.length).toBe(1)
    expect(found.notes.map(note => [note.code, note.point])).toEqual([['dxf/joined', [4, 0]]])
  })
  it('side by side stay apart however far ends are joined, and that is told', () => {
    // 200 mm thick, 250 mm between them: joined, the second would lie across the first.
    const beside = sheet([straight([0, 0], [4, 0]), straight([0, 0.25], [4, 0.25])])
    const found = read(beside, mapping(walls, 0.2, 0.3))
    expect(found.walls.map(wall => wall.centreline.points)).toEqual([
      [
        [0, 0],
        [4, 0],
      ],
      [
        [0, 0.25],
        [4, 0.25],
      ],
    ])
    expect(found.notes.map(note => note.code)).toContain('dxf/not-joined')
  })
  it('in one line, or past each other at a corner, are joined over gaps as wide as they are thick', () => {
    const line = read(
      sheet([straight([0, 0], [4, 0]), straight([4.15, 0.05], [8, 0.05])]),
      mapping(walls, 0.2, 0.3),
    )
    expect(line.walls.length).toBe(1)
    const corner = read(
      sheet([straight([0, 0], [4.1, 0]), straight([4, -0.1], [4, 3])]),
      mapping(walls, 0.2, 0.3),
    )
    expect(corner.walls.length).toBe(1)
  })
  it('drawn on to the centreline of the wall at whose face they stop', () => {
    const found = read(sheet([straight([0, 0], [8, 0]), straight([4, 0.1], [4, 3])]), mapping(walls))
    expect(found.walls.map(wall => pathLength(wall.centreline)).sort()).toEqual([3, 8])
    expect(found.notes.map(note => note.code)).toEqual(['dxf/reached'])
  })
  it('cut back when they overshoot, and met at a corner where both stop short', () => {
    const found = read(
      sheet([straight([0, 0], [7.9, 0]), straight([8, 0.1], [8, 3]), straight([4, -0.06], [4, 3])]),
      mapping(walls),
    )
    expect(found.walls.map(wall => Math.round(pathLength(wall.centreline) * 1e6) / 1e6).sort()).toEqual([
      11, 3,
    ])
  })
  it('left as they are when the gap is a doorway, and the loose end is named when it may be a slip', () => {
    const doorway = read(sheet([straight([0, 0], [4, 0]), straight([4.9, 0], [8, 0])]), mapping(walls))
    expect([doorway.walls.length, doorway.notes.length]).toEqual([2, 0])
    const slip = read(sheet([straight([0, 0], [8, 0]), straight([4, 0.25], [4, 3])]), mapping(walls))
    expect(slip.notes.map(note => note.code)).toEqual(['dxf/loose-end'])
  })
  it('once when drawn twice, in either direction', () => {
    const found = read(sheet([straight([0, 0], [4, 0]), straight([4, 0], [0, 0])]), mapping(walls))
    expect([found.walls.length, found.notes[0]?.code]).toEqual([1, 'dxf/double'])
  })
  it('reported where two lie on each other for a stretch, with the place and length', () => {
    const found = read(
      sheet([straight([0, 0], [6, 0]), straight([4, 0.01], [9, 0.01])]),
      mapping(walls, 0.2, 0.001),
    )
    expect(found.notes.map(note => [note.code, note.point])).toEqual([['dxf/overlap', [4, 0]]])
  })
  it('not at all when they have no length', () => {
    const found = read(sheet([straight([0, 0], [4, 0]), straight([2, 2], [2, 2])]), mapping(walls))
    expect([found.walls.length, found.notes[0]?.code, found.notes[0]?.point]).toEqual([
      1,
      'dxf/zero-length',
      [2, 2],
    ])
  })
  it('through the middle of an outline as wide as the wall', () => {
    const outline: Path = {
      points: [
        [0, 0],
        [5, 0],
        [5, 0.2],
        [0, 0.2],
      ],
      bulges: [0, 0, 0, 0],
      closed: true,
    }
    const found = read(sheet([outline]), mapping(walls))
    expect(found.walls[0]?.centreline).toEqual(straight([5, 0.1], [0, 0.1]))
  })
  it('with the marks and names written beside them', () => {
    const texts = [
      { layer: 'N', point: [2, 0.3] as Point, text: 'S: south' },
      { layer: 'N', point: [50, 50] as Point, text: 'far' },
    ]
    const found = read(
      sheet([straight([0, 0], [4, 0])], { texts }),
      mapping({ ...walls, N: { is: 'names' } }),
    )
    expect(found.walls.map(wall => [wall.id, wall.name])).toEqual([['S', 'south']])
    expect(found.notes.map(note => note.code)).toEqual(['dxf/unused-name'])
  })
  it('refused where one crosses itself, with the place', () => {
    const result = drawingWalls(sheet([straight([0, 0], [4, 0], [4, 2], [2, 2], [2, -2])]), mapping(walls))
    expect(result.ok ? '' : `${result.problems[0]?.code} ${result.problems[0]?.at}`).toBe(
      'dxf/self-crossing (2.000, 0.000) m',
    )
  })
  it('the same length whatever the order they are drawn in', () => {
    const lines = [
      straight([0, 0], [4, 0]),
      straight([4, 0], [4, 3]),
      straight([4, 3], [0, 3]),
      straight([0, 3], [0, 0]),
      straight([2, 0], [2, 3]),
    ]
    fc.assert(
      fc.property(fc.shuffledSubarray(lines, { minLength: 5 }), shuffled => {
        const total = read(sheet(shuffled), mapping(walls)).walls.reduce(
          (sum, wall) => sum + pathLength(wall.centreline),
          0,
        )
        return Math.abs(total - 17) < 1e-9
      }),
    )
  })
})

describe('layers', () => {
  it('that the job names but nobody drew on are problems with the nearest name', () => {
    const result = drawingWalls(
      sheet([straight([0, 0], [4, 0])]),
      mapping({ WW: { is: 'walls', type: 'wall' } }),
    )
    expect(result.ok ? '' : result.problems[0]?.say).toContain('did you mean “W”?')
  })
  it('that the job does not map are noted with the place of the first thing', () => {
    const drawing = sheet([straight([0, 0], [4, 0])], { texts: [{ layer: 'T', point: [1, 2], text: 'x' }] })
    expect(read(drawing, mapping(walls)).notes.map(note => [note.code, note.point])).toEqual([
      ['dxf/unmapped-layer', [1, 2]],
    ])
  })
  it('match without regard to capitals', () =>
    expect(
      read(sheet([straight([0, 0], [4, 0])]), mapping({ w: { is: 'walls', type: 'wall' } })).walls.length,
    ).toBe(1))
  it('of unknown type are problems', () =>
    expect(problems(sheet([straight([0, 0], [4, 0])]), mapping({ W: { is: 'walls', type: 'wal' } }))).toEqual(
      ['job/unknown-type'],
    ))
})

describe('things on walls', () => {
  const map = mapping({
    ...walls,
    O: { is: 'openings', type: 'window' },
    E: { is: 'embeds' },
    C: { is: 'columns', type: 'cast' },
  })
  const wall = straight([0, 0], [8, 0])
  const having = (blocks: readonly DrawnBlock[], paths: Drawing['paths'] = []) => {
    const drawing = sheet([wall], { blocks })
    return { ...drawing, paths: [...drawing.paths, ...paths] }
  }
  const only = (...used: string[]) => ({
    ...map,
    layers: Object.fromEntries(
      Object.entries(map.layers).filter(([layer]) => layer === 'W' || used.includes(layer)),
    ),
  })

  it('openings take station from their place and size from type and attributes', () => {
    const found = read(having([block('O', [3, 0.05], { MARK: 'F7', WIDTH: '80 cm' })]), only('O'))
    expect(found.openings).toEqual([
      { id: 'F7', wall: 'W1', kind: 'window', at: 3, width: 0.8, sill: 0.9, head: 2.1 },
    ])
  })
  it('openings drawn as a line are as wide as the line', () => {
    const path = { layer: 'O', entity: 'LINE', path: straight([5, 0], [6, 0]) }
    expect(read(having([], [path]), only('O')).openings[0]).toMatchObject({ id: 'O1', at: 5.5, width: 1 })
  })
  it('embeds take their face from the side they stand on', () => {
    const attributes = { TYPE: 'box', BOTTOM: '300 mm' }
    const found = read(
      having([
        block('E', [1, 0.1], attributes),
        block('E', [2, -0.1], attributes),
        block('E', [3, 0], attributes),
      ]),
      only('E'),
    )
    expect(found.embeds.map(embed => [embed.id, embed.face])).toEqual([
      ['M1', 'left'],
      ['M2', 'right'],
      ['M3', 'middle'],
    ])
  })
  it('embeds take a corbelled head from their type', () => {
    const niche = { ...map.embedTypes.box!, kind: 'niche', method: 'gap', head: 'corbelled' } as const
    const typed = { ...only('E'), embedTypes: { niche } }
    const found = read(having([block('E', [1, 0.1], { TYPE: 'niche', BOTTOM: '1 m' })]), typed)
    expect(found.embeds.map(({ head }) => head)).toEqual(['corbelled'])
  })
  it('columns take their length from the type and their thickness from the wall', () => {
    expect(read(having([block('C', [4, 0], { MARK: 'K1' })]), only('C')).columns).toEqual([
      { id: 'K1', wall: 'W1', at: 4, length: 0.3, thickness: 0.2, cover: 0.04 },
    ])
  })
  it('away from every wall are problems that say how far', () => {
    const result = drawingWalls(having([block('O', [3, 1], { MARK: 'F7' })]), only('O'))
    expect(result.ok ? '' : result.problems[0]?.say).toBe(
      'The opening “F7” at (3.000, 1.000) m stands in no wall; the nearest, W1, is 1000 mm away. Move it onto the wall it belongs to.',
    )
  })
  it('with a bare number for an attribute are problems', () =>
    expect(problems(having([block('O', [3, 0], { WIDTH: '800' })]), only('O'))).toEqual(['dxf/attribute']))
  it('without a size are problems', () =>
    expect(problems(having([block('O', [3, 0], { TYPE: 'door' })]), only('O'))).toEqual(['dxf/no-size']))
})
