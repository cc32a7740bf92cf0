import type { Instant, Seconds } from '../quantity/index.js'
import type { Ground } from './ground.js'
import { nextUsable, usableUntil } from './hour-table.js'
import type { WorkDay } from './work-day.js'

/** A stretch of hours in which one may print, from … until. */
export type Stretch = readonly [Instant, Instant]

/** When the crew is ready on a day, the open stretches from then on, and how long it may stay between set-up and wash-out. */
export interface DayFrame {
  readonly ready: Instant
  readonly runs: readonly Stretch[]
  readonly span: Seconds
}

export const dayFrames = (ground: Ground): readonly DayFrame[] =>
  ground.days.map(day => dayFrame(ground, day))

function dayFrame(ground: Ground, day: WorkDay): DayFrame {
  const { setUp, washOut, longestShift } = ground.input.crew
  const span = longestShift - setUp - washOut
  const ready = day.opens + setUp
  return day.off || span <= 0
    ? { ready, runs: [], span: 0 }
    : { ready, runs: openRuns(ground, ready, day.closes - washOut), span }
}

function openRuns(ground: Ground, earliest: number, latest: number): readonly Stretch[] {
  const runs: Stretch[] = []
  for (let at = nextUsable(ground.table, earliest, latest); at !== undefined; ) {
    const until = Math.min(latest, usableUntil(ground.table, at))
    runs.push([at, until])
    at = nextUsable(ground.table, until, latest)
  }
  return runs
}
