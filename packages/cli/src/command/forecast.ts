import { existsSync, readFileSync } from 'node:fs'
import { rename, writeFile } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { clockText, localTime } from '@dawnlift/core/clock'
import { parseQuantity } from '@dawnlift/core/quantity'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import { forecastReport } from '@dawnlift/formats/reports'
import {
  type Fetch,
  type Forecast,
  type ForecastFolder,
  forecastService,
  refreshForecast,
} from '@dawnlift/formats/weather'
import type { Command } from 'commander'
import { showProblems } from '../screen/problem-list.js'
import type { CommandContext } from './command-context.js'
import { jobFile, readJob } from './job-input.js'

interface ForecastOptions {
  readonly service: string
  readonly olderThan: string
  readonly days: string
  readonly offline?: boolean
  readonly json?: boolean
}

/** The only command that asks the network, and only when it is called. */
export function addForecast(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('forecast')
    .argument('<job>', 'a job folder whose job.yaml names a file under weather: forecast:')
    .option('--service <url>', 'an hourly forecast service of the same shape', forecastService)
    .option('--older-than <time>', 'ask again when the kept forecast is older', '1 h')
    .option('--days <number>', 'days ahead to ask for', '10')
    .option('--offline', 'ask nobody: only say what is kept, and its age')
    .option('--json', 'one JSON document on standard output')
    .description(
      'Fetches the hourly forecast for the site into the job folder; the next plan reads it there.',
    )
    .action(async (job: string, options: ForecastOptions) => {
      const wishes = readWishes(options)
      const opened = await readJob(job, screen)
      const file = opened.ok ? namedFile(opened.value.weather.forecast) : opened
      if (!wishes.ok || !opened.ok || !file.ok) {
        const problems = [wishes, file].flatMap(each => (each.ok ? [] : each.problems))
        showProblems(screen, problems, options.json === true)
        return finish(2)
      }
      const { site } = opened.value.job
      const forecast = await refreshForecast({
        site,
        file: file.value,
        folder: folderOf(dirname(jobFile(job, screen))),
        now: Date.now() / 1000,
        ...(options.offline ? {} : { fetch: patientFetch }),
        ...wishes.value,
      })
      if (!forecast.ok) {
        showProblems(screen, forecast.problems, options.json === true)
        return finish(2)
      }
      if (options.json) screen.out(JSON.stringify(forecastReport(file.value, forecast.value), null, 2))
      else screen.out(inWords(file.value, forecast.value, site.timeZone))
    })
}

interface Wishes {
  readonly service: string
  readonly freshFor: number
  readonly days: number
}

function readWishes({ service, olderThan, days }: ForecastOptions): Result<Wishes> {
  const problems: Problem[] = []
  const fresh = parseQuantity(olderThan, 'time')
  if (!fresh.ok || fresh.value < 0)
    problems.push({
      code: 'cli/amount',
      at: '--older-than',
      say: fresh.ok ? `“${olderThan}” is before now; write a time such as “3 h”.` : fresh.problems[0]!.say,
    })
  const ahead = Number(days)
  if (!Number.isInteger(ahead) || ahead < 1 || ahead > 16)
    problems.push({ code: 'cli/days', at: '--days', say: `“${days}” is no whole number from 1 to 16.` })
  if (!URL.canParse(service) || !/^https?:$/.test(new URL(service).protocol))
    problems.push({
      code: 'cli/service',
      at: '--service',
      say: `“${service}” is no web address; it begins with https:// or http://.`,
    })
  return problems.length === 0 && fresh.ok
    ? success({ service, freshFor: fresh.value, days: ahead })
    : failure(problems)
}

const namedFile = (file: string | undefined): Result<string> =>
  file === undefined
    ? failure([
        {
          code: 'forecast/not-named',
          at: 'weather.forecast',
          say: 'The job names no forecast; write “forecast: forecast.json” under “weather:” in job.yaml, then ask again.',
        },
      ])
    : success(file)

const folderOf = (folder: string): ForecastFolder => ({
  read: async name => {
    const path = join(folder, name)
    return existsSync(path) ? readFileSync(path, 'utf8') : undefined
  },
  write: (name, content) => writeFile(join(folder, name), content),
  rename: (from, to) => rename(join(folder, from), join(folder, to)),
})

/** A site's network is slow or not there: half a minute, then what is kept has to do. */
const patientFetch: Fetch = url => fetch(url, { signal: AbortSignal.timeout(30_000) })

function inWords(file: string, forecast: Forecast, zone: string): string {
  const moment = (at: number) => `${localTime(at, zone).date} ${clockText(at, zone)}`
  const [first, last] = [forecast.hours[0], forecast.hours.at(-1)]
  return [
    `${forecast.say} ${forecast.hours.length} hours${first && last ? `, ${moment(first.start)} to ${moment(last.start + 3600)}` : ''}, in ${file}.`,
    ...forecast.assumed.map(({ what, hours, source }) => `  assumed for ${hours} h  ${what} (${source})`),
    ...forecast.warnings.map(({ at, say }) => `  ${at}: ${say}`),
    'A forecast is a guess that ages: what it does not reach is planned by the weather the job has without it.',
  ].join('\n')
}
