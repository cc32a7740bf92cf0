import type { Celsius, Instant, Metres, Seconds } from '../quantity/index.js'

/** What a wall went through, every half hour. All lists are equally long. */
export interface WallTrace {
  readonly at: Instant[]
  readonly left: Celsius[]
  readonly right: Celsius[]
  /** Hottest and coldest place inside. */
  readonly most: Celsius[]
  readonly least: Celsius[]
  /** Equivalent age of the least mature place [s]. */
  readonly age: Seconds[]
  /** Water each face has lost [kg/m²]. */
  readonly lostLeft: number[]
  readonly lostRight: number[]
}

/** Cloth that has dried to its reserve and takes this much again [kg/m²]. */
export interface Rewetting {
  readonly at: Instant
  readonly side: 'left' | 'right'
  readonly water: number
}

export interface WallHeat {
  readonly start: Instant
  /** The end of the time asked for, of the weather, or of what there was to find out. */
  readonly until: Instant
  readonly trace: { readonly [Key in keyof WallTrace]: readonly number[] }
  /** Temperature of every cell from the left face to the right, a row for each moment of the trace. */
  readonly profile: readonly (readonly Celsius[])[]
  /** Middles of those cells from the left face [m]. */
  readonly depths: readonly Metres[]
  readonly rewettings: readonly Rewetting[]
  /** Largest share of the heat exchanged in one step that is not accounted for. */
  readonly balanceError: number
}

export const emptyTrace = (): WallTrace => ({
  at: [],
  left: [],
  right: [],
  most: [],
  least: [],
  age: [],
  lostLeft: [],
  lostRight: [],
})

/** The highest of a trace until a moment, and when. */
export function peakOf(
  heat: WallHeat,
  until: Instant = Infinity,
): { readonly temperature: Celsius; readonly at: Instant } {
  const { most, left, right, at } = heat.trace
  let best = 0
  const hottest = (index: number) => Math.max(most[index]!, left[index]!, right[index]!)
  for (let index = 1; index < at.length && at[index]! <= until; index += 1)
    if (hottest(index) > hottest(best)) best = index
  return { temperature: hottest(best), at: at[best]! }
}

/** The lowest of a trace until a moment, and when. */
export function coldestOf(
  heat: WallHeat,
  until: Instant = Infinity,
): { readonly temperature: Celsius; readonly at: Instant } {
  const { least, left, right, at } = heat.trace
  let best = 0
  const coldest = (index: number) => Math.min(least[index]!, left[index]!, right[index]!)
  for (let index = 1; index < at.length && at[index]! <= until; index += 1)
    if (coldest(index) < coldest(best)) best = index
  return { temperature: coldest(best), at: at[best]! }
}

/** Largest difference between two places of the wall at one time [K], and when. */
export function steepestOf(heat: WallHeat): { readonly difference: Celsius; readonly at: Instant } {
  const { most, least, left, right, at } = heat.trace
  let best = { difference: 0, at: heat.start }
  at.forEach((moment, index) => {
    const difference =
      Math.max(most[index]!, left[index]!, right[index]!) -
      Math.min(least[index]!, left[index]!, right[index]!)
    if (difference > best.difference) best = { difference, at: moment }
  })
  return best
}

/** Moment at which the least mature place reaches an equivalent age; none within the trace. */
export function momentOfTraceAge(heat: WallHeat, age: Seconds): Instant | undefined {
  const ages = heat.trace.age
  const index = ages.findIndex(reached => reached >= age)
  if (index < 0) return undefined
  if (index === 0) return heat.trace.at[0]
  const [a, b] = [ages[index - 1]!, ages[index]!]
  const [from, to] = [heat.trace.at[index - 1]!, heat.trace.at[index]!]
  return from + ((age - a) / (b - a)) * (to - from)
}

/** Equivalent age of the least mature place at a moment within the trace [s]. */
export function traceAgeAt(heat: WallHeat, at: Instant): Seconds {
  const { at: moments, age } = heat.trace
  const index = moments.findIndex(moment => moment >= at)
  if (index < 0) return age.at(-1)!
  if (index === 0) return age[0]!
  const share = (at - moments[index - 1]!) / (moments[index]! - moments[index - 1]!)
  return age[index - 1]! + share * (age[index]! - age[index - 1]!)
}
