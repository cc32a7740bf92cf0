import { z } from 'zod'
import { assumedQuantity, block, choice, count, identifier, quantity, words } from './field.js'

const point = z.tuple([quantity('length'), quantity('length')])

/** A corner of a wall path: straight to a point, or along an arc given by bulge, by a point on it or by its radius. */
const arcTo = block({
  to: point,
  bulge: count(-50, 50)
    .optional()
    .meta({ description: 'Tangent of a quarter of the arc’s angle, positive turning left' }),
  through: point.optional().meta({ description: 'A point on the arc' }),
  radius: quantity('length', { least: 0.01 }).optional(),
  turn: choice(['left', 'right']).optional(),
})

export const pathSchema = z
  .array(z.union([point, arcTo]))
  .min(2)
  .max(5000)
  .meta({
    description: 'Corners of the centreline; it is closed when the last corner is the first one',
  })

const relief = block({
  face: choice(['left', 'right']),
  pattern: choice(['flute', 'ripple', 'lozenge']),
  depth: quantity('length', { least: 0, most: 0.2 }),
  pitch: quantity('length', { least: 0.02 }),
  rise: assumedQuantity('walls.relief.rise'),
  ramp: z.tuple([quantity('length', { least: 0 }), quantity('length', { least: 0 })]).optional(),
})

const wallParts = {
  makeUp: choice(['single', 'double', 'solid']).optional(),
  thickness: quantity('length', { least: 0.01, most: 2 }).optional(),
  height: quantity('length', { least: 0.01, most: 30 }).optional(),
  base: quantity('length', { least: -1, most: 30 }).optional(),
  web: choice(['zigzag', 'crosstie', 'wave']).optional(),
  webPitch: quantity('length', { least: 0.05, most: 5 }).optional(),
  relief: relief.optional(),
}

export const wallTypeSchema = block(wallParts)

export const wallSchema = block({
  id: identifier(),
  name: words().optional(),
  type: identifier().optional(),
  path: pathSchema,
  ...wallParts,
  joints: z.array(quantity('length', { least: 0 })).optional(),
})

const lintel = block({
  kind: choice(['precast', 'steel', 'timber']).optional(),
  height: quantity('length', { least: 0.01, most: 2 }).optional(),
  bearing: quantity('length', { least: 0.02, most: 2 }).optional(),
})

const openingParts = {
  kind: choice(['door', 'window', 'passage']).optional(),
  width: quantity('length', { least: 0.1, most: 20 }).optional(),
  sill: quantity('length', { least: 0, most: 30 }).optional(),
  head: quantity('length', { least: 0.1, most: 30 }).optional(),
  lintel: lintel.optional(),
}

export const openingTypeSchema = block(openingParts)

export const openingSchema = block({
  id: identifier(),
  wall: identifier(),
  type: identifier().optional(),
  at: quantity('length', { least: 0 }),
  ...openingParts,
})

const embedParts = {
  kind: choice(['box', 'sleeve', 'pipe', 'strap', 'anchor', 'niche', 'chase', 'plate']).optional(),
  trade: choice(['electrical', 'plumbing', 'hvac', 'structure', 'joinery', 'crew']).optional(),
  face: choice(['left', 'right', 'middle', 'through']).optional(),
  bottom: quantity('length', { least: 0, most: 30 }).optional(),
  width: quantity('length', { least: 0.001, most: 20 }).optional(),
  height: quantity('length', { least: 0.001, most: 30 }).optional(),
  depth: quantity('length', { least: 0.001, most: 2 }).optional(),
  head: choice(['flat', 'corbelled']).optional(),
  method: choice(['gap', 'cut', 'set']).optional(),
}

export const embedTypeSchema = block(embedParts)

export const embedSchema = block({
  id: identifier(),
  wall: identifier(),
  type: identifier().optional(),
  at: quantity('length', { least: 0 }),
  ...embedParts,
})

const columnParts = {
  length: quantity('length', { least: 0.05, most: 5 }).optional(),
  thickness: quantity('length', { least: 0.05, most: 3 }).optional(),
  cover: quantity('length', { least: 0.005, most: 0.5 }).optional(),
}

export const columnTypeSchema = block(columnParts)

export const columnSchema = block({
  id: identifier(),
  wall: identifier(),
  type: identifier().optional(),
  at: quantity('length', { least: 0 }),
  ...columnParts,
})
