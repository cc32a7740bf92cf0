import type { Lift } from '@dawnlift/core/campaign'
import { explainLift, sayGain } from '@dawnlift/core/campaign'
import { clockText, localTime } from '@dawnlift/core/clock'
import { sayLimit } from '@dawnlift/core/limit'
import type { MixFit } from '@dawnlift/core/mix'
import type { Plan } from '@dawnlift/core/plan'
import type { Instant } from '@dawnlift/core/quantity'
import { assert } from '@dawnlift/core/result'
import { figure, paperSheet, type SheetWords, toSvg } from '@dawnlift/drawing/paper'
import {
  drawDayClock,
  drawLayerPlan,
  drawLimits,
  drawMixFit,
  drawSeason,
  drawTimeHeight,
  drawWallElevation,
  elevationSheet,
} from '@dawnlift/drawing/views'
import { calledTrades, writeCalendar } from '../calendar/index.js'
import { type LiftFile, liftWriter } from '../rs274/index.js'
import {
  daySheet,
  daySheets,
  liftHeat,
  liftStanding,
  permitPackage,
  type SheetOptions,
  tradeSheet,
} from '../sheets/index.js'
import { planTables, writeCsv, writeWorkbook } from '../tables/index.js'
import type { Output } from './output.js'
import { standingBeside } from './standing-beside.js'

/** What is printed on everything that leaves the house. */
export interface OutputStamp {
  /** When the files are made. */
  readonly at: Instant
  /** Counts up with every plan sent out; calendar programs take the higher one. */
  readonly sequence: number
  /** How the mix was fitted, where the job has tests of its own: they are drawn. */
  readonly mixFit?: MixFit
}

/** Every file a plan gives: sheets, calendars, tables, machine files, drawings. Each is made when it is asked for. */
export function outputsOf(plan: Plan, stamp: OutputStamp): readonly Output[] {
  const zone = plan.job.site.timeZone
  const date = `${localTime(stamp.at, zone).date} ${clockText(stamp.at, zone)}`
  const options: SheetOptions = {
    date,
    sayGain: gain => sayGain(gain, plan.job.units),
    ...(stamp.mixFit ? { mixFit: stamp.mixFit } : {}),
  }
  return [
    ...sheets(plan, options),
    ...calendars(plan, stamp),
    ...tables(plan),
    ...machineFiles(plan),
    ...drawings(plan, date, stamp.mixFit),
  ]
}

const pdf = (name: string, title: string, make: () => Uint8Array): Output => ({
  name: `sheets/${name}.pdf`,
  title,
  mediaType: 'application/pdf',
  make: async () => make(),
})

const sheets = (plan: Plan, options: SheetOptions): readonly Output[] => [
  pdf('all-days', 'All day sheets', () => daySheets(plan, options)),
  ...plan.campaign.days.map(day =>
    pdf(`day-${day.date}`, `Day ${day.number}, ${day.date}`, () => daySheet(plan, day.date, options)),
  ),
  ...calledTrades(plan.calls).map(trade =>
    pdf(`trade-${trade}`, `Calls of ${trade}`, () => tradeSheet(plan, trade, options)),
  ),
  pdf('permit-package', 'Permit package', () => permitPackage(plan, options)),
]

const calendars = (plan: Plan, { at, sequence }: OutputStamp): readonly Output[] =>
  calledTrades(plan.calls).map(trade => ({
    name: `calendars/${trade}.ics`,
    title: `Calendar of ${trade}`,
    mediaType: 'text/calendar; charset=utf-8',
    make: async () => writeCalendar(plan.job, plan.calls, { sequence, stamp: at, trade }),
  }))

const tables = (plan: Plan): readonly Output[] => [
  ...planTables(plan).map(table => ({
    name: `tables/${table.name}.csv`,
    title: `Table of ${table.name}`,
    mediaType: 'text/csv; charset=utf-8',
    make: async () => writeCsv(table),
  })),
  {
    name: 'tables/all.xlsx',
    title: 'All tables in one workbook',
    mediaType: 'application/vnd.openxmlformats-officedocument.spreadsheetml.sheet',
    make: async () => writeWorkbook(planTables(plan)),
  },
]

function machineFiles(plan: Plan): readonly Output[] {
  const write = liftWriter()
  return plan.campaign.days.flatMap(day =>
    day.lifts.map(lift => ({
      name: `machine/${day.date}-${lift.id}.ngc`,
      title: `Machine file of lift ${lift.id}`,
      mediaType: 'text/plain; charset=utf-8',
      make: async () => write(liftFile(plan, lift)),
    })),
  )
}

/** What the machine file of a lift is written from; restart files begin with the same. */
export function liftFile(plan: Plan, lift: Lift): LiftFile {
  const { job } = plan
  const routes = plan.routes.find(each => each.section === lift.section)
  assert(routes, `section ${lift.section} has routes`)
  return {
    job: job.name,
    lift: lift.id,
    routes,
    machine: job.machine,
    options: { speed: job.print.speed, origin: job.machineOrigin, units: job.units },
    fromLayer: lift.firstLayer,
    toLayer: lift.lastLayer,
    standing: standingBeside(plan, lift),
    holds: lift.holds,
    calls: plan.calls.filter(call => call.lift === lift.id),
  }
}

function drawings(plan: Plan, date: string, mixFit: MixFit | undefined): readonly Output[] {
  const { job, campaign } = plan
  const zone = job.site.timeZone
  const words: SheetWords = { job: job.name, revision: job.revision, date }
  const say = (limit: Parameters<typeof sayLimit>[0]) => sayLimit(limit, job.units, zone)
  const svg = (name: string, title: string, draw: () => Parameters<typeof toSvg>[0]): Output => ({
    name: `drawings/${name}.svg`,
    title,
    mediaType: 'image/svg+xml',
    make: async () => toSvg(draw()),
  })
  return [
    svg('campaign', 'Campaign, height over time', () =>
      drawTimeHeight(plan, paperSheet('A3', 'landscape', words), say),
    ),
    svg('season', 'Print windows of the season', () =>
      drawSeason({ job, hours: campaign.hours.slice(0, 24 * 60) }, paperSheet('A3', 'landscape', words)),
    ),
    ...layersToDraw(plan).map(layer =>
      svg(`layer-${layer}`, `Plan of layer ${layer}`, () =>
        drawLayerPlan(plan, layer, paperSheet('A3', 'landscape', words)),
      ),
    ),
    ...job.walls.map(wall =>
      svg(`wall-${wall.id}`, `Wall ${wall.name}, unrolled`, () =>
        drawWallElevation(plan, wall.id, elevationSheet(plan, wall.id, words)),
      ),
    ),
    ...campaign.days.map(day =>
      svg(`day-${day.date}`, `Day ${day.number} as a clock`, () =>
        drawDayClock(plan, day.date, figure(180, 130, words)),
      ),
    ),
    ...campaign.days.flatMap(day =>
      day.lifts.map(lift =>
        svg(`limits-${lift.id}`, explainLift(lift, job.units, zone), () =>
          drawLimits({ job, lift, hours: campaign.hours, say }, figure(180, 100, words)),
        ),
      ),
    ),
    ...campaign.days.flatMap(day =>
      day.lifts.flatMap(lift => [
        svg(`stand-${lift.id}`, `Standing of lift ${lift.id}`, () =>
          liftStanding(plan, lift, paperSheet('A4', 'landscape', words)),
        ),
        svg(`heat-${lift.id}`, `Heat of the wall, lift ${lift.id}`, () =>
          liftHeat(plan, lift, paperSheet('A4', 'landscape', words)),
        ),
      ]),
    ),
    ...(mixFit
      ? [
          svg('mix', 'Mix tests', () =>
            drawMixFit({ job, fit: mixFit }, paperSheet('A4', 'landscape', words)),
          ),
        ]
      : []),
  ]
}

/** The first layer of every plan there is, so that no change of plan goes undrawn. */
const layersToDraw = (plan: Plan): readonly number[] =>
  [...new Set(plan.bands.flatMap(section => section.bands.map(band => band.fromLayer)))].sort((a, b) => a - b)
