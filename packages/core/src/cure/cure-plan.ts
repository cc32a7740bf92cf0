import { ageAtStrength, ageAtYield, momentOfAge } from '../mix/index.js'
import type { Celsius, Instant, Seconds } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import type { CoverKind } from './cover.js'
import type { CureCase } from './cure-case.js'
import { type CureStep, coverStep, heatingSteps, temperatureSteps, uncoverStep } from './cure-steps.js'
import { cureWords } from './cure-words.js'
import { checkCooling, checkFrost, isColdWeather } from './frost.js'
import { checkHeat, checkPlastic, checkWater } from './heat-checks.js'
import {
  cureTargets,
  lastAge,
  type Milestone,
  milestones,
  UNCOVER_LEAST,
  UNCOVER_MOST,
} from './milestones.js'
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

/** The longest a lift's cure is followed; it ends when the last milestone is reached. */
export const FOLLOWED: Seconds = 14 * 86400

/**
 * Cover when, wet when, check temperature when, uncover when, for one lift; with the milestones of its youngest layer.
 *
 * The last layer rules: it is laid last and matures last. Covers go on when it is firm enough not to be marked.
 */
export function curePlan(input: CureCase): CurePlan {
  const { lift, weather, build } = input
  const words = cureWords(input.job.units)
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
    enough: openQuestions(input.job),
    ...(input.tables ? { tables: input.tables } : {}),
  }
  const heat = wallHeat(run)
  const marks = milestones(heat, input.job.mix, input.job.rules, { words })
  const uncover = marks.find(mark => mark.kind === 'uncover')?.at
  const frostSafe = marks.find(mark => mark.kind === 'frost-safe')?.at
  const steps = [
    coverStep(input, cover, coverAt),
    ...wettingSteps(input, heat, uncover ?? heat.until),
    ...temperatureSteps(lift.id, heat, words),
    ...(cold ? heatingSteps(input, cover, coverAt, frostSafe ?? heat.until) : []),
    ...(uncover === undefined ? [] : [uncoverStep(lift.id, uncover)]),
  ]
  return {
    lift: lift.id,
    cover,
    steps: steps.sort((a, b) => a.at - b.at),
    milestones: marks,
    findings: [
      checkHeat(lift.id, heat, words),
      ...(cold ? [checkFrost(lift.id, heat, frostSafe, words)] : []),
      ...(uncover === undefined ? [] : checkCooling(lift.id, heat, weather, uncover, build.thickness, words)),
      ...(cover === 'wet-burlap'
        ? checkWater(lift.id, heat, input.job.batching.waterTemperature, words)
        : []),
      ...(input.shaded ? [] : checkPlastic(lift.id, run, words)),
    ],
    peak: peakOf(heat, uncover),
    heat,
  }
}

/** A wall that carries the roof and is uncovered has nothing more to tell; one that never may be uncovered by its strength waits seven days. */
function openQuestions({ mix, rules }: CureCase['job']): NonNullable<WallHeatInput['enough']> {
  const targets = cureTargets(mix, rules)
  const byStrength = ageAtStrength(mix.strength, targets.uncover.strength) !== undefined
  return { age: lastAge(mix, targets), after: byStrength ? UNCOVER_LEAST : UNCOVER_MOST }
}

/** When the last layer can be touched: its yield stress has reached what a clean cut needs; at least half an hour. */
function firmAt({ job, lift, mixTemperature }: CureCase): Instant {
  const age = ageAtYield(job.mix.lower.yield, job.mix.cutFrom) ?? 3600
  const firm = momentOfAge(lift.end, age, () => mixTemperature, job.mix)
  return Math.max(lift.end + 1800, firm ?? lift.end + 3600)
}
