import type { CubicMetres, Instant, Seconds } from '../quantity/index.js'
import type { CampaignInput } from './campaign-input.js'
import { type HourTable, hourTable } from './hour-table.js'
import type { Reach } from './lift-reach.js'
import { isPermitted, pinnedEnds, pinsBySection, type SectionPins } from './pins.js'
import { type SectionClock, sectionClock } from './section-clock.js'
import { isHeldBack, type SharedEnd, sharedEnds } from './shared-ends.js'
import { openBook, type StandingBook } from './standing-book.js'
import { type WorkDay, workDays } from './work-day.js'

/** The scheduler's prepared view of its input: clocks per section, hours, days, and what it has asked before. */
export interface Ground {
  readonly input: CampaignInput
  readonly sections: readonly SectionClock[]
  /** Lintels each section shares with others. */
  readonly shared: readonly (readonly SharedEnd[])[]
  /** What the lead has settled of each section. */
  readonly pins: readonly SectionPins[]
  readonly table: HourTable
  readonly days: readonly WorkDay[]
  readonly cure: Seconds
  readonly reaches: Map<string, Reach>
  readonly book: StandingBook
  /** `asked`: every lift is put to the physics; `sampled`: the book's nearest answer does. */
  readonly standing: 'asked' | 'sampled'
}

/**
 * The book can be handed on to a changed input as long as the physics are the same, and so can prepared hours as long as
 * they are the same ones.
 */
export function prepareGround(
  input: CampaignInput,
  book: StandingBook = openBook(input.physics),
  prepared?: { readonly hours: CampaignInput['hours']; readonly table: HourTable },
): Ground {
  const pins = pinsBySection(input.work, input.pins)
  return {
    input,
    sections: input.work.map((work, s) =>
      sectionClock(work, input.rules.liftHeight.value, pinnedEnds(pins[s]!)),
    ),
    pins,
    shared: sharedEnds(input.work),
    table:
      prepared && prepared.hours === input.hours ? prepared.table : hourTable(input.hours, input.physics),
    days: workDays(input),
    cure: input.rules.overnightCure.value,
    reaches: new Map(),
    book: book.physics === input.physics ? book : openBook(input.physics),
    standing: 'asked',
  }
}

/** What stands at the start of a day, by section number. `ready[s]`: when the section has cured; `lifts[s]`: in how many lifts. */
export interface Stand {
  readonly heights: readonly number[]
  readonly lifts: readonly number[]
  readonly ready: readonly Instant[]
}

export function standAtStart(ground: Ground): Stand {
  const standing = new Map(ground.input.standing?.map(one => [one.section, one]))
  const of = (section: SectionClock) => standing.get(section.work.section)
  const heights = ground.sections.map(section => Math.min(section.layers, of(section)?.layers ?? 0))
  return {
    heights,
    // Untold, new lifts count on from the fewest that could have got there.
    lifts: ground.sections.map(
      (section, s) => of(section)?.lifts ?? section.liftsLeft[0]! - section.liftsLeft[heights[s]!]!,
    ),
    ready: ground.sections.map(section => {
      const lastEnd = of(section)?.lastEnd
      if (lastEnd === undefined) return Number.NEGATIVE_INFINITY
      // One lift a day: a section printed today waits for tomorrow however short its cure.
      const today = ground.days.find(day => day.begins <= lastEnd && lastEnd < day.closes)
      return Math.max(lastEnd + ground.cure, today?.closes ?? 0)
    }),
  }
}

/** Whether a section may be printed on a day that begins like this: not up yet, no neighbour to wait for, no pin against it. */
export const isOpen = (ground: Ground, stand: Stand, s: number, date: string): boolean =>
  stand.heights[s]! < ground.sections[s]!.layers &&
  isPermitted(ground.pins[s]!, stand.lifts[s]!, date) &&
  !isHeldBack(ground.shared[s]!, stand.heights, stand.heights[s]!)

export const isUp = (ground: Ground, stand: Stand): boolean =>
  stand.heights.every((height, s) => height >= ground.sections[s]!.layers)

/** Volume in the walls above what the silo had to give, i.e. printed since the start. */
export function volumePrinted(ground: Ground, stand: Stand, start: Stand): CubicMetres {
  let volume = 0
  for (const [s, section] of ground.sections.entries()) {
    volume += section.volumeBy[stand.heights[s]!]! - section.volumeBy[start.heights[s]!]!
  }
  return volume
}
