import type { Celsius, MetresPerSecond, Share } from '../quantity/index.js'
import { failure, type Problem, type Result, success } from '../result/index.js'

/** One month of a place's long-term means. */
export interface MonthNormals {
  /** Mean of the days' highest and lowest air temperatures. */
  readonly airMost: Celsius
  readonly airLeast: Celsius
  readonly dewPoint: Celsius
  /** Mean at 10 m. */
  readonly wind: MetresPerSecond
  /** Days with at least 1 mm, and the month's whole rain. */
  readonly rainDays: number
  readonly rainMm: number
  readonly sky: SkyNormals
}

/** Either the mean global radiation of a day or the mean cloud cover. */
export type SkyNormals =
  | { readonly kind: 'global'; readonly megajoulesPerDay: number }
  | { readonly kind: 'cloud'; readonly cover: Share }

/** A place's climate, as a job can carry it: January to December. */
export interface ClimateNormals {
  readonly place: string
  /** Where the figures come from. */
  readonly source: string
  readonly months: readonly MonthNormals[]
}

/** Ranges a month's figures must lie in: outside, the unit is wrong. */
export const normalsRange = {
  airMost: [-50, 55],
  airLeast: [-60, 45],
  dewPoint: [-60, 32],
  wind: [0, 25],
  rainDays: [0, 31],
  rainMm: [0, 3000],
} as const

/** All that is wrong with a set of normals, each with its path. */
export function checkNormals(normals: ClimateNormals): Result<ClimateNormals> {
  const problems: Problem[] = normals.months.flatMap((month, index) =>
    monthProblems(month, `months[${index}]`),
  )
  if (normals.months.length !== 12)
    problems.push({
      code: 'weather/normals-months',
      at: 'months',
      say: `The climate has ${normals.months.length} months; give all twelve, January first.`,
    })
  return problems.length > 0 ? failure(problems) : success(normals)
}

function monthProblems(month: MonthNormals, at: string): Problem[] {
  const keys = Object.keys(normalsRange) as (keyof typeof normalsRange)[]
  const problems = keys.flatMap(key => {
    const [least, most] = normalsRange[key]
    const value = month[key]
    if (value >= least && value <= most) return []
    return [rangeProblem(`${at}.${key}`, value, least, most)]
  })
  if (month.airLeast > month.airMost)
    problems.push({
      code: 'weather/normals-range',
      at: `${at}.airLeast`,
      say: `The mean lowest temperature ${month.airLeast} °C is above the mean highest ${month.airMost} °C; swap them.`,
    })
  const sky = month.sky
  if (sky.kind === 'global' && !(sky.megajoulesPerDay >= 0 && sky.megajoulesPerDay <= 45))
    problems.push(rangeProblem(`${at}.sky.megajoulesPerDay`, sky.megajoulesPerDay, 0, 45))
  if (sky.kind === 'cloud' && !(sky.cover >= 0 && sky.cover <= 1))
    problems.push(rangeProblem(`${at}.sky.cover`, sky.cover, 0, 1))
  return problems
}

const rangeProblem = (at: string, value: number, least: number, most: number): Problem => ({
  code: 'weather/normals-range',
  at,
  say: `Found ${value}; a monthly mean lies between ${least} and ${most}. Check the unit.`,
  values: { value, least, most },
})
