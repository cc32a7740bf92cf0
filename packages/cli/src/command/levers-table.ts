import { limitName } from '@dawnlift/core/campaign'
import { type JobLeverKind, jobLeverFacts, sayJobLevers } from '@dawnlift/core/lever'
import type { Plan } from '@dawnlift/core/plan'
import type { DoubtedLevers, DoubtedRow, DoubtedSets } from '@dawnlift/formats/job-folder'
import { textTable } from '../screen/table.js'

/** The table of levers, and below it what each takes for granted and needs besides. */
export function leversInWords(table: DoubtedLevers, { job, soFar }: Pick<Plan, 'job' | 'soFar'>): string {
  const row = (label: string, of: DoubtedRow) => tableRow(label, of)
  const name = ({ levers }: DoubtedRow) => sayJobLevers(levers, job.units)
  const best = (what: string, sets: DoubtedSets | undefined) =>
    sets?.best ? [row(`best ${what}: ${name(sets.best)}`, sets.best)] : []
  const rows = [
    row('as planned', table.asPlanned),
    ...table.rows.map(each => row(name(each), each)),
    ...best('pair', table.pairs),
    ...best('triple', table.triples),
  ]
  const head = [
    'lever',
    'days',
    'finish',
    'sooner',
    `cost ${job.costs.currency}`,
    '80 % sure',
    'safety',
    'then binds',
  ]
  return [
    job.name,
    '',
    textTable(head, rows, [1, 3, 4, 6]),
    '',
    ...setLines(table),
    ...doubtLines(table),
    ...(soFar ? [leftNote] : []),
    'Cost is by the job’s own rates, over the plan as it stands. Safety is the smallest standing capacity over demand of any lift: a screening value; local codes and a licensed engineer decide.',
    '',
    ...kindsIn(table).map(factLine),
  ].join('\n')
}

/** Below a table of a job begun. */
export const leftNote =
  'Days, lifts and costs are of what is left: what stands, and what is paid whatever the days, is not counted.'

const tableRow = (label: string, row: DoubtedRow): readonly string[] => [
  label,
  String(row.printDays),
  row.finished ? row.finishDate : 'not up',
  row.daysGained === undefined || row.daysGained === 0 ? '·' : String(row.daysGained),
  row.levers.length === 0 ? money(row.cost) : more(row.costMore) + (row.unpriced.length > 0 ? '*' : ' '),
  row.sure ? (row.sure.find(each => each.share === 0.8)?.date ?? 'later') : '',
  row.leastSafety.toFixed(2),
  row.bindsNext ? limitName(row.bindsNext) : '',
]

const money = (amount: number): string => `${Math.round(amount)} `
const more = (amount: number): string =>
  Math.round(amount) > 0 ? `+${Math.round(amount)}` : String(Math.round(amount))

function setLines({ pairs, triples }: DoubtedLevers): readonly string[] {
  const line = (what: string, sets: DoubtedSets | undefined) =>
    sets
      ? [
          `${sets.planned} of ${sets.possible} ${what} planned: the others could not be sooner, or as soon and cheaper.`,
        ]
      : []
  return [...line('pairs', pairs), ...line('triples', triples)]
}

const doubtLines = ({ replays, weather }: DoubtedLevers): readonly string[] =>
  replays > 0
    ? [
        `80 % sure: up by then in eight of ten of ${weather}; every row meets the same weather and the same mishaps.`,
      ]
    : []

const kindsIn = ({ rows }: DoubtedLevers): readonly JobLeverKind[] => [
  ...new Set(rows.flatMap(row => row.levers.map(lever => lever.kind))),
]

function factLine(kind: JobLeverKind): string {
  const { assumes, first, unpriced } = jobLeverFacts[kind]
  const needs = first ? ` First: ${first}.` : ''
  const price = unpriced ? ` * Not in the cost: ${unpriced} (--price ${kind}=AMOUNT or AMOUNT/day).` : ''
  return `${kind}: ${assumes}.${needs}${price}`
}
