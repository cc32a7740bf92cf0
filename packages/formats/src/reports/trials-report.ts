import type { Machine } from '@dawnlift/core/machine'
import type { Problem } from '@dawnlift/core/result'
import type { BeadModel, CornerModel, Lag, Lags, NextTrial, PumpCurve } from '@dawnlift/core/trial'
import { z } from 'zod'
import { count, factor, setting, share } from './bare-number.js'
import { headSchema, reportHead } from './report-head.js'

const perFlow = z.number().meta({ description: 'Pump setting for each m³/s' })
const lagSchema = z.strictObject({
  lag_s: z.number(),
  standardError_s: z.number().optional(),
  trials: count,
  say: z.string(),
})

/** What `dawnlift trials --json` prints. */
export const trialsReportSchema = z
  .strictObject({
    ...headSchema('trials'),
    from: z.string(),
    pump: z
      .strictObject({
        setting_per_m3_per_s: perFlow,
        idle: setting('at which the pump begins to deliver'),
        flowError: share('standard error of a flow set by this curve'),
        scatter: share('scatter of one bucket about the curve'),
        settingFrom: setting('least tried'),
        settingTo: setting('most tried'),
        points: z.array(
          z.strictObject({ at: z.string(), flow_m3_per_s: z.number(), residual: share('off the curve') }),
        ),
        say: z.string(),
      })
      .optional(),
    bead: z
      .strictObject({
        fill: factor('measured section over flow over speed'),
        fillError: factor('its standard error'),
        widthScatter_m: z.number(),
        widthBand_m: z.number().meta({ description: 'Nineteen beads in twenty keep to it, either way' }),
        points: z.array(z.strictObject({ at: z.string(), expected_m: z.number(), residual_m: z.number() })),
        outliers: z.array(z.string()),
        say: z.string(),
      })
      .optional(),
    startLag: lagSchema.optional(),
    stopLag: lagSchema.optional(),
    corner: z
      .strictObject({
        swelling: factor('power of the slow-down with which the bead widens'),
        swellingError: factor('its standard error').optional(),
        slowest: share('of the straight speed that keeps the bead within a tenth'),
        say: z.string(),
      })
      .optional(),
    notYet: z.array(z.strictObject({ code: z.string(), at: z.string(), say: z.string() })),
    machine: z.strictObject({
      setting_per_m3_per_s: perFlow,
      settingIdle: setting('at which the pump begins to deliver').optional(),
      startLag_s: z.number(),
      stopLag_s: z.number(),
    }),
    next: z.array(
      z.strictObject({ kind: z.string(), setting: z.number(), unit: z.string(), why: z.string() }),
    ),
  })
  .meta({ title: 'What trials of machine and pump tell' })

export interface TrialsTold {
  readonly from: string
  readonly pump?: PumpCurve
  readonly bead?: BeadModel
  readonly lags: Lags
  readonly corner?: CornerModel
  readonly notYet: readonly Problem[]
  /** With what was measured in place of what was assumed. */
  readonly machine: Machine
  readonly next: readonly NextTrial[]
}

export const trialsReport = (told: TrialsTold): z.infer<typeof trialsReportSchema> => ({
  ...reportHead('trials'),
  from: told.from,
  ...(told.pump ? { pump: pumpReport(told.pump) } : {}),
  ...(told.bead ? { bead: beadReport(told.bead) } : {}),
  ...(told.lags.start ? { startLag: lagReport(told.lags.start) } : {}),
  ...(told.lags.stop ? { stopLag: lagReport(told.lags.stop) } : {}),
  ...(told.corner ? { corner: cornerReport(told.corner) } : {}),
  notYet: told.notYet.map(({ code, at, say }) => ({ code, at, say })),
  machine: {
    setting_per_m3_per_s: told.machine.pump.settingPerFlow,
    ...(told.machine.pump.settingIdle ? { settingIdle: told.machine.pump.settingIdle } : {}),
    startLag_s: told.machine.pump.startLag,
    stopLag_s: told.machine.pump.stopLag,
  },
  next: told.next.map(({ kind, setting, unit, why }) => ({ kind, setting, unit, why })),
})

const pumpReport = (pump: PumpCurve) => ({
  setting_per_m3_per_s: pump.settingPerFlow,
  idle: pump.idle,
  flowError: pump.flowError,
  scatter: pump.scatter,
  settingFrom: pump.settings[0],
  settingTo: pump.settings[1],
  points: pump.points.map(({ at, flow, residual }) => ({ at, flow_m3_per_s: flow, residual })),
  say: pump.say,
})

const beadReport = (bead: BeadModel) => ({
  fill: bead.fill,
  fillError: bead.fillError,
  widthScatter_m: bead.widthScatter,
  widthBand_m: bead.widthBand,
  points: bead.points.map(({ at, expected, residual }) => ({
    at,
    expected_m: expected,
    residual_m: residual,
  })),
  outliers: [...bead.outliers],
  say: bead.say,
})

const lagReport = ({ seconds, error, trials, say }: Lag) => ({
  lag_s: seconds,
  ...(error === undefined ? {} : { standardError_s: error }),
  trials,
  say,
})

const cornerReport = ({ swelling, error, slowest, say }: CornerModel) => ({
  swelling,
  ...(error === undefined ? {} : { swellingError: error }),
  slowest,
  say,
})
