import { sayQuantity, type Units } from '@dawnlift/core/limit'
import { type Machine, pumpSetting } from '@dawnlift/core/machine'
import type { NextTrial } from '@dawnlift/core/trial'
import type { TrialFits } from '@dawnlift/formats/mix-tests'
import { textTable } from '../screen/table.js'
import type { TriedWith } from './tried-with.js'

/** What the trials tell, what to write into the job, and what to try next. */
export function trialsInWords(
  tried: TriedWith,
  fits: TrialFits,
  machine: Machine,
  next: readonly NextTrial[],
): string {
  const { pump, bead, corner, lags, notYet } = fits
  return [
    `read with ${tried.from}`,
    ...(pump ? ['', `pump    ${pump.say}`, residuals(pump, tried.units)] : []),
    ...(bead ? ['', `bead    ${bead.say}`, ...outliers(bead.outliers)] : []),
    ...[lags.start, lags.stop].flatMap(lag => (lag ? [`lag     ${lag.say}`] : [])),
    ...(corner ? [`corner  ${corner.say}`] : []),
    ...notYet.map(({ say }) => `not yet ${say}`),
    ...toWrite(tried.machine, machine, tried.units),
    ...(next.length > 0
      ? ['', 'worth trying next', nextTable(next, tried.units)]
      : ['', 'nothing more needs trying']),
  ].join('\n')
}

const residuals = ({ points }: NonNullable<TrialFits['pump']>, units: Units): string =>
  textTable(
    ['bucket', flowUnits[units][0], 'off the curve'],
    points.map(({ at, flow, residual }) => [
      at,
      (flow * flowUnits[units][1]).toFixed(2),
      `${(residual * 100).toFixed(1)} %`,
    ]),
    [1, 2],
  )

const outliers = (names: readonly string[]): readonly string[] =>
  names.length > 0 ? [`        far off the others: ${names.join(', ')}`] : []

/** What a flow is read in, and how many of it make one of SI. */
const flowUnits = { metric: ['L/min', 60_000], imperial: ['gal/min', 60_000 / 3.785411784] } as const

/** Lines for the job's `machine:` that make its files use what was measured; quantities ask for the sheet itself. */
function toWrite(before: Machine, after: Machine, units: Units): readonly string[] {
  const { pump } = after
  const flow = (value: number) =>
    `${Number((value * flowUnits[units][1]).toPrecision(5))} ${flowUnits[units][0]}`
  const lines = [
    ...(pump.flowMost === before.pump.flowMost
      ? []
      : [`flowLeast: ${flow(pump.flowLeast)}`, `flowMost: ${flow(pump.flowMost)}`]),
    ...(pump.settingPerFlow === before.pump.settingPerFlow &&
    (pump.settingIdle ?? 0) === (before.pump.settingIdle ?? 0)
      ? []
      : [`settingAtMost: ${significant(pumpSetting(after, pump.flowMost))}`]),
    ...(pump.settingIdle ? [`settingIdle: ${significant(pump.settingIdle)}`] : []),
    ...(pump.startLag === before.pump.startLag ? [] : [`startLag: ${seconds(pump.startLag)}`]),
    ...(pump.stopLag === before.pump.stopLag ? [] : [`stopLag: ${seconds(pump.stopLag)}`]),
  ]
  return lines.length > 0
    ? [
        '',
        'to write into job.yaml',
        `  machine: { pump: { ${lines.join(', ')} } }`,
        'or name the sheet there, as machine: { trials: … }: then bags and water count fill, corners and lags too',
      ]
    : []
}

const significant = (value: number): number => Number(value.toPrecision(4))

const seconds = (time: number): string => `${Number(time.toFixed(2))} s`

const nextTable = (next: readonly NextTrial[], units: Units): string =>
  textTable(
    ['trial', 'at', 'why'],
    next.map(({ kind, setting, unit, why }) => [
      kind,
      unit === 'S' ? `S ${Number(setting.toPrecision(3))}` : sayQuantity(setting * 1000, 'mm/s', units),
      why,
    ]),
  )
