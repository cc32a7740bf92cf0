import type { Campaign, CampaignInput, Lift, SectionStanding } from '../campaign/index.js'
import type { Instant, Seconds } from '../quantity/index.js'

/** One building of a site, with everything its own campaign rests on. All buildings of a site have one crew and one calendar. */
export interface Building {
  readonly name: string
  readonly input: CampaignInput
}

/** Several buildings that one machine and one crew print in turn. */
export interface SiteInput {
  readonly buildings: readonly Building[]
  /** From the end of wash-out at one building to the beginning of set-up at another. */
  readonly move: Seconds
}

/** A stay of machine and crew at one building within one day: set-up to wash-out. */
export interface Visit {
  readonly building: string
  /** Local date of the crew's day. */
  readonly date: string
  readonly start: Instant
  readonly end: Instant
  /** Begin of the move that brought the machine here; none when it stood here already. */
  readonly moveStart?: Instant
  readonly lifts: readonly Lift[]
}

/** The days of a whole site. */
export interface SiteCampaign {
  readonly visits: readonly Visit[]
  /** Each building's own days in it. */
  readonly byBuilding: readonly { readonly building: string; readonly campaign: Campaign }[]
  readonly finished: boolean
  readonly finish: Instant
  /** Local date of the last visit; empty without one. */
  readonly finishDate: string
  readonly moves: number
}

/** Both ways to print a site, and what sharing it gains. */
export interface SharedSite {
  readonly shared: SiteCampaign
  readonly oneAfterOther: SiteCampaign
  /** Calendar days the whole site is up sooner. Nothing where one of them is not up. */
  readonly daysGained?: number
  /** No way of sharing is up before this local date. */
  readonly bound?: string
}

/** What stands of every building, in their order. */
export type SiteStanding = readonly (readonly SectionStanding[])[]

export const nothingStands = ({ buildings }: SiteInput): SiteStanding =>
  buildings.map(({ input }) => input.standing ?? [])

/** What stands of a building once lifts are added. */
export function withLifts(
  standing: readonly SectionStanding[],
  lifts: readonly Lift[],
): readonly SectionStanding[] {
  const byName = new Map(standing.map(one => [one.section, one]))
  for (const lift of lifts) {
    const before = byName.get(lift.section)
    byName.set(lift.section, {
      section: lift.section,
      layers: lift.lastLayer,
      lastEnd: lift.end,
      lifts: (before?.lifts ?? 0) + 1,
    })
  }
  return [...byName.values()]
}

/** Print time still to be done at a building [s]; 0: it is up. */
export function timeLeft({ input }: Building, standing: readonly SectionStanding[]): Seconds {
  const layers = new Map(standing.map(one => [one.section, one.layers]))
  return input.work.reduce(
    (sum, work) =>
      sum + work.printTimes.slice(layers.get(work.section) ?? 0).reduce((time, each) => time + each, 0),
    0,
  )
}
