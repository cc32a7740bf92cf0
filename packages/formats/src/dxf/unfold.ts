import type { Path, Point } from '@dawnlift/core/geometry'
import type { DrawingNote } from '@dawnlift/document/job'
import type { IBlock, IEntity, IInsertEntity, IMtextEntity, IPoint, ITextEntity } from 'dxf-parser'
import type { DrawnBlock, DrawnPath, DrawnText } from './drawing.js'
import { entityPath } from './entity-path.js'
import { type GroupedEntity, isGrouped, numbersOf, textOf } from './parser-entities.js'
import { inPlace, isSound, mirrored, type Placement, placePath, placePoint, within } from './placement.js'
import { plainMultilineText, plainText } from './text-codes.js'

/** Blocks inside blocks deeper than this are taken for an accident. */
const DEEPEST = 16
/** A plan never has this many lines; a handful of nested arrays of blocks quickly does. */
export const MOST_PATHS = 100_000

interface Sheet {
  readonly blocks: Readonly<Record<string, IBlock>>
  readonly tolerance: number
  readonly paths: DrawnPath[]
  readonly texts: DrawnText[]
  readonly inserts: DrawnBlock[]
  readonly notes: DrawingNote[]
}

interface Standing {
  readonly placement: Placement
  readonly layer: string
  readonly chain: readonly string[]
}

export interface Unfolded {
  readonly paths: readonly DrawnPath[]
  readonly texts: readonly DrawnText[]
  readonly inserts: readonly DrawnBlock[]
  readonly notes: readonly DrawingNote[]
}

/** Entities of the sheet with all blocks put in place, in drawing units. Nothing when there are far too many. */
export function unfold(
  entities: readonly IEntity[],
  blocks: Readonly<Record<string, IBlock>>,
  tolerance: number,
): Unfolded | undefined {
  const sheet: Sheet = { blocks, tolerance, paths: [], texts: [], inserts: [], notes: [] }
  const model = entities.filter(entity => !entity.inPaperSpace)
  unfoldAll(model, { placement: inPlace, layer: '0', chain: [] }, sheet)
  const { paths, texts, inserts, notes } = sheet
  return paths.length > MOST_PATHS ? undefined : { paths, texts, inserts, notes }
}

function unfoldAll(entities: readonly IEntity[], standing: Standing, sheet: Sheet): void {
  for (const [index, entity] of entities.entries()) {
    if (sheet.paths.length > MOST_PATHS) return
    if (entity.type === 'INSERT')
      unfoldInsert(entity as IInsertEntity, attributesAfter(entities, index), standing, sheet)
    else unfoldEntity(entity, verticesAfter(entities, index), standing, sheet)
  }
}

/** Things on layer 0 of a block take the layer of the block's insert. */
const layerOf = (entity: IEntity, standing: Standing): string =>
  standing.chain.length > 0 && (entity.layer ?? '0') === '0' ? standing.layer : (entity.layer ?? '0')

function unfoldEntity(
  entity: IEntity,
  vertices: readonly GroupedEntity[],
  standing: Standing,
  sheet: Sheet,
): void {
  const layer = layerOf(entity, standing)
  if (entity.type === 'TEXT' || entity.type === 'MTEXT') {
    const text = drawnText(entity, layer, standing.placement)
    if (text) sheet.texts.push(text)
    return
  }
  const path = entityPath(entity, sheet.tolerance, vertices)
  if (path === undefined) return
  if (path === 'damaged') {
    sheet.notes.push(
      note(
        'dxf/damaged-entity',
        [0, 0],
        `A ${entity.type} on layer “${layer}” (handle ${entity.handle ?? 'none'}) has incomplete numbers and was left out.`,
      ),
    )
    return
  }
  const placement = faceUp(entity) ? standing.placement : within(standing.placement, mirrored)
  const block = standing.chain.at(-1)
  const placed = placePath(placement, path, sheet.tolerance)
  sheet.paths.push({ layer, entity: entity.type, path: placed, ...(block === undefined ? {} : { block }) })
}

const note = (code: string, point: Point, say: string): DrawingNote => ({ code, point, say })

function drawnText(entity: IEntity, layer: string, placement: Placement): DrawnText | undefined {
  if (entity.type === 'MTEXT') {
    const { position, text } = entity as IMtextEntity
    return position && text
      ? { layer, point: placePoint(placement, flat(position)), text: plainMultilineText(text) }
      : undefined
  }
  const { startPoint, endPoint, text, halign } = entity as ITextEntity
  const at = halign && endPoint ? endPoint : startPoint
  return at && text ? { layer, point: placePoint(placement, flat(at)), text: plainText(text) } : undefined
}

const flat = ({ x, y }: IPoint): Point => [x, y]

/** The extrusion direction, wherever the parser puts it: downwards means mirrored. Lines are always in world coordinates. */
function faceUp(entity: IEntity): boolean {
  if (entity.type === 'LINE' || entity.type === 'ELLIPSE' || entity.type === 'SPLINE') return true
  if (isGrouped(entity)) return (numbersOf(entity, 230)[0] ?? 1) >= 0
  const { extrusionDirectionZ, extrusionDirection } = entity as IEntity & {
    extrusionDirectionZ?: number
    extrusionDirection?: IPoint
  }
  return (extrusionDirectionZ ?? extrusionDirection?.z ?? 1) >= 0
}

/** Corners stand right behind their polyline. */
function verticesAfter(entities: readonly IEntity[], index: number): readonly GroupedEntity[] {
  const found: GroupedEntity[] = []
  if (entities[index]?.type !== 'POLYLINE') return found
  for (let next = index + 1; entities[next]?.type === 'VERTEX'; next++) {
    const vertex = entities[next]
    if (vertex && isGrouped(vertex)) found.push(vertex)
  }
  return found
}

/** Attributes stand right behind their insert. */
function attributesAfter(entities: readonly IEntity[], index: number): Readonly<Record<string, string>> {
  const found: Record<string, string> = {}
  for (let next = index + 1; entities[next]?.type === 'ATTRIB'; next++) {
    const attribute = entities[next]
    if (attribute && isGrouped(attribute))
      found[textOf(attribute, 2).toUpperCase()] = plainText(textOf(attribute, 1))
  }
  return found
}

function unfoldInsert(
  insert: IInsertEntity,
  attributes: Readonly<Record<string, string>>,
  standing: Standing,
  sheet: Sheet,
): void {
  const block = sheet.blocks[insert.name]
  const layer = layerOf(insert, standing)
  const point = placePoint(standing.placement, flat(insert.position ?? { x: 0, y: 0, z: 0 }))
  const fault = insertFault(insert, block, standing)
  if (fault || !block) {
    sheet.notes.push(note(fault?.code ?? 'dxf/unknown-block', point, fault?.say ?? ''))
    return
  }
  const columns = Math.max(1, insert.columnCount ?? 1)
  const rows = Math.max(1, insert.rowCount ?? 1)
  if (columns * rows > 10_000) {
    sheet.notes.push(
      note(
        'dxf/block-array',
        point,
        `Block “${insert.name}” is repeated ${columns} × ${rows} times; it was left out.`,
      ),
    )
    return
  }
  for (let column = 0; column < columns; column++)
    for (let row = 0; row < rows; row++) {
      if (sheet.paths.length > MOST_PATHS) return
      const shift: Point = [column * (insert.columnSpacing ?? 0), row * (insert.rowSpacing ?? 0)]
      const placement = insertPlacement(insert, block, shift, standing.placement)
      if (!isSound(placement)) {
        sheet.notes.push(
          note(
            'dxf/damaged-entity',
            [0, 0],
            `Block “${insert.name}” is placed or stretched beyond all measure; it was left out.`,
          ),
        )
        return
      }
      const first = sheet.paths.length
      unfoldAll(block.entities ?? [], { placement, layer, chain: [...standing.chain, insert.name] }, sheet)
      sheet.inserts.push(
        drawnBlock(
          insert.name,
          layer,
          placePoint(placement, basePoint(block)),
          attributes,
          sheet.paths.slice(first),
        ),
      )
    }
}

function insertFault(
  insert: IInsertEntity,
  block: IBlock | undefined,
  standing: Standing,
): { code: string; say: string } | undefined {
  if (!block)
    return {
      code: 'dxf/unknown-block',
      say: `Block “${insert.name}” is placed but not defined in the drawing; it was left out. Put its definition back or delete it.`,
    }
  if (block.xrefPath)
    return {
      code: 'dxf/external-block',
      say: `Block “${insert.name}” lies in another file (${block.xrefPath}); bind it into the drawing.`,
    }
  if (standing.chain.includes(insert.name))
    return {
      code: 'dxf/block-cycle',
      say: `Block “${insert.name}” contains itself (${[...standing.chain, insert.name].join(' → ')}); the inner one was left out. Explode the block if it matters.`,
    }
  if (standing.chain.length >= DEEPEST)
    return {
      code: 'dxf/block-depth',
      say: `Blocks are nested more than ${DEEPEST} deep at “${insert.name}”; the rest was left out. Explode the outer blocks if it matters.`,
    }
  return undefined
}

const basePoint = (block: IBlock): Point => (block.position ? flat(block.position) : [0, 0])

function insertPlacement(insert: IInsertEntity, block: IBlock, shift: Point, outer: Placement): Placement {
  const turn = ((insert.rotation ?? 0) * Math.PI) / 180
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
  const [sx, sy] = [insert.xScale || 1, insert.yScale || 1]
  const base = basePoint(block)
  const at = insert.position ?? { x: 0, y: 0 }
  const turned: Placement = { a: cos, b: sin, c: -sin, d: cos, e: at.x, f: at.y }
  const scaled: Placement = {
    a: sx,
    b: 0,
    c: 0,
    d: sy,
    e: shift[0] - sx * base[0],
    f: shift[1] - sy * base[1],
  }
  const own = within(turned, scaled)
  return within(outer, faceUp(insert) ? own : within(mirrored, own))
}

function drawnBlock(
  name: string,
  layer: string,
  point: Point,
  attributes: Readonly<Record<string, string>>,
  paths: readonly DrawnPath[],
): DrawnBlock {
  const box = pathsBox(paths.map(each => each.path))
  return { name, layer, point, attributes, least: box?.least ?? point, most: box?.most ?? point }
}

/** The box round the corners of some paths; close enough to tell their size. */
export function pathsBox(
  paths: readonly Path[],
): { readonly least: Point; readonly most: Point } | undefined {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const path of paths)
    for (const [x, y] of path.points) {
      x0 = Math.min(x0, x)
      y0 = Math.min(y0, y)
      x1 = Math.max(x1, x)
      y1 = Math.max(y1, y)
    }
  return x1 >= x0 ? { least: [x0, y0], most: [x1, y1] } : undefined
}
