import { nearestOnPath, type Point, pathTangent } from '@dawnlift/core/geometry'
import type { Column, Embed, Opening, Wall } from '@dawnlift/core/job'
import type { Problem } from '@dawnlift/core/result'
import type { DrawingMapping } from '@dawnlift/document/job'
import type { Drawing, DrawnBlock, DrawnPath } from './drawing.js'
import { layerUse } from './layer-use.js'
import { attributeLength, markOf, type OnWall, onWall, typeOf } from './on-wall.js'
import { sayPlace } from './say-place.js'

interface Context {
  readonly walls: readonly Wall[]
  readonly mapping: DrawingMapping
  readonly used: Set<string>
  readonly problems: Problem[]
}

/** Boxes are often drawn on the face or a little before it [m]. */
const FACE_SLACK = 0.05

const blocksOf = (drawing: Drawing, mapping: DrawingMapping, is: string) =>
  drawing.blocks.filter(block => layerUse(mapping, block.layer)?.is === is)

/** Plain lines on such a layer; geometry inside blocks is only the block's picture. */
const pathsOf = (drawing: Drawing, mapping: DrawingMapping, is: string) =>
  drawing.paths.filter(path => path.block === undefined && layerUse(mapping, path.layer)?.is === is)

/** Openings drawn as blocks with attributes, or as lines along the wall as long as the opening is wide. */
export const drawnOpenings = (drawing: Drawing, context: Context): readonly Opening[] => [
  ...blocksOf(drawing, context.mapping, 'openings').flatMap(block => blockOpening(block, context) ?? []),
  ...pathsOf(drawing, context.mapping, 'openings').flatMap(path => lineOpening(path, context) ?? []),
]

function blockOpening(block: DrawnBlock, { walls, mapping, used, problems }: Context): Opening | undefined {
  const found = onWall(
    block.point,
    `The opening “${block.attributes.MARK ?? block.name}”`,
    walls,
    mapping.joinWithin,
    problems,
  )
  const type = typeOf(block, layerUse(mapping, block.layer)?.type, mapping.openingTypes, problems)
  const [width, sill, head] = ['WIDTH', 'SILL', 'HEAD'].map(tag => attributeLength(block, tag, problems))
  if (!found || !type) return undefined
  return opening(
    markOf(block, 'O', used),
    found,
    { ...type, width: width ?? type.width, sill: sill ?? type.sill, head: head ?? type.head },
    block.point,
    problems,
  )
}

function lineOpening(
  { path, layer }: DrawnPath,
  { walls, mapping, used, problems }: Context,
): Opening | undefined {
  const [from, to] = [path.points[0]!, path.points.at(-1)!]
  const middle: Point = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2]
  const found = onWall(middle, 'An opening', walls, mapping.joinWithin, problems)
  const block: DrawnBlock = { layer, name: 'line', point: middle, attributes: {}, least: from, most: to }
  const type = typeOf(block, layerUse(mapping, layer)?.type, mapping.openingTypes, problems)
  if (!found || !type) return undefined
  const stations = [from, to].map(point => nearestOnPath(found.wall.centreline, point).station)
  const width = Math.abs(stations[1]! - stations[0]!)
  const place = { ...found, station: (stations[0]! + stations[1]!) / 2 }
  return opening(markOf(undefined, 'O', used), place, { ...type, width }, middle, problems)
}

type Sizes = Pick<Opening, 'kind' | 'sill' | 'lintel'> & {
  readonly width?: number | undefined
  readonly head?: number | undefined
}

function opening(
  id: string,
  { wall, station }: OnWall,
  sizes: Sizes,
  point: Point,
  problems: Problem[],
): Opening | undefined {
  const { kind, sill, width, head, lintel } = sizes
  if (width === undefined || head === undefined) {
    const missing = [width === undefined ? 'width' : '', head === undefined ? 'head' : '']
      .filter(Boolean)
      .join(' and ')
    problems.push({
      code: 'dxf/no-size',
      at: sayPlace(point),
      say: `Opening ${id} at ${sayPlace(point)} has no ${missing}: give it in its type or as an attribute.`,
    })
    return undefined
  }
  return { id, wall: wall.id, kind, at: station, width, sill, head, ...(lintel ? { lintel } : {}) }
}

/** Embeds drawn as blocks; the side of the centreline they stand on is their face unless they say otherwise. */
export const drawnEmbeds = (drawing: Drawing, context: Context): readonly Embed[] =>
  blocksOf(drawing, context.mapping, 'embeds').flatMap(block => blockEmbed(block, context) ?? [])

function blockEmbed(block: DrawnBlock, { walls, mapping, used, problems }: Context): Embed | undefined {
  const slack = Math.max(mapping.joinWithin, FACE_SLACK)
  const found = onWall(
    block.point,
    `The embed “${block.attributes.MARK ?? block.name}”`,
    walls,
    slack,
    problems,
  )
  const type = typeOf(block, layerUse(mapping, block.layer)?.type, mapping.embedTypes, problems)
  const given = (tag: 'BOTTOM' | 'WIDTH' | 'HEIGHT' | 'DEPTH', fallback: number | undefined) =>
    attributeLength(block, tag, problems) ?? fallback
  if (!found || !type) return undefined
  const bottom = given('BOTTOM', type.bottom)
  const [width, height, depth] = [
    given('WIDTH', type.width),
    given('HEIGHT', type.height),
    given('DEPTH', type.depth),
  ]
  const id = markOf(block, 'M', used)
  if (bottom === undefined || width === undefined || height === undefined || depth === undefined) {
    problems.push({
      code: 'dxf/no-size',
      at: sayPlace(block.point),
      say: `Embed ${id} at ${sayPlace(block.point)} needs bottom, width, height and depth: give them in its type or as attributes.`,
    })
    return undefined
  }
  const face = faceOf(block.attributes.FACE, problems, block) ?? type.face ?? sideOf(found)
  const { kind, trade, method, head } = type
  return {
    id,
    wall: found.wall.id,
    kind,
    trade,
    method,
    face,
    at: found.station,
    bottom,
    width,
    height,
    depth,
    ...(head ? { head } : {}),
  }
}

const faces = ['left', 'right', 'middle', 'through'] as const

function faceOf(text: string | undefined, problems: Problem[], block: DrawnBlock): Embed['face'] | undefined {
  const face = faces.find(each => each === text?.toLowerCase())
  if (text && !face)
    problems.push({
      code: 'dxf/attribute',
      at: sayPlace(block.point),
      say: `Attribute FACE of block “${block.name}” at ${sayPlace(block.point)} is “${text}”; write left, right, middle or through.`,
    })
  return face
}

const sideOf = ({ offset, wall }: OnWall): Embed['face'] =>
  Math.abs(offset) < wall.thickness / 8 ? 'middle' : offset > 0 ? 'left' : 'right'

/** Columns drawn as blocks or closed outlines. */
export const drawnColumns = (drawing: Drawing, context: Context): readonly Column[] => [
  ...blocksOf(drawing, context.mapping, 'columns').flatMap(block => blockColumn(block, context) ?? []),
  ...pathsOf(drawing, context.mapping, 'columns').flatMap(({ path, layer }) => {
    const xs = path.points.map(point => point[0])
    const ys = path.points.map(point => point[1])
    const [least, most]: [Point, Point] = [
      [Math.min(...xs), Math.min(...ys)],
      [Math.max(...xs), Math.max(...ys)],
    ]
    const point: Point = [(least[0] + most[0]) / 2, (least[1] + most[1]) / 2]
    return blockColumn({ layer, name: 'outline', point, attributes: {}, least, most }, context) ?? []
  }),
]

function blockColumn(block: DrawnBlock, { walls, mapping, used, problems }: Context): Column | undefined {
  const found = onWall(
    block.point,
    `The column “${block.attributes.MARK ?? block.name}”`,
    walls,
    FACE_SLACK,
    problems,
  )
  const type = typeOf(block, layerUse(mapping, block.layer)?.type, mapping.columnTypes, problems)
  if (!found || !type) return undefined
  const [x, y] = pathTangent(found.wall.centreline, found.station)
  const drawnLength =
    Math.abs(x) * (block.most[0] - block.least[0]) + Math.abs(y) * (block.most[1] - block.least[1])
  const length = attributeLength(block, 'LENGTH', problems) ?? type.length ?? drawnLength
  const id = markOf(block, 'C', used)
  if (length <= 0) {
    problems.push({
      code: 'dxf/no-size',
      at: sayPlace(block.point),
      say: `Column ${id} at ${sayPlace(block.point)} has no length: give it in its type or draw its outline.`,
    })
    return undefined
  }
  return {
    id,
    wall: found.wall.id,
    at: found.station,
    length,
    thickness: type.thickness ?? found.wall.thickness,
    cover: type.cover,
  }
}
