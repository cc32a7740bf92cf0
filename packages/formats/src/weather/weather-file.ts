import type { Problem } from '@dawnlift/core/result'
import type { CompletedHours, WeatherHour } from '@dawnlift/core/weather'

/** The station a weather file speaks of. */
export interface Station {
  readonly name: string
  readonly latitude: number
  readonly longitude: number
  readonly elevation: number
}

/** A weather file, read: its station, its hours and all that had to be assumed or looks wrong. */
export interface WeatherFile {
  readonly station: Station
  /** Seconds that the file's clock is ahead of UTC; 0 where its stamps are UTC. */
  readonly utcOffset: number
  readonly hours: readonly WeatherHour[]
  readonly assumed: CompletedHours['assumed']
  /** Things to look at that do not stop the file from being used: gaps, doubles, impossible values, sun at night. */
  readonly warnings: readonly Problem[]
  /**
   * The year each month was taken from, where a typical year is put together from several. Its hours are then dated in
   * `typicalYear`, in the order of the months.
   */
  readonly yearsOfMonths?: readonly number[]
}

/** The year that the hours of a put-together year are dated in: not a leap year. */
export const typicalYear = 2001
