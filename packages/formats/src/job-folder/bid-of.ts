import type { BidCostInput, BidInput, Spread } from '@dawnlift/core/campaign'
import { addDays, localTime, weekday } from '@dawnlift/core/clock'
import { pathLength } from '@dawnlift/core/geometry'
import type { Job } from '@dawnlift/core/job'
import { hoseVolume } from '@dawnlift/core/tally'
import { beadLengthPerMetre } from '@dawnlift/core/wall'
import { type HourColumns, hourColumns } from '@dawnlift/core/weather'
import { doubtSeed } from './campaign-doubt.js'
import type { OpenedJob } from './open-job.js'
import { weatherYears } from './weather-years.js'

/** What a bid is told; all the rest is as in a job like it. */
export interface BidGiven {
  readonly floorArea?: number
  readonly wallLength?: number
  readonly openings?: number
  readonly wallHeight: number
  readonly embeds: number
  readonly lintels: number
  /** m³ */
  readonly poured: number
}

export interface Bid {
  readonly input: BidInput
  readonly cost: BidCostInput
  /** Where the open hours come from, in words. */
  readonly weather: string
  /** First and last day of the season looked at. */
  readonly season: readonly [string, string]
}

/** Courses of weather and days of each that tell how long days are open. */
const COURSES = 12
const SEASON = 60
/** A day with less open time than this is lost [h]: nobody sets up for it. Common practice, no source. */
const WORTH_A_DAY = 2

/** A bid for walls to be printed as a job like it is: its machine, mix, rules, crew, rates and climate. */
export function bidOf(
  opened: OpenedJob,
  read: (name: string) => Uint8Array | undefined,
  given: BidGiven,
): Bid {
  const { job } = opened
  const met = weatherYears(opened, read, COURSES, doubtSeed)
  const seasons = Array.from({ length: met.count }, (_, index) =>
    seasonOf(job, hourColumns(job, met.yearAt(index, SEASON).hours)),
  )
  const { floorArea, wallLength, openings, wallHeight, embeds, lintels, poured } = given
  const { print, rules, crew, mix, batching, costs, calendar } = job
  return {
    input: {
      ...(floorArea === undefined ? {} : { floorArea }),
      ...(wallLength === undefined ? {} : { wallLength }),
      ...(openings === undefined ? {} : { openings }),
      hasLintels: lintels > 0,
      wallHeight,
      units: job.units,
      layerHeight: print.layerHeight,
      beadWidth: print.beadWidth,
      beadPerMetre: meanBeadPerMetre(job),
      speed: print.speed,
      liftHeight: rules.liftHeight.value,
      setUpAndWashOut: crew.setUp + crew.washOut,
      changeOver: crew.changeOver,
      longestShift: crew.longestShift,
      openHours: rising(seasons.map(season => season.openHours)),
      lostShare: rising(seasons.map(season => season.lostShare)),
      layerTimeMost: rules.layerTimeMost.value,
    },
    cost: {
      costs,
      crewSize: crew.size,
      density: mix.density,
      waterRatio: mix.waterRatio,
      hoseVolume: hoseVolume(batching.hoseDiameter, batching.hoseLength),
      embeds,
      lintels,
      poured,
      ...(floorArea === undefined ? {} : { floorArea }),
    },
    weather: met.from,
    season: [calendar.firstDay, addDays(calendar.firstDay, SEASON - 1)],
  }
}

/** Bead of a metre of wall, the job's walls by their length. */
function meanBeadPerMetre({ walls, print }: Job): number {
  const lengths = walls.map(wall => pathLength(wall.centreline))
  const bead = walls.reduce((sum, wall, i) => sum + lengths[i]! * beadLengthPerMetre(wall, print), 0)
  return bead / lengths.reduce((sum, length) => sum + length, 0)
}

interface Season {
  /** Mean open hours of the days that are not lost. */
  readonly openHours: number
  readonly lostShare: number
}

function seasonOf({ crew, site }: Job, { weather, open }: HourColumns): Season {
  const byDay = new Map<string, number>()
  for (let index = 0; index < weather.length; index += 1) {
    const { date, clock } = localTime(weather[index]!.start, site.timeZone)
    if (!crew.workDays.includes(weekday(date)) || crew.daysOff.includes(date)) continue
    const isCrewThere = clock >= crew.dayStart + crew.setUp && clock + 3600 <= crew.dayEnd - crew.washOut
    byDay.set(date, (byDay.get(date) ?? 0) + (open[index] === 1 && isCrewThere ? 1 : 0))
  }
  const days = [...byDay.values()]
  const worked = days.filter(open => open >= WORTH_A_DAY)
  const mean = worked.reduce((sum, open) => sum + open, 0) / Math.max(1, worked.length)
  return { openHours: mean, lostShare: 1 - worked.length / Math.max(1, days.length) }
}

/** The tenth, the middle and the ninth tenth of what the courses give. */
function rising(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b)
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))] ?? 0
  return { low: at(0.1), likely: at(0.5), high: at(0.9) }
}
