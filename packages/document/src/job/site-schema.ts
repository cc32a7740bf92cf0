import { isTimeZone } from '@dawnlift/core/clock'
import { z } from 'zod'
import { defaultText } from './assumed.js'
import {
  assumedQuantity,
  block,
  choice,
  clock,
  count,
  date,
  file,
  geographic,
  identifier,
  quantity,
  share,
  words,
  yesNo,
} from './field.js'

export const siteSchema = block({
  name: words(),
  latitude: geographic('N', 'S', 90),
  longitude: geographic('E', 'W', 180),
  elevation: assumedQuantity('site.elevation', { least: -450, most: 6000 }),
  timeZone: words(60).refine(isTimeZone, {
    params: { problem: 'job/time-zone' },
    error: issue =>
      `“${String(issue.input)}” is not a time zone of the IANA list; write one like “Europe/Lisbon”`,
  }),
  yAxisBearing: assumedQuantity('site.yAxisBearing', { least: -2 * Math.PI, most: 2 * Math.PI }).meta({
    description: 'Bearing of the plan’s +y axis, clockwise from true north',
  }),
  permittedHours: block({ from: clock(), until: clock(), source: words().prefault('the job') })
    .optional()
    .meta({ description: 'When noise is allowed; “until” before “from” runs over midnight' }),
})

export const calendarSchema = block({
  firstDay: date(),
  now: words(20)
    .optional()
    .meta({ description: 'The moment planning looks from, in site time: “2026-07-05 18:00”' }),
})

export const crewSchema = block({
  size: count(1, 100).prefault(Number(defaultText('crew.size'))),
  dayStart: clock().prefault(defaultText('crew.dayStart')),
  dayEnd: clock().prefault(defaultText('crew.dayEnd')),
  longestShift: assumedQuantity('crew.longestShift', { least: 600, most: 86_400 }),
  setUp: assumedQuantity('crew.setUp', { most: 43_200 }),
  washOut: assumedQuantity('crew.washOut', { most: 43_200 }),
  changeOver: assumedQuantity('crew.changeOver', { most: 43_200 }),
  workDays: z.array(count(1, 7)).min(1).max(7).prefault([1, 2, 3, 4, 5]),
  daysOff: z.array(date()).prefault([]),
  lintelTime: assumedQuantity('crew.lintelTime', { most: 43_200 }),
  embedTime: assumedQuantity('crew.embedTime', { most: 43_200 }),
  pourTime: assumedQuantity('crew.pourTime', { most: 43_200 }),
})

export const batchingSchema = block({
  waterTemperature: assumedQuantity('batching.waterTemperature', { least: 0, most: 80 }),
  chiller: block({
    temperature: quantity('temperature', { least: 0, most: 40 }),
    rate: quantity('massRate', { least: 0, above: true }),
  }).optional(),
  silo: block({
    stock: quantity('mass', { least: 0 }).meta({ description: 'Dry material on site before the first day' }),
    loads: z
      .array(
        block({
          at: words(20).meta({ description: 'When it can be pumped from, in site time: “2026-07-08 06:00”' }),
          mass: quantity('mass', { least: 0, above: true }),
        }),
      )
      .max(1000)
      .prefault([]),
  })
    .optional()
    .meta({ description: 'Without it, there is always enough in the silo' }),
  icePerBatchMost: assumedQuantity('batching.icePerBatchMost'),
  siloGain: quantity('temperatureDifference', { least: -20, most: 60 }).optional().meta({
    description:
      'Dry material over the air’s mean, as measured; without it, worked out hour by hour from the sun on the silo',
  }),
  siloShade: yesNo().prefault('no').meta({
    description: 'A roof or net keeps the beam of the sun off the silo; counts where no siloGain is given',
  }),
  mixingHeat: assumedQuantity('batching.mixingHeat', { least: 0, most: 30 }),
  pumpHeat: assumedQuantity('batching.pumpHeat', { least: 0, most: 30 }),
  hoseLength: assumedQuantity('batching.hoseLength', { least: 0, most: 500 }),
  hoseDiameter: assumedQuantity('batching.hoseDiameter', { least: 0.01, most: 0.3 }),
  hoseInSun: yesNo().prefault('yes'),
})

export const rulesSchema = block({
  liftHeight: assumedQuantity('rules.liftHeight', { least: 0.02, most: 10 }),
  overnightCure: assumedQuantity('rules.overnightCure'),
  mixTemperatureMost: assumedQuantity('rules.mixTemperatureMost', { least: 5, most: 50 }),
  mixTemperatureLeast: assumedQuantity('rules.mixTemperatureLeast', { least: 0, most: 40 }),
  airTemperatureLeast: assumedQuantity('rules.airTemperatureLeast', { least: -20, most: 30 }),
  evaporationMost: assumedQuantity('rules.evaporationMost', { least: 0, above: true }),
  windMost: assumedQuantity('rules.windMost', { least: 0, above: true }),
  gustMost: assumedQuantity('rules.gustMost', { least: 0, above: true }),
  rainMost: assumedQuantity('rules.rainMost'),
  wbgtMost: assumedQuantity('rules.wbgtMost', { least: 10, most: 40 }),
  daylightNeeded: yesNo().prefault('yes'),
  standSafety: assumedQuantity('rules.standSafety', { least: 1, most: 10 }),
  imperfection: assumedQuantity('rules.imperfection', { least: 0.05, most: 1 }),
  dryingMost: assumedQuantity('rules.dryingMost', { least: 0, above: true }),
  restMost: assumedQuantity('rules.restMost', { least: 60 }),
  layerTimeMost: assumedQuantity('rules.layerTimeMost', { least: 30 }),
})

export const inspectionSchema = block({
  id: identifier(),
  wall: identifier(),
  above: quantity('length', { least: 0, above: true }).meta({
    description: 'Height over the slab at which the nozzle waits for the inspector',
  }),
  takes: quantity('time', { least: 60, most: 86_400 }),
  what: words(),
})

const month = block({
  high: quantity('temperature', { least: -50, most: 55 }).meta({ description: 'Mean daily maximum' }),
  low: quantity('temperature', { least: -60, most: 45 }).meta({ description: 'Mean daily minimum' }),
  dewPoint: quantity('temperature', { least: -60, most: 32 }).meta({ description: 'Mean dew point' }),
  wind: quantity('windSpeed', { most: 25 }).meta({ description: 'Mean wind at 10 m' }),
  rainDays: count(0, 31).meta({ description: 'Days with 1 mm or more' }),
  rain: quantity('length', { least: 0, most: 3 }).meta({ description: 'Rain of the month' }),
  sun: quantity('radiationPerDay', { least: 0, most: 4.5e7 })
    .optional()
    .meta({ description: 'Mean global radiation of a day on the level' }),
  cloud: share().optional().meta({ description: 'Mean cloud cover, when the radiation is not known' }),
})

export const weatherSchema = block({
  source: words().optional().meta({ description: 'Where the figures come from' }),
  normals: z.array(month).length(12).optional().meta({ description: 'Twelve months, January first' }),
  file: file().optional(),
  format: choice(['csv', 'epw', 'tmy3']).optional(),
  columns: z.record(z.string(), words(80)).optional().meta({
    description: 'For a CSV file: which column holds what, and in which unit: “air: T_2m °C”',
  }),
  forecast: file().optional(),
})
