import type { Path } from '@dawnlift/core/geometry'
import type { DrawingMapping } from '@dawnlift/document/job'
import { drawingWalls } from './drawing-walls.js'
import { readDrawing } from './read-drawing.js'
import { writeDrawing } from './write-drawing.js'

/** A square field of `side`² separate walls, as many as no real plan has. */
function field(side: number): readonly Path[] {
  const rows = Array.from({ length: side }, (_, i) => i)
  return rows.flatMap(x =>
    rows.map(
      (y): Path => ({
        points: [
          [x, y],
          [x + 0.6, y],
        ],
        bulges: [0],
        closed: false,
      }),
    ),
  )
}

const mapping: DrawingMapping = {
  file: 'field.dxf',
  origin: [0, 0],
  joinWithin: 0.005,
  curveWithin: 0.001,
  layers: { W: { is: 'walls', type: 'wall' } },
  wallTypes: { wall: { makeUp: { kind: 'solid' }, thickness: 0.2, base: 0, top: 2.8 } },
  openingTypes: {},
  embedTypes: {},
  columnTypes: {},
}

export function bench(): { readonly name: string; readonly run: () => void }[] {
  const paths = field(30).map(path => ({ layer: 'W', path }))
  const text = writeDrawing({ unit: 'm', paths, texts: [], symbols: {}, blocks: [] })
  const drawing = readDrawing(text, { unit: 'm' })
  return [
    { name: 'read a DXF of 900 walls', run: () => void readDrawing(text, { unit: 'm' }) },
    { name: 'join 900 drawn walls', run: () => void (drawing.ok && drawingWalls(drawing.value, mapping)) },
  ]
}
