import type { BidCost, BidEstimate, Spread } from '@dawnlift/core/campaign'
import { z } from 'zod'
import type { Bid } from '../job-folder/index.js'
import { headSchema, reportHead } from './report-head.js'

const three = (value: z.ZodNumber) => ({ low: value, likely: value, high: value })
const range = (unit: string) => z.strictObject({ unit: z.literal(unit), ...three(z.number()) })
const bare = (description: string) => z.strictObject(three(z.number().meta({ description })))
const money = bare('Money, in the currency told beside')
const number = bare('Number of')

/** What `dawnlift estimate --json` prints. `low`: all that makes a job short or cheap at once; `high`: all that makes it long. */
export const estimateReportSchema = z
  .strictObject({
    ...headSchema('estimate'),
    weather: z.string(),
    seasonFrom: z.iso.date(),
    seasonTo: z.iso.date(),
    walls: range('m'),
    wallFace: range('m²'),
    bead: range('m'),
    volume: range('m³'),
    sections: number,
    lifts: number,
    printTime: range('h'),
    siteTime: range('h'),
    printDays: number,
    workDays: number,
    openHours: range('h'),
    lost: bare('Share of one: working days lost to weather'),
    drivers: z.array(
      z.strictObject({
        what: z.string(),
        best_d: z.number().meta({ description: 'Working days with this at its best, the rest likely' }),
        worst_d: z.number(),
      }),
    ),
    currency: z.string(),
    cost: money,
    costPerWallFace: money,
    costPerFloor: money.optional(),
    conventional: money,
    lines: z.array(z.strictObject({ what: z.string(), how: z.string(), amount: money })),
    assumes: z.array(z.string()),
  })
  .meta({ title: 'A bid before there is a plan' })

export const estimateReport = (
  { input, cost: given, weather, season }: Bid,
  estimate: BidEstimate,
  cost: BidCost,
): z.infer<typeof estimateReportSchema> => ({
  ...reportHead('estimate'),
  weather,
  seasonFrom: season[0],
  seasonTo: season[1],
  walls: inUnit('m', estimate.wallLength),
  wallFace: inUnit('m²', estimate.wallFace),
  bead: inUnit('m', estimate.beadLength),
  volume: inUnit('m³', estimate.volume),
  sections: told(estimate.sections),
  lifts: told(estimate.lifts),
  printTime: inUnit('h', estimate.printHours),
  siteTime: inUnit('h', estimate.siteHours),
  printDays: told(estimate.printDays),
  workDays: told(estimate.workDays),
  openHours: inUnit('h', input.openHours),
  lost: told(input.lostShare),
  drivers: estimate.drivers.map(({ what, workDays }) => ({
    what,
    best_d: workDays.best,
    worst_d: workDays.worst,
  })),
  currency: given.costs.currency,
  cost: told(cost.total),
  costPerWallFace: told(cost.perWallFace),
  ...(cost.perFloor ? { costPerFloor: told(cost.perFloor) } : {}),
  conventional: told(cost.conventional),
  lines: cost.lines.map(({ what, how, amount }) => ({ what, how, amount: told(amount) })),
  assumes: [...estimate.assumes],
})

const told = ({ low, likely, high }: Spread) => ({ low, likely, high })

const inUnit = (unit: string, of: Spread) => ({ unit, ...told(of) })
