import { localTime } from '@dawnlift/core/clock'
import type { Plan } from '@dawnlift/core/plan'
import type { Quantities } from '@dawnlift/core/tally'
import type { Table } from './table.js'

/** Every table of a plan: lifts, days, calls, costs. SI units, clock times of the site. */
export const planTables = (plan: Plan): readonly Table[] => [
  liftsTable(plan),
  daysTable(plan),
  callsTable(plan),
  costsTable(plan),
]

const quantityHeads = [
  'bead length (m)',
  'volume (m3)',
  'wet mass (kg)',
  'dry material (kg)',
  'bags',
  'water (kg)',
  'print time (min)',
]

const quantities = (q: Quantities): number[] => [
  rounded(q.beadLength, 1),
  rounded(q.volume, 4),
  rounded(q.mass, 1),
  rounded(q.dry, 1),
  rounded(q.bags, 2),
  rounded(q.water, 1),
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
      ...quantityHeads,
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
          ...quantities(row),
        ],
      ]
    }),
  }
}

export const daysTable = ({ tally }: Plan): Table => ({
  name: 'days',
  heads: [
    'date',
    ...quantityHeads.map(head => (head === 'bags' ? 'bags (whole, hose waste included)' : head)),
  ],
  rows: [...tally.byDay.map(row => [row.date, ...quantities(row)]), ['all days', ...quantities(tally.total)]],
})

export function callsTable({ job, calls }: Plan): Table {
  const zone = job.site.timeZone
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
      'along to middle (m)',
      'underside over slab (m)',
      'face',
      'tool',
      'proof',
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
      rounded(call.place.along, 3),
      rounded(call.place.up, 3),
      call.place.face,
      call.tool,
      call.proof,
    ]),
  }
}

export const costsTable = ({ tally: { cost, wallFace } }: Plan): Table => ({
  name: 'costs',
  heads: ['what', `amount (${cost.currency})`, 'how'],
  rows: [
    ...cost.lines.map(line => [line.what, rounded(line.amount, 2), line.how]),
    ['total', rounded(cost.total, 2), 'sum of the lines'],
    [
      'per m2 of wall face',
      rounded(cost.perWallFace, 2),
      `total / ${rounded(wallFace, 1)} m2, one face, openings taken off`,
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
