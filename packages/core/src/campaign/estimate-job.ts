import type { Units } from '../limit/index.js'
import type { Metres, MetresPerSecond, Seconds, Share, SquareMetres } from '../quantity/index.js'
import { assert } from '../result/index.js'

/** A figure for a bid: not below `low`, not above `high`, as far as the inputs go. */
export interface Spread {
  readonly low: number
  readonly likely: number
  readonly high: number
}

/** What is known before anybody has drawn a bead. */
export interface BidInput {
  /** Only where the wall length is not known. */
  readonly floorArea?: SquareMetres
  /** Measured on the plan if there is one; else taken from the floor area. */
  readonly wallLength?: Metres
  /** Share of the wall face that is openings, where somebody has counted them. */
  readonly openings?: Share
  /** Whether there are lintels: each ends a lift, wherever its top comes. */
  readonly hasLintels?: boolean
  readonly wallHeight: Metres
  /** Of the words; metric unless said. */
  readonly units?: Units
  readonly layerHeight: Metres
  readonly beadWidth: Metres
  /** Bead metres of one layer per metre of wall. */
  readonly beadPerMetre: number
  readonly speed: MetresPerSecond
  readonly liftHeight: Metres
  readonly setUpAndWashOut: Seconds
  readonly changeOver: Seconds
  readonly longestShift: Seconds
  /** Open hours of a working day at that season, from the climate. */
  readonly openHours: Spread
  /** Working days of the season lost to weather, share. */
  readonly lostShare: Spread
  /** Longest time for one layer of a section. */
  readonly layerTimeMost: Seconds
}

export interface BidEstimate {
  readonly wallLength: Spread
  /** One face of the walls, openings taken off. */
  readonly wallFace: Spread
  readonly beadLength: Spread
  /** m³ of mix in the walls. */
  readonly volume: Spread
  readonly sections: Spread
  readonly lifts: Spread
  readonly printHours: Spread
  readonly printDays: Spread
  /** Hours from set-up to wash-out, all print days. */
  readonly siteHours: Spread
  /** Working days with those lost to weather. */
  readonly workDays: Spread
  /** What the spread comes from, the largest first: working days with this one at its best and its worst, the rest likely. */
  readonly drivers: readonly BidDriver[]
  readonly assumes: readonly string[]
}

export interface BidDriver {
  readonly what: BidFactor
  readonly value: Spread
  readonly workDays: { readonly best: number; readonly worst: number }
}

/** Everything about a bid that is not sure. `low` makes the job short, `high` makes it long. */
export type BidFactor =
  | 'wallLength'
  | 'openings'
  | 'lintelLifts'
  | 'slowed'
  | 'used'
  | 'openHours'
  | 'lostShare'

type Factors = Readonly<Record<BidFactor, number>>

/** Wall metres per m² of floor of a one-storey house: common practice, no source. */
const WALL_PER_FLOOR: Spread = { low: 0.35, likely: 0.45, high: 0.6 }
/** Share of the wall face taken by openings: common practice, no source. */
const OPENINGS: Spread = { low: 0.22, likely: 0.15, high: 0.08 }
/** Lifts more of each section because lintels end one: none where their tops fall on a lift's. Derived: a cut adds one part at most. */
const LINTEL_LIFTS: Spread = { low: 0, likely: 1, high: 1 }
/** Real layer time over length by speed: corners, starts, travel. Common practice, no source. */
const SLOWED: Spread = { low: 1.2, likely: 1.4, high: 1.7 }
/** Share of the open time a crew really prints: small stops, short lifts. Common practice, no source. */
const USED: Spread = { low: 0.9, likely: 0.75, high: 0.6 }

type Pick = keyof Spread

const spread = (of: (pick: Pick) => number): Spread => ({
  low: of('low'),
  likely: of('likely'),
  high: of('high'),
})

/**
 * Quantities and days for a bid, as ranges: all that makes a job short together in `low`, all that makes it long in `high`.
 * A drawn plan with its weather says it far better.
 */
export function estimateJob(bid: BidInput): BidEstimate {
  const { floorArea = 0, wallLength = 0 } = bid
  assert(floorArea > 0 || wallLength > 0, 'a bid has a floor or walls')
  assert(
    bid.wallHeight > 0 && bid.layerHeight > 0 && bid.speed > 0 && bid.liftHeight > 0,
    'a bid has sizes above zero',
  )
  const factors = factorsOf(bid)
  const at = (pick: Pick) => outcome(bid, factors.at(pick))
  const of = (key: keyof Outcome) => spread(pick => at(pick)[key])
  return {
    wallLength: factors.spreads.wallLength,
    wallFace: of('wallFace'),
    beadLength: of('beadLength'),
    volume: of('volume'),
    sections: of('sections'),
    lifts: of('lifts'),
    printHours: of('printHours'),
    printDays: of('printDays'),
    siteHours: of('siteHours'),
    workDays: of('workDays'),
    drivers: driversOf(bid, factors.spreads),
    assumes: assumptions(bid),
  }
}

function factorsOf(bid: BidInput): {
  readonly spreads: Readonly<Record<BidFactor, Spread>>
  readonly at: (pick: Pick) => Factors
} {
  const { openHours, openings, wallLength, floorArea } = bid
  const spreads = {
    wallLength: spread(pick => wallLength ?? (floorArea ?? 0) * WALL_PER_FLOOR[pick]),
    openings: openings === undefined ? OPENINGS : spread(() => openings),
    lintelLifts: bid.hasLintels ? LINTEL_LIFTS : spread(() => 0),
    slowed: SLOWED,
    used: USED,
    // Short days make a long job: the open hours' low belongs to the high of the days.
    openHours: { low: openHours.high, likely: openHours.likely, high: openHours.low },
    lostShare: bid.lostShare,
  }
  return { spreads, at: pick => picked(spreads, () => pick) }
}

function picked(spreads: Readonly<Record<BidFactor, Spread>>, pickOf: (factor: BidFactor) => Pick): Factors {
  const value = (factor: BidFactor) => spreads[factor][pickOf(factor)]
  return {
    wallLength: value('wallLength'),
    openings: value('openings'),
    lintelLifts: value('lintelLifts'),
    slowed: value('slowed'),
    used: value('used'),
    openHours: value('openHours'),
    lostShare: value('lostShare'),
  }
}

interface Outcome {
  readonly wallFace: number
  readonly beadLength: number
  readonly volume: number
  readonly sections: number
  readonly lifts: number
  readonly printHours: number
  readonly printDays: number
  readonly siteHours: number
  readonly workDays: number
}

/** The bid as if every factor were known. */
function outcome(bid: BidInput, factors: Factors): Outcome {
  const layers = Math.ceil(bid.wallHeight / bid.layerHeight - 1e-9)
  const layerLength = factors.wallLength * bid.beadPerMetre
  const beadLength = layerLength * layers * (1 - factors.openings)
  const area = (bid.beadWidth - bid.layerHeight) * bid.layerHeight + (Math.PI / 4) * bid.layerHeight ** 2
  const layerTime = (layerLength / bid.speed) * factors.slowed
  const sections = Math.ceil(layerTime / bid.layerTimeMost - 1e-9)
  const liftsEach = Math.ceil(bid.wallHeight / bid.liftHeight - 1e-9) + factors.lintelLifts
  const lifts = sections * liftsEach
  const printHours = ((beadLength / bid.speed) * factors.slowed) / 3600
  const { printDays, busyHours } = daysFor(bid, factors, printHours, lifts, liftsEach)
  return {
    wallFace: factors.wallLength * bid.wallHeight * (1 - factors.openings),
    beadLength,
    volume: beadLength * area,
    sections,
    lifts,
    printHours,
    printDays,
    siteHours: busyHours / factors.used + (printDays * bid.setUpAndWashOut) / 3600,
    workDays: Math.ceil(printDays / (1 - factors.lostShare)),
  }
}

/** Print time over what a day holds, and no fewer days than a section has lifts. */
function daysFor(
  bid: BidInput,
  { openHours, used }: Factors,
  hours: number,
  lifts: number,
  liftsEach: number,
): { readonly printDays: number; readonly busyHours: number } {
  const shiftHours = (bid.longestShift - bid.setUpAndWashOut) / 3600
  const day = Math.min(openHours, shiftHours) * used
  assert(day > 0, 'a working day of a bid has open hours')
  const bare = Math.ceil(hours / day)
  const changes = (Math.max(0, lifts - bare) * bid.changeOver) / 3600
  return {
    printDays: Math.max(liftsEach, Math.ceil((hours + changes) / day)),
    busyHours: hours + changes,
  }
}

/** Each factor alone from its best to its worst. */
function driversOf(bid: BidInput, spreads: Readonly<Record<BidFactor, Spread>>): readonly BidDriver[] {
  const days = (what: BidFactor, pick: Pick) =>
    outcome(
      bid,
      picked(spreads, factor => (factor === what ? pick : 'likely')),
    ).workDays
  return (Object.keys(spreads) as BidFactor[])
    .map(what => ({
      what,
      value: spreads[what],
      workDays: { best: days(what, 'low'), worst: days(what, 'high') },
    }))
    .filter(({ value }) => value.low !== value.high)
    .sort((a, b) => swing(b) - swing(a))
}

const swing = ({ workDays }: BidDriver): number => workDays.worst - workDays.best

const wallPerFloor = (units: Units = 'metric'): string => {
  const { low, high } = WALL_PER_FLOOR
  return units === 'metric'
    ? `${low} to ${high} m of wall per m² of floor`
    : `${(low * 0.3048).toFixed(2)} to ${(high * 0.3048).toFixed(2)} ft of wall per ft² of floor`
}

const assumptions = (bid: BidInput): readonly string[] => [
  ...(bid.wallLength === undefined ? [`${wallPerFloor(bid.units)} (common practice, no source)`] : []),
  ...(bid.openings === undefined
    ? ['8 to 22 % of the wall face is openings (common practice, no source)']
    : []),
  ...(bid.hasLintels ? ['lintels, all at one height, cost each section a lift at most (derived)'] : []),
  'layers take 1.2 to 1.7 times length over speed (common practice, no source)',
  'a crew prints 60 to 90 % of the open time (common practice, no source)',
]
