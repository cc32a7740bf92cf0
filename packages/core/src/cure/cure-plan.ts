import { ageAtYield, momentOfAge } from '../mix/index.js'
import type { Celsius, Instant, Seconds } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import type { CoverKind } from './cover.js'
import type { CureCase } from './cure-case.js'
import { type CureStep, coverStep, heatingSteps, temperatureSteps, uncoverStep } from './cure-steps.js'
import { checkCooling, checkFrost, isColdWeather } from './frost.js'
import { checkHeat, checkPlastic, checkWater } from './heat-checks.js'
import { type Milestone, milestones } from './milestones.js'
import type { WallHeatInput } from './wall-case.js'
import { wallHeat } from './wall-heat.js'
import { peakOf, type WallHeat } from './wall-trace.js'
import { wettingSteps } from './wetting-steps.js'

/** How one lift is kept until it is strong. */
export interface CurePlan {
  readonly lift: string
  readonly cover: CoverKind
  readonly steps: readonly CureStep[]
  readonly milestones: readonly Milestone[]
  readonly findings: readonly Finding[]
  readonly peak: { readonly temperature: Celsius; readonly at: Instant }
  readonly heat: WallHeat
}

/** How long a lift's cure is followed. */
export const FOLLOWED: Seconds = 14 * 86400

/**
 * Cover when, wet when, check temperature when, uncover when, for one lift; with the milestones of its youngest layer.
 *
 * The last layer rules: it is laid last and matures last. Covers go on when it is firm enough not to be marked.
 */
export function curePlan(input: CureCase): CurePlan {
  const { lift, weather, build } = input
  const cold = isColdWeather(weather, lift.end, lift.end + 3 * 86400)
  const cover = input.cover ?? (cold ? 'insulated-blanket' : 'wet-burlap')
  const coverAt = firmAt(input)
  const run: WallHeatInput = {
    build,
    mix: input.job.mix,
    weather,
    start: lift.end,
    mixTemperature: input.mixTemperature,
    covers: [{ from: coverAt, cover }],
    duration: FOLLOWED,
  }
  const heat = wallHeat(run)
  const marks = milestones(heat, input.job.mix, input.job.rules)
  const uncover = marks.find(mark => mark.kind === 'uncover')?.at
  const frostSafe = marks.find(mark => mark.kind === 'frost-safe')?.at
  const steps = [
    coverStep(input, cover, coverAt),
    ...wettingSteps(input, heat, uncover ?? heat.until),
    ...temperatureSteps(lift.id, heat),
    ...(cold ? heatingSteps(input, cover, coverAt, frostSafe ?? heat.until) : []),
    ...(uncover === undefined ? [] : [uncoverStep(lift.id, uncover)]),
  ]
  return {
    lift: lift.id,
    cover,
    steps: steps.sort((a, b) => a.at - b.at),
    milestones: marks,
    findings: [
      checkHeat(lift.id, heat),
      ...(cold ? [checkFrost(lift.id, heat, frostSafe)] : []),
      ...(uncover === undefined ? [] : checkCooling(lift.id, heat, weather, uncover, build.thickness)),
      ...(cover === 'wet-burlap' ? checkWater(lift.id, heat, input.job.batching.waterTemperature) : []),
      ...checkPlastic(lift.id, run),
    ],
    peak: peakOf(heat),
    heat,
  }
}

/** When the last layer can be touched: its yield stress has reached what a clean cut needs; at least half an hour. */
function firmAt({ job, lift, mixTemperature }: CureCase): Instant {
  const age = ageAtYield(job.mix.lower.yield, job.mix.cutFrom) ?? 3600
  const firm = momentOfAge(lift.end, age, () => mixTemperature, job.mix)
  return Math.max(lift.end + 1800, firm ?? lift.end + 3600)
}
