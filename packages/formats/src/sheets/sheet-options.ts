import { type Lift, type NextGain, sayGain } from '@dawnlift/core/campaign'
import type { Limit } from '@dawnlift/core/limit'
import { sayLimit } from '@dawnlift/core/limit'
import type { MixFit } from '@dawnlift/core/mix'
import type { Plan } from '@dawnlift/core/plan'

/** What the sheets need beside the plan. */
export interface SheetOptions {
  /** Printed on every sheet, e.g. `1 July 2026, 18:00`. Nothing here reads a clock. */
  readonly date: string
  /** Words for a limit; without it `sayLimit` in the job's units and zone. */
  readonly say?: (limit: Limit) => string
  /** Words for a lift's next gain; without it the campaign's own sentence. */
  readonly sayGain?: (gain: NextGain, lift: Lift) => string
  /** How the mix was fitted; its tests are then drawn in the permit package. */
  readonly mixFit?: MixFit
  /** Further cure lines of a day. */
  readonly cureOf?: (date: string) => readonly string[]
  /** Further cautions of a day, each beginning with its number and source. */
  readonly cautionsOf?: (date: string) => readonly string[]
}

export const sayerOf = (plan: Plan, options: SheetOptions): ((limit: Limit) => string) =>
  options.say ?? (limit => sayLimit(limit, plan.job.units, plan.job.site.timeZone))

/** Why the lift ends where it does. */
export const stopWords = (plan: Plan, options: SheetOptions, lift: Lift): string =>
  lift.leftFor === undefined
    ? sayerOf(plan, options)(lift.binding)
    : `the rest of the day is left to section ${lift.leftFor}`

/** What would buy more, and what would stop it then. */
export function gainWords(plan: Plan, options: SheetOptions, lift: Lift): string {
  if (!lift.nextGain) return 'nothing that was tried'
  return options.sayGain ? options.sayGain(lift.nextGain, lift) : sayGain(lift.nextGain, plan.job.units)
}

/** A source as people read it: keys lose their brackets. */
export const sourceText = (source: string): string => source.replace(/^\[(.*)\]$/, '$1')
