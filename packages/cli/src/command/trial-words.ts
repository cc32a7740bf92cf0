import type { Machine } from '@dawnlift/core/machine'
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
    ...(pump ? ['', `pump    ${pump.say}`, residuals(pump)] : []),
    ...(bead ? ['', `bead    ${bead.say}`, ...outliers(bead.outliers)] : []),
    ...[lags.start, lags.stop].flatMap(lag => (lag ? [`lag     ${lag.say}`] : [])),
    ...(corner ? [`corner  ${corner.say}`] : []),
    ...notYet.map(({ say }) => `not yet ${say}`),
    ...toWrite(tried.machine, machine),
    ...(next.length > 0 ? ['', 'worth trying next', nextTable(next)] : ['', 'nothing more needs trying']),
  ].join('\n')
}

const residuals = ({ points }: NonNullable<TrialFits['pump']>): string =>
  textTable(
    ['bucket', 'L/min', 'off the curve'],
    points.map(({ at, flow, residual }) => [
      at,
      (flow * 60_000).toFixed(2),
      `${(residual * 100).toFixed(1)} %`,
    ]),
    [1, 2],
  )

const outliers = (names: readonly string[]): readonly string[] =>
  names.length > 0 ? [`        far off the others: ${names.join(', ')}`] : []

/** Lines for the job's `machine:` that make the plan and its files use what was measured. */
function toWrite(before: Machine, { pump }: Machine): readonly string[] {
  const flow = (value: number) => `${Number((value * 60_000).toPrecision(5))} L/min`
  const lines = [
    ...(pump.flowMost === before.pump.flowMost
      ? []
      : [`flowLeast: ${flow(pump.flowLeast)}`, `flowMost: ${flow(pump.flowMost)}`]),
    ...(pump.settingPerFlow === before.pump.settingPerFlow
      ? []
      : [`settingAtMost: ${Number((pump.settingPerFlow * pump.flowMost).toPrecision(4))}`]),
    ...(pump.startLag === before.pump.startLag ? [] : [`startLag: ${seconds(pump.startLag)}`]),
    ...(pump.stopLag === before.pump.stopLag ? [] : [`stopLag: ${seconds(pump.stopLag)}`]),
  ]
  return lines.length > 0
    ? ['', 'to write into job.yaml', `  machine: { pump: { ${lines.join(', ')} } }`]
    : []
}

const seconds = (time: number): string => `${Number(time.toFixed(2))} s`

const nextTable = (next: readonly NextTrial[]): string =>
  textTable(
    ['trial', 'at', 'why'],
    next.map(({ kind, setting, unit, why }) => [
      kind,
      unit === 'S' ? `S ${Number(setting.toPrecision(3))}` : `${Math.round(setting * 1000)} mm/s`,
      why,
    ]),
  )
