import type { Lift, NextGain } from '@dawnlift/core/campaign'
import type { Limit } from '@dawnlift/core/limit'
import { sayLimit } from '@dawnlift/core/limit'
import type { Plan } from '@dawnlift/core/plan'

/** What the sheets need beside the plan. */
export interface SheetOptions {
  /** Printed on every sheet, e.g. `1 July 2026, 18:00`. Nothing here reads a clock. */
  readonly date: string
  /** Words for a limit; without it `sayLimit` in the job's units and zone. */
  readonly say?: (limit: Limit) => string
  /** Words for a lift's next gain; without it a plain sentence. */
  readonly sayGain?: (gain: NextGain, lift: Lift) => string
  /** Cure plan of a day, a line each: `14:10 wet section A, both faces`. */
  readonly cureOf?: (date: string) => readonly string[]
  /** Further cautions of a day, each beginning with its number and source. */
  readonly cautionsOf?: (date: string) => readonly string[]
}

export const sayerOf = (plan: Plan, options: SheetOptions): ((limit: Limit) => string) =>
  options.say ?? (limit => sayLimit(limit, plan.job.units, plan.job.site.timeZone))

const levers: Readonly<Record<NextGain['lever'], string>> = {
  'chilled-water': 'mixing water at',
  'earlier-start': 'starting earlier by',
  'faster-nozzle': 'nozzle at',
  'slower-pace': 'layer time of',
  'taller-lift': 'lift rule of',
  'longer-shift': 'shift longer by',
  'night-start': 'starting at night, at',
  'next-day': 'waiting for the next day,',
}

/** What would buy more, and what would stop it then. */
export function gainWords(plan: Plan, options: SheetOptions, lift: Lift): string {
  const gain = lift.nextGain
  if (!gain) return 'nothing that was tried'
  if (options.sayGain) return options.sayGain(gain, lift)
  const days = gain.days === 0 ? '' : `, ${Number(gain.days.toFixed(1))} days sooner`
  return `${levers[gain.lever]} ${Number(gain.setting.toPrecision(3))} ${gain.unit}: ${gain.layers} layers more${days}; then ${sayerOf(plan, options)(gain.bindsNext)}`
}
