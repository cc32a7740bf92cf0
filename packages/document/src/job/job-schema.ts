import { z } from 'zod'
import { defaultText } from './assumed.js'
import { drawingSchema } from './drawing-schema.js'
import { assumedQuantity, block, choice, count, identifier, quantity, words } from './field.js'
import { machineSchema } from './machine-schema.js'
import { mixSchema } from './mix-schema.js'
import { aimSchema, pinSchema } from './pin-schema.js'
import {
  batchingSchema,
  calendarSchema,
  crewSchema,
  inspectionSchema,
  rulesSchema,
  siteSchema,
  weatherSchema,
} from './site-schema.js'
import {
  columnSchema,
  columnTypeSchema,
  embedSchema,
  embedTypeSchema,
  openingSchema,
  openingTypeSchema,
  wallSchema,
  wallTypeSchema,
} from './wall-schema.js'

/** The version of the document this program writes. Older ones are migrated, newer ones refused. */
export const documentVersion = 1

const amount = (path: Parameters<typeof defaultText>[0]) => count(0, 1e9).prefault(Number(defaultText(path)))

const costsSchema = block({
  currency: words(3)
    .regex(/^[A-Z]{3}$/, { error: 'write a currency code of three capitals, like “EUR”' })
    .prefault(defaultText('costs.currency')),
  machinePerDay: amount('costs.machinePerDay'),
  crewPerHour: amount('costs.crewPerHour'),
  materialPerTonne: amount('costs.materialPerTonne'),
  waterPerCubicMetre: amount('costs.waterPerCubicMetre'),
  pourPerCubicMetre: amount('costs.pourPerCubicMetre'),
  protectionPerSquareMetre: amount('costs.protectionPerSquareMetre'),
  mobilisation: amount('costs.mobilisation'),
  embedEach: amount('costs.embedEach'),
  lintelEach: amount('costs.lintelEach'),
  conventionalPerSquareMetre: amount('costs.conventionalPerSquareMetre'),
})

const printSchema = block({
  beadWidth: assumedQuantity('print.beadWidth', { least: 0.005, most: 0.5 }),
  layerHeight: assumedQuantity('print.layerHeight', { least: 0.002, most: 0.2 }),
  cornerRadius: assumedQuantity('print.cornerRadius', { least: 0, most: 5 }),
  overhang: assumedQuantity('print.overhang', { least: 0, most: 1 }),
  speed: assumedQuantity('print.speed', { least: 0.005, most: 2 }),
})

const sectionSchema = block({
  id: identifier(),
  stretches: z
    .array(
      block({
        wall: identifier(),
        from: quantity('length', { least: 0 }),
        to: quantity('length', { least: 0 }),
      }),
    )
    .min(1),
})

/** The saved job, as it stands in `job.yaml`: quantities are text with units. */
export const jobSchema = block({
  dawnlift: z.literal(documentVersion),
  name: words(),
  revision: words(20).prefault(defaultText('revision')),
  units: choice(['metric', 'imperial']).prefault('metric'),
  site: siteSchema,
  calendar: calendarSchema,
  weather: weatherSchema,
  drawing: drawingSchema.optional(),
  wallTypes: z.record(identifier(), wallTypeSchema).prefault({}),
  walls: z.array(wallSchema).max(2000).prefault([]),
  openingTypes: z.record(identifier(), openingTypeSchema).prefault({}),
  openings: z.array(openingSchema).max(5000).prefault([]),
  embedTypes: z.record(identifier(), embedTypeSchema).prefault({}),
  embeds: z.array(embedSchema).max(20_000).prefault([]),
  columnTypes: z.record(identifier(), columnTypeSchema).prefault({}),
  columns: z.array(columnSchema).max(2000).prefault([]),
  print: printSchema.prefault({}),
  machine: machineSchema.prefault({}),
  mix: mixSchema.prefault('default'),
  batching: batchingSchema.prefault({}),
  crew: crewSchema.prefault({}),
  rules: rulesSchema.prefault({}),
  costs: costsSchema.prefault({}),
  joints: z
    .array(block({ wall: identifier(), at: quantity('length', { least: 0 }) }))
    .prefault([])
    .meta({ description: 'Control joints: where a wall of the drawing or of the job may be divided' }),
  inspections: z
    .array(inspectionSchema)
    .max(500)
    .prefault([])
    .meta({ description: 'Where the nozzle stops until somebody has looked: a hold of the lift' }),
  pins: z.array(pinSchema).max(500).prefault([]).meta({
    description: 'What the lead has settled of the days: days a section rests, lifts promised to a day',
  }),
  aim: aimSchema.optional(),
  sections: z.array(sectionSchema).prefault([]),
  noCutAt: z.array(identifier()).prefault([]),
})

export type JobDocument = z.output<typeof jobSchema>

/** JSON Schema (draft 2020-12) of the document, for editors that complete and check YAML. */
export const jobJsonSchema = (): Readonly<Record<string, unknown>> => ({
  title: 'Dawnlift job',
  ...z.toJSONSchema(jobSchema, { io: 'input', unrepresentable: 'any' }),
})
