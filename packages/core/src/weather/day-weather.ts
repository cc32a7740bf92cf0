import { addDays, instantAt } from '../clock/index.js'
import { type CoolingNeed, coolingNeed } from './cooling.js'
import { type CrewHour, crewHeat, type WorkLoad } from './crew-heat.js'
import { type OpenSpan, openSpans } from './crossing.js'
import { CIVIL_DEGREES, type Daylight, daylight } from './daylight.js'
import type { PrintConditions } from './hour-columns.js'
import type { PrintHour } from './site-hour.js'

/** One day of the site as its lead reads it in the morning. */
export interface DayWeather {
  readonly date: string
  readonly hours: readonly PrintHour[]
  /** When one may print, to the minute; clipped to the day. */
  readonly open: readonly OpenSpan[]
  readonly sun: Daylight
  readonly twilight: Daylight
  /** Of the day's hours, one for one. */
  readonly crew: readonly CrewHour[]
  /** What keeps the mix cool enough in the hours that nothing but the mix closes. */
  readonly cooling: CoolingNeed
}

export interface CrewWork {
  readonly load: WorkLoad
  readonly acclimatised: boolean
}

/** Everything one local day's weather says to print, mix and crew. Screening for the crew: local rules and a heat plan govern. */
export function dayWeather(
  job: PrintConditions & { readonly units?: 'metric' | 'imperial' },
  hours: readonly PrintHour[],
  date: string,
  work: CrewWork = { load: 'moderate', acclimatised: true },
): DayWeather {
  const { timeZone } = job.site
  const [from, until] = [instantAt(date, 0, timeZone), instantAt(addDays(date, 1), 0, timeZone)]
  // An hour of a clock half an hour off may begin the day before.
  const today = hours.filter(({ start }) => start + 3600 > from && start < until)
  const near = hours.filter(({ start }) => start >= from - 86400 && start < until + 86400)
  const open = openSpans(near).flatMap(span => {
    const clipped = { from: Math.max(span.from, from), until: Math.min(span.until, until) }
    if (clipped.until <= clipped.from) return []
    return span.endedBy && span.until <= until ? [{ ...clipped, endedBy: span.endedBy }] : [clipped]
  })
  return {
    date,
    hours: today,
    open,
    sun: daylight(job.site, date),
    twilight: daylight(job.site, date, CIVIL_DEGREES),
    crew: today.map(({ wbgt, weather }) =>
      crewHeat({ wbgt, air: weather.air, wind: weather.wind }, work.load, work.acclimatised, job.units),
    ),
    cooling: coolingNeed(job, today.filter(isWorthCooling)),
  }
}

/** Open, or closed by a mix too hot alone. */
const isWorthCooling = ({ limits }: PrintHour): boolean =>
  limits.every(({ kind, demand, capacity }) => demand <= capacity || kind === 'mix-hot')
