import type { Path, Point } from '@dawnlift/core/geometry'
import type { Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import type { IDxf } from 'dxf-parser'
import type { Drawing, ReadOptions } from './drawing.js'
import { drawingUnit, metresPerUnit } from './drawing-unit.js'
import { surveyGroups } from './dxf-groups.js'
import { dxfText } from './dxf-text.js'
import { parseDxf } from './parser-entities.js'
import { MOST_PATHS, pathsBox, type Unfolded, unfold } from './unfold.js'

const readKinds = new Set([
  'LINE',
  'LWPOLYLINE',
  'POLYLINE',
  'ARC',
  'CIRCLE',
  'ELLIPSE',
  'SPLINE',
  'INSERT',
  'TEXT',
  'MTEXT',
])

/** An ASCII DXF (R12 to 2018) as plain data in metres; or why it cannot be read. */
export function readDrawing(input: Uint8Array | string, options: ReadOptions = {}): Result<Drawing> {
  const fileName = options.name ?? 'plan.dxf'
  const text = dxfText(input, fileName)
  if (!text.ok) return text
  const survey = surveyGroups(text.value, fileName)
  if (!survey.ok) return survey
  const parsed = parse(survey.value.kept, fileName)
  if (!parsed.ok) return parsed
  const size = sheetSize(parsed.value)
  if (!size.ok) return size
  if (!size.value)
    return one(
      'nothing-drawn',
      fileName,
      'The drawing has no line, arc or polyline in its model space, and at least one is needed. Draw the walls in model space, or explode what holds them.',
    )
  const { least, most } = size.value
  const unit = drawingUnit(
    headerNumber(parsed.value, '$INSUNITS'),
    most[0] - least[0],
    most[1] - least[1],
    options.unit,
    fileName,
  )
  if (!unit.ok) return unit
  const scale = metresPerUnit[unit.value]
  const unfolded = unfold(
    parsed.value.entities ?? [],
    parsed.value.blocks ?? {},
    (options.curveWithin ?? 0.001) / scale,
  )
  if (!unfolded) return tooMany(fileName)
  return success({
    ...inMetres(unfolded, scale),
    version: String(parsed.value.header?.$ACADVER ?? 'unknown'),
    unit: unit.value,
    metresPerUnit: scale,
    leftOut: Object.fromEntries(
      Object.entries(survey.value.entities).filter(([kind]) => !readKinds.has(kind)),
    ),
    least: metres(least, scale),
    most: metres(most, scale),
  })

  /** A coarse unfolding tells the size, which tells the unit, which tells how fine the curves must be. */
  function sheetSize(file: IDxf): Result<ReturnType<typeof pathsBox>> {
    const coarse = unfold(file.entities ?? [], file.blocks ?? {}, Number.POSITIVE_INFINITY)
    return coarse ? success(pathsBox(coarse.paths.map(each => each.path))) : tooMany(fileName)
  }
}

const one = (code: string, at: string, say: string): Result<never> =>
  failure([{ code: `dxf/${code}`, at, say }])

const tooMany = (fileName: string): Result<never> =>
  one(
    'too-many',
    fileName,
    `With all blocks in place the drawing has more than ${MOST_PATHS} lines. Save only the wall plan.`,
  )

function parse(text: string, fileName: string): Result<IDxf> {
  try {
    return success(parseDxf(text))
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error)
    return one(
      'damaged',
      fileName,
      `The drawing cannot be read: ${why}. Open it in a drawing program and save it as ASCII DXF.`,
    )
  }
}

function headerNumber(file: IDxf, name: string): number | undefined {
  const value = file.header?.[name]
  return typeof value === 'number' ? value : undefined
}

const metres = ([x, y]: Point, scale: number): Point => [x * scale, y * scale]

function inMetres(unfolded: Unfolded, scale: number): Pick<Drawing, 'paths' | 'texts' | 'blocks' | 'notes'> {
  const point = (from: Point) => metres(from, scale)
  const path = (from: Path): Path => ({ ...from, points: from.points.map(point) })
  return {
    paths: unfolded.paths.map(each => ({ ...each, path: path(each.path) })),
    texts: unfolded.texts.map(each => ({ ...each, point: point(each.point) })),
    blocks: unfolded.inserts.map(each => ({
      ...each,
      point: point(each.point),
      least: point(each.least),
      most: point(each.most),
    })),
    notes: unfolded.notes.map(each => ({ ...each, point: point(each.point) })),
  }
}
