import type { Path, Point } from '@dawnlift/core/geometry'
import { assert } from '@dawnlift/core/result'
import type { DrawingUnit } from '@dawnlift/document/job'
import { Attrib, DxfWriter, LWPolylineFlags, point2d, point3d, SeqEnd, Units } from '@tarikjabiri/dxf'
import { metresPerUnit } from './drawing-unit.js'

/** A block placed on the sheet, with its attributes. */
export interface PlacedBlock {
  readonly layer: string
  /** Name of a symbol of the plan. */
  readonly symbol: string
  readonly point: Point
  /** Degrees, turning left. */
  readonly turn: number
  readonly attributes: Readonly<Record<string, string>>
}

/** A plan to be written, in metres. */
export interface PlanToWrite {
  readonly unit: DrawingUnit
  readonly paths: readonly { readonly layer: string; readonly path: Path }[]
  readonly texts: readonly {
    readonly layer: string
    readonly point: Point
    readonly text: string
    readonly height: number
  }[]
  readonly symbols: Readonly<Record<string, readonly Path[]>>
  readonly blocks: readonly PlacedBlock[]
}

const unitCodes: Readonly<Record<DrawingUnit, number>> = {
  mm: Units.Millimeters,
  cm: Units.Centimeters,
  m: Units.Meters,
  in: Units.Inches,
  ft: Units.Feet,
}
/** Attributes stand this far under their block, this high [m]. */
const ATTRIBUTE_HEIGHT = 0.08

/** An ASCII DXF of the plan. `readDrawing` gives back the same paths, texts and blocks. */
export function writeDrawing(plan: PlanToWrite): string {
  const writer = new DxfWriter()
  writer.document.setUnits(unitCodes[plan.unit])
  const scale = 1 / metresPerUnit[plan.unit]
  const layers = new Set([...plan.paths, ...plan.texts, ...plan.blocks].map(each => each.layer))
  for (const [index, name] of [...layers].entries()) writer.addLayer(name, (index % 6) + 1, 'Continuous')
  for (const [name, paths] of Object.entries(plan.symbols)) {
    const block = writer.addBlock(name)
    for (const path of paths) addPath(block, path, scale, '0')
  }
  const model = writer.modelSpace
  for (const { layer, path } of plan.paths) addPath(model, path, scale, layer)
  for (const { layer, point, text, height } of plan.texts)
    model.addText(at(point, scale), height * scale, text, { layerName: layer })
  for (const block of plan.blocks) {
    assert(Object.hasOwn(plan.symbols, block.symbol), `the plan has a symbol “${block.symbol}”`)
    addBlock(writer, block, scale)
  }
  return writer.stringify()
}

const at = ([x, y]: Point, scale: number) => point3d(clean(x * scale), clean(y * scale), 0)

/** A billionth of a unit: what floating point adds to `15 m` in millimetres is not the drafter's. */
const clean = (value: number): number => Math.round(value * 1e9) / 1e9

type Sheet = DxfWriter['modelSpace']

function addPath(sheet: Sheet, path: Path, scale: number, layer: string): void {
  const vertices = path.points.map(([x, y], i) => ({
    point: point2d(clean(x * scale), clean(y * scale)),
    bulge: path.bulges[i] ?? 0,
  }))
  const flags = path.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None
  sheet.addLWPolyline(vertices, { layerName: layer, flags })
}

function addBlock(
  writer: DxfWriter,
  { layer, symbol, point, turn, attributes }: PlacedBlock,
  scale: number,
): void {
  const model = writer.modelSpace
  const insert = model.addInsert(symbol, at(point, scale), { layerName: layer, rotationAngle: turn })
  const entries = Object.entries(attributes)
  if (entries.length === 0) return
  // All attributes follow their insert, and one end mark follows them; the writer's own call marks an end after each.
  insert.attributesFollowFlag = 1
  for (const [index, [tag, value]] of entries.entries()) {
    const place: Point = [point[0], point[1] - (index + 2) * ATTRIBUTE_HEIGHT * 1.5]
    model.addEntity(new Attrib(at(place, scale), ATTRIBUTE_HEIGHT * scale, tag, value, { layerName: layer }))
  }
  const end = model.addEntity(new SeqEnd())
  end.layerName = layer
  end.ownerBlockRecord = insert.handle
}
