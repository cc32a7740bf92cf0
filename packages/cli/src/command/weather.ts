import { clockText, localTime } from '@dawnlift/core/clock'
import type { Job } from '@dawnlift/core/job'
import { isBeyond, type Limit, marginOf, sayLimit, sayQuantity } from '@dawnlift/core/limit'
import { formatQuantity } from '@dawnlift/core/quantity'
import { failure, type Result, success } from '@dawnlift/core/result'
import {
  type DayWeather,
  dayWeather,
  type PrintHour,
  printHours,
  type WorkLoad,
} from '@dawnlift/core/weather'
import { weatherReport } from '@dawnlift/formats/reports'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import { textTable } from '../screen/table.js'
import type { CommandContext } from './command-context.js'
import { readJob } from './job-input.js'

interface WeatherOptions {
  readonly day?: string
  readonly load: string
  readonly newcomers?: boolean
  readonly json?: boolean
}

const loads = ['light', 'moderate', 'heavy', 'very-heavy'] as const satisfies readonly WorkLoad[]

export function addWeather(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('weather')
    .argument('<job>', 'a job folder')
    .option('--day <date>', 'a day such as 2026-07-14; the first of the job where not given')
    .option('--load <words>', `work of the crew: ${loads.join(', ')}`, 'moderate')
    .option('--newcomers', 'a crew not yet used to the heat')
    .option('--json', 'one JSON document on standard output')
    .description('One day hour by hour: whether one may print and why not, the mix, the sun, the crew.')
    .action(async (path: string, options: WeatherOptions) => {
      const opened = await readJob(path, screen)
      const load = loads.find(each => each === options.load)
      const day = opened.ok ? dayIn(opened.value, options.day ?? opened.value.job.calendar.firstDay) : opened
      if (!opened.ok || !day.ok || !load) {
        const say = `“${options.load}” is no work load; write ${loads.join(', ')}.`
        const unknown = load ? [] : [{ code: 'cli/load', at: '--load', say }]
        showProblems(screen, [...(day.ok ? [] : day.problems), ...unknown], options.json === true)
        return finish(2)
      }
      const { job, weatherNotes } = opened.value
      const told = dayWeather(job, day.value.hours, day.value.date, {
        load,
        acclimatised: options.newcomers !== true,
      })
      if (options.json) screen.out(JSON.stringify(weatherReport(told, weatherNotes), null, 2))
      else {
        screen.out(inWords(job, told))
        for (const { at, say } of weatherNotes) screen.out(`  ${at}: ${say}`)
      }
    })
}

/** The verdicts of a day and those about it; a day without weather is a mistake of the asker. */
function dayIn(
  { job, hours }: { readonly job: Job; readonly hours: Parameters<typeof printHours>[1] },
  date: string,
): Result<{ readonly date: string; readonly hours: readonly PrintHour[] }> {
  const zone = job.site.timeZone
  const days = hours.map(({ start }) => localTime(start, zone).date)
  if (days.includes(date)) return success({ date, hours: printHours(job, hours) })
  const say = `There is no weather for “${date}”; it is known from ${days[0] ?? 'no day'} to ${days.at(-1) ?? 'no day'}.`
  return failure([{ code: 'weather/no-day', at: '--day', say }])
}

function inWords(job: Job, day: DayWeather): string {
  const zone = job.site.timeZone
  const clock = (at: number) => clockText(at, zone)
  const said = (value: number, unit: string) => sayQuantity(value, unit, job.units)
  const open = day.open.map(
    ({ from, until, endedBy }) =>
      `${clock(from)} to ${clock(until)}${endedBy ? ` (${sayLimit(endedBy, job.units, zone)})` : ''}`,
  )
  const rows = day.hours.map((hour, index) => {
    const { air, humidity, wind, gust, rain, source } = hour.weather
    const crew = day.crew[index]!
    const over = hour.limits.filter(isBeyond)
    return [
      clock(hour.start),
      said(air, '°C'),
      `${(humidity * 100).toFixed(0)} %`,
      said(wind, 'm/s'),
      said(gust, 'm/s'),
      rain > 0 ? said(rain, 'mm/h') : '–',
      said(hour.mixTemperature, '°C'),
      hour.waterNeeded === undefined ? '–' : said(hour.waterNeeded, '°C'),
      said(hour.evaporation, 'kg/m²h'),
      said(hour.wbgt, '°C'),
      `${crew.workMinutesPerHour}+${crew.restMinutesPerHour}`,
      source,
      over.length === 0 ? tightest(hour, job) : over.map(limit => reason(limit, job)).join('; '),
    ]
  })
  const head = [
    '',
    'air',
    'damp',
    'wind',
    'gust',
    'rain',
    'mix',
    'water ≤',
    'drying',
    'WBGT',
    'work+rest',
    'from',
    'verdict',
  ]
  return [
    `${job.name}, ${day.date}: ${open.length > 0 ? `open ${open.join(', ')}` : 'no time to print'}`,
    `sun ${sunWords(day.sun, clock)}; light enough to work ${sunWords(day.twilight, clock)}`,
    coolingWords(job, day, clock),
    ...cautions(day),
    '',
    textTable(head, rows, [1, 2, 3, 4, 5, 6, 7, 8, 9, 10]),
    '',
    'Water ≤: mixing water at which the mix just meets its limit. Screening values; local codes, the permit and a heat plan govern.',
  ].join('\n')
}

/** The limit with the least room in an open hour, as a share of what is allowed. */
function tightest(hour: PrintHour, job: Job): string {
  const share = ({ demand, capacity }: Limit) =>
    (capacity - demand) / Math.max(1e-9, Math.abs(capacity), Math.abs(demand))
  const nearest = hour.limits.filter(({ unit }) => unit !== '').sort((a, b) => share(a) - share(b))[0]
  return nearest
    ? `open; nearest: ${sayLimit(nearest, job.units, job.site.timeZone)}, ${room(nearest, job)} left`
    : 'open'
}

/** `mix passes 32 °C at 10:04, 0.2 K over (the job)` */
function reason(limit: Limit, job: Job): string {
  const far = limit.unit === '' ? '' : `, ${room(limit, job)} over`
  return `${sayLimit(limit, job.units, job.site.timeZone)}${far} (${bare(limit.source)})`
}

/** Sources of defaults come with brackets, others without. */
const bare = (source: string): string => source.replace(/^\[(.*)\]$/, '$1')

/** How far a limit is from being passed, or is passed. */
function room(limit: Limit, { units }: Job): string {
  const margin = Math.abs(marginOf(limit))
  if (limit.unit === '°C') return formatQuantity(margin, 'temperatureDifference', units, { step: 0.1 })
  return sayQuantity(margin, limit.unit, units)
}

const sunWords = (light: DayWeather['sun'], clock: (at: number) => string): string =>
  light.kind === 'polar-day'
    ? 'all day'
    : light.kind === 'polar-night'
      ? 'never'
      : `${light.rise === undefined ? '–' : clock(light.rise)} to ${light.set === undefined ? '–' : clock(light.set)}`

function coolingWords(job: Job, { cooling }: DayWeather, clock: (at: number) => string): string {
  const { chillerPower, icePerHour, unmetFrom, waterFlow } = cooling
  const most = sayQuantity(job.rules.mixTemperatureMost.value, '°C', job.units)
  if (chillerPower === 0 && icePerHour === 0)
    return `tap water keeps the mix within ${most} in every hour that nothing else closes`
  const metric = job.units === 'metric'
  const flow = metric
    ? `${(waterFlow * 3600).toFixed(0)} kg/h`
    : `${(waterFlow * 3600 * 0.264172).toFixed(0)} gal/h`
  const ice = metric ? `${icePerHour.toFixed(0)} kg/h` : `${(icePerHour * 2.204623).toFixed(0)} lb/h`
  const power = metric
    ? `${(chillerPower / 1000).toFixed(1)} kW`
    : `${(chillerPower * 0.00341214).toFixed(1)} thousand BTU/h`
  return [
    `for a mix of ${most} in every hour that nothing else closes: a chiller of ${power} on ${flow} of mixing water`,
    icePerHour > 0 ? `what the job has leaves ${ice} of ice to add` : '',
    unmetFrom === undefined
      ? 'the job’s own cooling reaches it'
      : `from ${clock(unmetFrom)} the job’s own cooling no longer reaches it`,
  ]
    .filter(Boolean)
    .join('; ')
}

/** Each caution of the crew once, with its hours' worst. */
function cautions({ crew }: DayWeather): readonly string[] {
  const worst = crew
    .filter(({ caution }) => caution)
    .sort((a, b) => b.wbgt - a.wbgt || a.windChill - b.windChill)[0]
  return worst?.caution ? [`crew at worst: ${worst.caution.say} (${worst.caution.source})`] : []
}
