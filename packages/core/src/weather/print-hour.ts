import type { PermittedHours } from '../job/index.js'
import { isBeyond, type Limit } from '../limit/index.js'
import { crossingBetween } from './crossing.js'
import { type HourColumns, hourColumns, lightOf, type PrintConditions } from './hour-columns.js'
import { hourLimits, permittedLimit } from './hour-limits.js'
import type { PrintHour, WeatherHour } from './site-hour.js'

/**
 * What each hour means for printing, with every limit and its margin.
 *
 * A limit's demand is what the hour brings, its capacity what the rule allows at most; for a rule from below (cold mix, cold air,
 * daylight) the demand is what the rule asks for and the capacity what the hour brings, so that `isBeyond` serves all.
 * `mix-hot` and `open` are for the job's own tap water; with a chiller or ice on the job, `mixTemperatureChilled` says what the
 * coldest mix would be, and evaporation counts them at work as far as the limit asks.
 *
 * The dry material has the temperature of a silo in the sun (`siloTemperatures`), or, where the job names a silo gain, lies so far above
 * the mean air of the last 24 hours. The crew's day and its days off are
 * the scheduler's matter, not the hour's; `permitted` is what the neighbourhood or the permit allows, the site's own unless told.
 */
export function printHours(
  conditions: PrintConditions,
  hours: readonly WeatherHour[],
  permitted: PermittedHours | undefined = conditions.site.permittedHours,
): readonly PrintHour[] {
  const columns = hourColumns(conditions, hours, permitted)
  const hourAt = undatedHours(columns)
  const all: PrintHour[] = new Array(hours.length)
  for (let index = 0; index < hours.length; index += 1) {
    const hour = hourAt(index)
    all[index] = hour.open || index === 0 ? hour : withMoments(all[index - 1]!, hour)
  }
  return all
}

/** One hour of the columns as an object with its limits, the same as `printHours` makes it. */
export function printHourAt(columns: HourColumns, index: number): PrintHour {
  const hourAt = undatedHours(columns)
  const hour = hourAt(index)
  return hour.open || index === 0 ? hour : withMoments(hourAt(index - 1), hour)
}

/** The limits that close an hour. */
export const closedBy = (hour: PrintHour): readonly Limit[] => hour.limits.filter(isBeyond)

/** Hours without the moments at which limits are passed: those need the hour before. */
function undatedHours(columns: HourColumns): (index: number) => PrintHour {
  const { weather, tap, chilled, waterNeeded, evaporation, wbgt, sineOfSun, open } = columns
  const limitsOf = limitsAt(columns)
  return index => {
    const hour = {
      start: weather[index]!.start,
      weather: weather[index]!,
      mixTemperature: tap[index]!,
      waterNeeded: waterNeeded[index]!,
      evaporation: evaporation[index]!,
      wbgt: wbgt[index]!,
      sunAltitude: Math.asin(sineOfSun[index]!),
      limits: limitsOf(index),
      open: open[index] === 1,
    }
    return chilled ? { ...hour, mixTemperatureChilled: chilled[index]! } : hour
  }
}

function limitsAt(columns: HourColumns): (index: number) => readonly Limit[] {
  const { weather, rules, permitted, permittedMinutes, tap, evaporation, wbgt, sineOfSun } = columns
  const limits = hourLimits(rules)
  return index => {
    const values = {
      tap: tap[index]!,
      evaporation: evaporation[index]!,
      wbgt: wbgt[index]!,
      light: lightOf(sineOfSun[index]!),
    }
    const own = limits(weather[index]!, values)
    if (permitted && permittedMinutes) own.push(permittedLimit(permittedMinutes[index]!, permitted.source))
    return own
  }
}

/** A limit that held in the hour before is given the moment it was passed. */
function withMoments(before: PrintHour, hour: PrintHour): PrintHour {
  let dated: Limit[] | undefined
  for (let index = 0; index < hour.limits.length; index += 1) {
    const [limit, was] = [hour.limits[index]!, before.limits[index]]
    if (!was || !isBeyond(limit) || isBeyond(was)) continue
    const at = crossingBetween(before, hour, limit.kind)
    if (at === undefined) continue
    dated ??= [...hour.limits]
    dated[index] = { ...limit, at }
  }
  return dated ? { ...hour, limits: dated } : hour
}
