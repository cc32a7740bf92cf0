import { isBeyond } from '@dawnlift/core/limit'
import type { Problem } from '@dawnlift/core/result'
import type { Daylight, DayWeather } from '@dawnlift/core/weather'
import { z } from 'zod'
import { momentText } from '../plan-report/index.js'
import { share } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const moment = z.iso.datetime()
const limitSchema = z.strictObject({
  kind: z.string(),
  asked: z.number(),
  allowed: z.number(),
  unit: z.string(),
  source: z.string(),
  beyond: z.boolean(),
  passedAt: moment
    .optional()
    .meta({ description: 'Between two hours by straight interpolation of their means' }),
})
const lightSchema = z.strictObject({
  kind: z.enum(['day', 'polar-day', 'polar-night']),
  rise: moment.optional(),
  set: moment.optional(),
})

/** What `dawnlift weather --json` prints. */
export const weatherReportSchema = z
  .strictObject({
    ...headSchema('weather'),
    date: z.string(),
    open: z.array(z.strictObject({ from: moment, until: moment, endedBy: z.string().optional() })),
    sun: lightSchema,
    twilight: lightSchema,
    chiller_W: z.number().meta({ description: 'Smallest that keeps the mix within its limit without ice' }),
    mixingWater_kg_per_s: z.number(),
    ice_kg_per_h: z.number(),
    coolingUnmetFrom: moment.optional(),
    hours: z.array(
      z.strictObject({
        start: moment,
        source: z.enum(['measured', 'forecast', 'history', 'normals']),
        open: z.boolean(),
        air_C: z.number(),
        humidity: share('of saturation'),
        wind_m_per_s: z.number(),
        gust_m_per_s: z.number(),
        rain_mm: z.number(),
        global_W_per_m2: z.number(),
        mix_C: z.number(),
        waterNeeded_C: z.number().optional(),
        drying_kg_per_m2_per_h: z.number(),
        wbgt_C: z.number(),
        windChill_C: z.number(),
        work_min_per_h: z.number(),
        caution: z.string().optional(),
        limits: z.array(limitSchema),
      }),
    ),
    notes: z.array(z.strictObject({ code: z.string(), at: z.string(), say: z.string() })),
  })
  .meta({ title: 'One day of weather, hour by hour' })

export const weatherReport = (
  day: DayWeather,
  notes: readonly Problem[],
): z.infer<typeof weatherReportSchema> => ({
  ...reportHead('weather'),
  date: day.date,
  open: day.open.map(({ from, until, endedBy }) => ({
    from: momentText(from),
    until: momentText(until),
    ...(endedBy ? { endedBy: endedBy.kind } : {}),
  })),
  sun: lightReport(day.sun),
  twilight: lightReport(day.twilight),
  chiller_W: day.cooling.chillerPower,
  mixingWater_kg_per_s: day.cooling.waterFlow,
  ice_kg_per_h: day.cooling.icePerHour,
  ...(day.cooling.unmetFrom === undefined ? {} : { coolingUnmetFrom: momentText(day.cooling.unmetFrom) }),
  hours: day.hours.map((hour, index) => hourReport(hour, day.crew[index]!)),
  notes: notes.map(({ code, at, say }) => ({ code, at, say })),
})

const lightReport = ({ kind, rise, set }: Daylight) => ({
  kind,
  ...(rise === undefined ? {} : { rise: momentText(rise) }),
  ...(set === undefined ? {} : { set: momentText(set) }),
})

const hourReport = (hour: DayWeather['hours'][number], crew: DayWeather['crew'][number]) => ({
  start: momentText(hour.start),
  source: hour.weather.source,
  open: hour.open,
  air_C: hour.weather.air,
  humidity: hour.weather.humidity,
  wind_m_per_s: hour.weather.wind,
  gust_m_per_s: hour.weather.gust,
  rain_mm: hour.weather.rain,
  global_W_per_m2: hour.weather.global,
  mix_C: hour.mixTemperature,
  ...(hour.waterNeeded === undefined ? {} : { waterNeeded_C: hour.waterNeeded }),
  drying_kg_per_m2_per_h: hour.evaporation,
  wbgt_C: hour.wbgt,
  windChill_C: crew.windChill,
  work_min_per_h: crew.workMinutesPerHour,
  ...(crew.caution ? { caution: crew.caution.say } : {}),
  limits: hour.limits.map(limit => ({
    kind: limit.kind,
    asked: limit.demand,
    allowed: limit.capacity,
    unit: limit.unit,
    source: limit.source,
    beyond: isBeyond(limit),
    ...(limit.at === undefined ? {} : { passedAt: momentText(limit.at) }),
  })),
})
