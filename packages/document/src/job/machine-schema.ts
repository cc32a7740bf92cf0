import { z } from 'zod'
import { defaultText } from './assumed.js'
import { assumedQuantity, block, choice, count, file, quantity, words } from './field.js'

const range = z.tuple([quantity('length'), quantity('length')])
const positive = { least: 0, above: true }

/** Everything of a machine; what is left out comes from the named profile. */
export const machineSchema = block({
  profile: words(60).prefault(defaultText('machine.profile')),
  name: words().optional(),
  trials: file().optional().meta({
    description: 'Trials of machine and pump, a CSV file beside the job: what they measured is planned with',
  }),
  origin: z
    .tuple([quantity('length'), quantity('length'), quantity('length')])
    .prefault(['1 m', '1 m', '0 m'])
    .meta({ description: 'Where the building’s origin lies in machine coordinates' }),
  turn: assumedQuantity('machine.turn'),
  reach: block({ x: range.optional(), y: range.optional(), z: range.optional() }).prefault({}),
  keepOut: z.array(block({ name: words(), x: range, y: range, z: range })).optional(),
  printSpeedMost: quantity('speed', positive).optional(),
  travelSpeed: quantity('speed', positive).optional(),
  liftSpeed: quantity('speed', positive).optional(),
  acceleration: quantity('acceleration', positive).optional(),
  cornerDeviation: quantity('length', { ...positive, most: 0.1 }).optional(),
  headingRate: quantity('turnRate').optional().meta({ description: '0 °/s: the nozzle is round' }),
  headingAcceleration: quantity('turnAcceleration').optional(),
  headingTravel: quantity('angle', { least: 0 }).optional(),
  travelClearance: quantity('length', { least: 0, most: 2 }).optional(),
  pump: block({
    flowLeast: quantity('flow').optional(),
    flowMost: quantity('flow', positive).optional(),
    startLag: quantity('time', { most: 120 }).optional(),
    stopLag: quantity('time', { most: 120 }).optional(),
    pressureMost: quantity('pressure', positive).optional(),
    settingAtMost: count(1e-6, 1e9).optional().meta({ description: 'S word that gives the greatest flow' }),
    settingIdle: count(-1e9, 1e9)
      .optional()
      .meta({ description: 'S word at which the pump begins to deliver' }),
  }).prefault({}),
  words: block({
    rotary: choice(['A', 'B', 'C']).optional(),
    pumpOn: choice(['M3', 'M4']).optional(),
    units: choice(['G20', 'G21']).optional(),
    extraOn: words(30).optional(),
    extraOff: words(30).optional(),
  }).prefault({}),
})
