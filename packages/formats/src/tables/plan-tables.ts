import { localTime } from '@dawnlift/core/clock'
import type { Units } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'
import type { Quantities } from '@dawnlift/core/tally'
import type { Table } from './table.js'

/** Every table of a plan: lifts, days, calls, costs. In the units of the job, clock times of the site. */
export const planTables = (plan: Plan): readonly Table[] => [
  liftsTable(plan),
  daysTable(plan),
  callsTable(plan),
  costsTable(plan),
]

/** Names of units as a spreadsheet takes them in any font, and what one of them is in SI. */
const unitsOf = {
  metric: { long: ['m', 1], short: ['m', 1], area: ['m2', 1], volume: ['m3', 1], mass: ['kg', 1] },
  imperial: {
    long: ['ft', 0.3048],
    short: ['in', 0.0254],
    area: ['ft2', 0.3048 ** 2],
    volume: ['yd3', 0.9144 ** 3],
    mass: ['lb', 0.45359237],
  },
} as const satisfies Record<Units, Record<string, readonly [string, number]>>

type Measure = keyof (typeof unitsOf)['metric']

const unitName = (measure: Measure, units: Units): string => unitsOf[units][measure][0]
const shown = (value: number, measure: Measure, units: Units, digits: number): number =>
  rounded(value / unitsOf[units][measure][1], digits)

const quantityHeads = (units: Units): readonly string[] => [
  `bead length (${unitName('long', units)})`,
  `volume (${unitName('volume', units)})`,
  `wet mass (${unitName('mass', units)})`,
  `dry material (${unitName('mass', units)})`,
  'bags',
  `water (${unitName('mass', units)})`,
  'print time (min)',
]

const quantities = (q: Quantities, units: Units): readonly number[] => [
  shown(q.beadLength, 'long', units, 1),
  shown(q.volume, 'volume', units, 4),
  shown(q.mass, 'mass', units, 1),
  shown(q.dry, 'mass', units, 1),
  rounded(q.bags, 2),
  shown(q.water, 'mass', units, 1),
  rounded(q.printTime / 60, 1),
]

export function liftsTable({ job, campaign, tally }: Plan): Table {
  const zone = job.site.timeZone
  const lifts = new Map(campaign.days.flatMap(day => day.lifts).map(lift => [lift.id, lift]))
  return {
    name: 'lifts',
    heads: [
      'lift',
      'section',
      'date',
      `start (${zone})`,
      `end (${zone})`,
      'first layer',
      'last layer',
      'binding limit',
      'standing factor (screening)',
      'pause budget (min)',
      ...quantityHeads(job.units),
    ],
    rows: tally.byLift.flatMap(row => {
      const lift = lifts.get(row.lift)
      if (!lift) return []
      return [
        [
          row.lift,
          lift.section,
          row.date,
          stamp(lift.start, zone),
          stamp(lift.end, zone),
          lift.firstLayer,
          lift.lastLayer,
          lift.binding.kind,
          rounded(lift.safety, 2),
          rounded(lift.pauseBudget / 60, 1),
          ...quantities(row, job.units),
        ],
      ]
    }),
  }
}

export const daysTable = ({ job: { units }, tally }: Plan): Table => ({
  name: 'days',
  heads: [
    'date',
    ...quantityHeads(units).map(head => (head === 'bags' ? 'bags (whole, hose waste included)' : head)),
  ],
  rows: [
    ...tally.byDay.map(row => [row.date, ...quantities(row, units)]),
    ['all days', ...quantities(tally.total, units)],
  ],
})

export function callsTable({ job, calls }: Plan): Table {
  const { units, site } = job
  const zone = site.timeZone
  return {
    name: 'calls',
    heads: [
      'call',
      'trade',
      'what',
      'wall',
      'section',
      'lift',
      'date',
      `from (${zone})`,
      `until (${zone})`,
      'cut from',
      'cut until',
      'layer in',
      'layer out',
      'measured from',
      `along to middle (${unitName('short', units)})`,
      `underside over slab (${unitName('short', units)})`,
      'face',
      'tool',
      'proof',
      `told by (${zone})`,
    ],
    rows: calls.map(call => [
      call.id,
      call.trade,
      call.what,
      job.walls.find(wall => wall.id === call.wall)?.name ?? call.wall,
      call.section,
      call.lift,
      call.date,
      stamp(call.from, zone),
      stamp(call.until, zone),
      call.cut ? stamp(call.cut.from, zone) : '',
      call.cut ? stamp(call.cut.until, zone) : '',
      call.layerIn,
      call.layerOut,
      call.place.from,
      shown(call.place.along, 'short', units, 3),
      shown(call.place.up, 'short', units, 3),
      call.place.face,
      call.tool,
      call.proof,
      call.tellBy === undefined ? '' : stamp(call.tellBy, zone),
    ]),
  }
}

export const costsTable = ({ job: { units }, tally: { cost, wallFace } }: Plan): Table => ({
  name: 'costs',
  heads: ['what', `amount (${cost.currency})`, 'how'],
  rows: [
    ...cost.lines.map(line => [line.what, rounded(line.amount, 2), line.how]),
    ['total', rounded(cost.total, 2), 'sum of the lines'],
    [
      `per ${unitName('area', units)} of wall face`,
      rounded(cost.perWallFace * unitsOf[units].area[1], 2),
      `total / ${shown(wallFace, 'area', units, 1)} ${unitName('area', units)}, one face, openings taken off`,
    ],
  ],
})

/** `2026-07-14 06:42` on the site's clocks. */
function stamp(at: number, zone: string): string {
  const { date, clock } = localTime(Math.round(at / 60) * 60, zone)
  const two = (value: number) => String(Math.floor(value)).padStart(2, '0')
  return `${date} ${two(clock / 3600)}:${two((clock / 60) % 60)}`
}

const rounded = (value: number, digits: number): number => Number(value.toFixed(digits))
