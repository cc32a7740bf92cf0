import { z } from 'zod'
import { assumedQuantity, block, choice, file, identifier, quantity } from './field.js'

const layerUse = block({
  is: choice(['walls', 'openings', 'embeds', 'columns', 'names', 'ignore']),
  type: identifier().optional().meta({ description: 'A wall, opening, embed or column type of this job' }),
})

export const drawingSchema = block({
  file: file(),
  unit: choice(['mm', 'cm', 'm', 'in', 'ft']).optional().meta({
    description: 'What one drawing unit is; needed when the drawing does not say or says something unlikely',
  }),
  origin: z
    .tuple([quantity('length', { least: -1e7, most: 1e7 }), quantity('length', { least: -1e7, most: 1e7 })])
    .optional()
    .meta({ description: 'The point of the drawing that becomes the building’s origin' }),
  joinWithin: assumedQuantity('drawing.joinWithin', { least: 0, most: 0.5 }),
  curveWithin: assumedQuantity('drawing.curveWithin', { least: 1e-5, most: 0.05 }),
  leaveOut: z.array(identifier()).max(20_000).prefault([]).meta({
    description: 'Things of the drawing that this job does not have; what stands in a wall goes with it',
  }),
  layers: z.record(z.string().min(1).max(255), layerUse),
})
