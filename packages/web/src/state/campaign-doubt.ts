import {
  type CampaignRisk,
  countedDraws,
  type MishapRates,
  type ReplayYear,
  replayCampaign,
} from '@dawnlift/core/campaign'
import { uniformFrom } from '@dawnlift/core/numeric'
import { campaignInput, type Plan, sitePhysics } from '@dawnlift/core/plan'
import {
  type ClimateNormals,
  climateOfHours,
  printHours,
  replayNormals,
  replayYears,
  type WeatherHour,
} from '@dawnlift/core/weather'
import { horizonDays, type OpenedJob } from '@dawnlift/formats/job-folder'
import { readWeather } from '@dawnlift/formats/weather'

export interface DoubtWishes {
  /** Courses of weather to meet. */
  readonly replays: number
  readonly rates: MishapRates
}

/** How sure the finish is. Plain data: survives the way out of the worker. */
export interface Doubt extends Omit<CampaignRisk, 'chanceBy'> {
  /** The date planned, and the chance of being up by then with its 95 % interval. */
  readonly planned: string
  readonly chance: { readonly chance: number; readonly between: readonly [number, number] }
  /** What weather was met. */
  readonly weather: string
}

type Year = { readonly label: string; readonly hours: readonly WeatherHour[] }
/** Years on record that stand for themselves; with fewer, weather is drawn from their means. */
const enoughYears = 8
/** Fixed: the same plan has the same doubt, today and tomorrow. */
const seed = 20

/** The standing plan run through many years of weather and mishaps. */
export function doubtOf(
  standing: {
    readonly opened: OpenedJob
    readonly plan: Plan
    readonly read: (name: string) => Uint8Array | undefined
  },
  wishes: DoubtWishes,
  progress: (stage: string, share: number) => void,
): Doubt {
  const { job, sections, bands, routes, campaign } = standing.plan
  const { weather, yearAt, count } = yearsOf(standing, wishes.replays)
  // Made when its turn comes and dropped at the next: sixty seasons of hours do not fit into a tablet.
  let now:
    | { readonly index: number; readonly made: Required<Pick<ReplayYear, 'hours' | 'longestRest'>> }
    | undefined
  const made = (index: number) => {
    if (now?.index !== index) {
      progress('campaign', index / count)
      const hours = printHours(job, yearAt(index).hours)
      // How long a layer may rest is a matter of weather and mix alone; sections would only be weighed in vain.
      now = { index, made: { hours, longestRest: sitePhysics(job, [], [], hours).longestRest } }
    }
    return now.made
  }
  const years = Array.from(
    { length: count },
    (_, index): ReplayYear => ({
      label: String(index + 1),
      get hours() {
        return made(index).hours
      },
      longestRest: at => made(index).longestRest(at),
    }),
  )
  const input = campaignInput(job, sections, bands, routes, campaign.hours)
  const { chanceBy, ...risk } = replayCampaign(input, years, wishes.rates, countedDraws(seed))
  const planned = campaign.days.at(-1)?.date ?? job.calendar.firstDay
  return { ...risk, planned, chance: chanceBy(planned), weather }
}

/** The years on record if there are enough of them; else courses drawn from the climate's means. */
function yearsOf(
  { opened, read }: Parameters<typeof doubtOf>[0],
  replays: number,
): { readonly weather: string; readonly count: number; readonly yearAt: (index: number) => Year } {
  const { site, calendar } = opened.job
  const known = climateOf(opened, read)
  if (known.kind === 'years' && known.years.length >= enoughYears)
    return {
      weather: `${known.years.length} years on record`,
      count: Math.min(replays, known.years.length),
      yearAt: index => known.years[index]!,
    }
  const normals = known.normals
  return {
    weather: `${replays} courses of weather drawn from ${known.from}`,
    count: replays,
    yearAt: index => ({
      label: String(index + 1),
      hours: replayNormals(normals, site, calendar.firstDay, horizonDays, uniformFrom(seed + index)),
    }),
  }
}

type Climate =
  | {
      readonly kind: 'years'
      readonly years: readonly Year[]
      readonly normals: ClimateNormals
      readonly from: string
    }
  | { readonly kind: 'means'; readonly normals: ClimateNormals; readonly from: string }

function climateOf(opened: OpenedJob, read: (name: string) => Uint8Array | undefined): Climate {
  const { weather, job } = opened
  const zone = job.site.timeZone
  if (weather.kind === 'normals')
    return { kind: 'means', normals: weather.normals, from: weather.normals.source }
  const content = weather.format === 'csv' ? undefined : read(weather.file)
  const file = content && readWeather(new TextDecoder().decode(content), weather.file)
  if (!file?.ok)
    return {
      kind: 'means',
      normals: wholeYear(climateOfHours(job.site.name, weather.file, opened.hours, zone), opened.hours, zone),
      from: `the means of ${weather.file}`,
    }
  const { hours, utcOffset } = file.value
  return {
    kind: 'years',
    years: replayYears({ hours, utcOffset }, zone, job.calendar.firstDay, horizonDays).map(year => ({
      label: String(year.year),
      hours: year.hours,
    })),
    normals: wholeYear(climateOfHours(job.site.name, weather.file, hours, zone), hours, zone),
    from: `the means of ${weather.file}`,
  }
}

/**
 * Twelve months from those the hours cover. Months without an hour lie beyond the campaign's reach and take the nearest
 * known one, which only tints the days where the record ends.
 */
function wholeYear(known: ClimateNormals, hours: readonly WeatherHour[], zone: string): ClimateNormals {
  if (known.months.length === 12) return known
  const month = new Intl.DateTimeFormat('en-GB', { month: 'numeric', timeZone: zone })
  const covered = [...new Set(hours.map(hour => Number(month.format(hour.start * 1000)) - 1))].sort(
    (a, b) => a - b,
  )
  const apart = (a: number, b: number) => Math.min((a - b + 12) % 12, (b - a + 12) % 12)
  const months = Array.from({ length: 12 }, (_, wanted) => {
    const nearest = covered.reduce((best, each) => (apart(each, wanted) < apart(best, wanted) ? each : best))
    return known.months[covered.indexOf(nearest)]!
  })
  return { ...known, months }
}
