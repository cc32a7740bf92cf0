import type { Metres, MetresPerSecond, Seconds, SquareMetres } from '../quantity/index.js'
import { assert } from '../result/index.js'

/** A figure for a bid: not below `low`, not above `high`, as far as the inputs go. */
export interface Spread {
  readonly low: number
  readonly likely: number
  readonly high: number
}

/** What is known before anybody has drawn a bead. */
export interface BidInput {
  readonly floorArea: SquareMetres
  /** Measured on the plan if there is one; else taken from the floor area. */
  readonly wallLength?: Metres
  readonly wallHeight: Metres
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
  readonly beadLength: Spread
  /** m³ of mix in the walls. */
  readonly volume: Spread
  readonly sections: Spread
  readonly lifts: Spread
  readonly printHours: Spread
  readonly printDays: Spread
  /** Working days with those lost to weather. */
  readonly workDays: Spread
  readonly assumes: readonly string[]
}

/** Wall metres per m² of floor of a one-storey house: common practice, no source. */
const WALL_PER_FLOOR: Spread = { low: 0.35, likely: 0.45, high: 0.6 }
/** Share of the wall face taken by openings: common practice, no source. */
const OPENINGS: Spread = { low: 0.22, likely: 0.15, high: 0.08 }
/** Real layer time over length by speed: corners, starts, travel. Common practice, no source. */
const SLOWED: Spread = { low: 1.2, likely: 1.4, high: 1.7 }
/** Share of the open time a crew really prints: small stops, short lifts. Common practice, no source. */
const USED: Spread = { low: 0.9, likely: 0.75, high: 0.6 }

const spread = (of: (pick: keyof Spread) => number): Spread => ({
  low: of('low'),
  likely: of('likely'),
  high: of('high'),
})

/**
 * Quantities and days for a bid, as ranges: all that makes a job short together in `low`, all that makes it long in `high`.
 * A drawn plan with its weather says it far better.
 */
export function estimateJob(bid: BidInput): BidEstimate {
  assert(
    bid.floorArea > 0 && bid.layerHeight > 0 && bid.speed > 0 && bid.liftHeight > 0,
    'a bid has sizes above zero',
  )
  const layers = Math.ceil(bid.wallHeight / bid.layerHeight - 1e-9)
  const wallLength = spread(pick => bid.wallLength ?? bid.floorArea * WALL_PER_FLOOR[pick])
  const layerLength = spread(pick => wallLength[pick] * bid.beadPerMetre)
  const beadLength = spread(pick => layerLength[pick] * layers * (1 - OPENINGS[pick]))
  const area = (bid.beadWidth - bid.layerHeight) * bid.layerHeight + (Math.PI / 4) * bid.layerHeight ** 2
  const layerTime = spread(pick => (layerLength[pick] / bid.speed) * SLOWED[pick])
  const sections = spread(pick => Math.ceil(layerTime[pick] / bid.layerTimeMost - 1e-9))
  const liftsEach = Math.ceil(bid.wallHeight / bid.liftHeight - 1e-9)
  const lifts = spread(pick => sections[pick] * liftsEach)
  const printHours = spread(pick => ((beadLength[pick] / bid.speed) * SLOWED[pick]) / 3600)
  const printDays = spread(pick => daysFor(bid, printHours[pick], lifts[pick], liftsEach, pick))
  const workDays = spread(pick => Math.ceil(printDays[pick] / (1 - bid.lostShare[pick])))
  return {
    wallLength,
    beadLength,
    volume: spread(pick => beadLength[pick] * area),
    sections,
    lifts,
    printHours,
    printDays,
    workDays,
    assumes: [
      ...(bid.wallLength === undefined
        ? ['0.35 to 0.6 m of wall per m² of floor (common practice, no source)']
        : []),
      '8 to 22 % of the wall face is openings (common practice, no source)',
      'layers take 1.2 to 1.7 times length over speed (common practice, no source)',
      'a crew prints 60 to 90 % of the open time (common practice, no source)',
    ],
  }
}

/** Print time over what a day holds, and no fewer days than a section has lifts. */
function daysFor(bid: BidInput, hours: number, lifts: number, liftsEach: number, pick: keyof Spread): number {
  // Short days make a long job: the open hours' low belongs to the high of the days.
  const opposite = { low: 'high', likely: 'likely', high: 'low' } as const
  const shiftHours = (bid.longestShift - bid.setUpAndWashOut) / 3600
  const day = Math.min(bid.openHours[opposite[pick]], shiftHours) * USED[pick]
  const bare = Math.ceil(hours / day)
  const changes = (Math.max(0, lifts - bare) * bid.changeOver) / 3600
  return Math.max(liftsEach, Math.ceil((hours + changes) / day))
}
