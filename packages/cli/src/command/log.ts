import { appendFileSync, existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { clockText, localTime } from '@dawnlift/core/clock'
import { checkLog } from '@dawnlift/core/log'
import { type Plan, planJob, stageWords } from '@dawnlift/core/plan'
import { assert, failure, type Result, success } from '@dawnlift/core/result'
import { type OpenedJob, openJob } from '@dawnlift/formats/job-folder'
import { logReport } from '@dawnlift/formats/reports'
import { addedLines, logFile, toldFile, writeTold } from '@dawnlift/formats/site-log'
import type { Command } from 'commander'
import { showFindings, showProblems } from '../screen/problem-list.js'
import { progressLine } from '../screen/progress.js'
import { textTable } from '../screen/table.js'
import type { Screen } from '../screen/terminal.js'
import type { CommandContext } from './command-context.js'
import { besideJob, jobFile, readJob } from './job-input.js'
import { type LogWords, logEntry } from './log-entry.js'
import { printDays } from './plan.js'

export function addLog(program: Command, { screen, finish }: CommandContext): void {
  program
    .command('log')
    .argument('<job>', 'a job folder')
    .option('--layer <section:layer>', 'that layer of a section is down, such as A:15')
    .option('--shift', 'the crew began its shift')
    .option('--stop <cause>', 'the nozzle stopped, and why')
    .option('--until <moment>', 'with --stop: when it went on')
    .option('--taken-down <section:layer>', 'part of a section was taken down again, to this layer')
    .option('--note <text>', 'anything else worth keeping')
    .option('--strike <line>', 'strike a wrong line of the log by its number')
    .option('--at <moment>', 'when it was by the site’s clocks, such as "2026-07-06 07:13"')
    .option('--tell', 'keep the days as planned now as those that everybody has been told')
    .option('--json', 'one JSON document on standard output')
    .description('What really stands: add an event, see the rest planned anew and who must be told what.')
    .action(async (job: string, options: LogWords & { tell?: boolean; json?: boolean }) => {
      const logged = await loggedJob(job, options, screen)
      if (!logged.ok) {
        showProblems(screen, logged.problems, options.json === true)
        return finish(2)
      }
      const { plan, file, line } = logged.value
      if (line !== undefined) appendLine(join(dirname(file), logFile), line)
      if (options.tell) keepTold(join(dirname(file), toldFile), plan)
      screen.out(options.json ? JSON.stringify(logReport(plan), null, 2) : logInWords(plan, screen.columns))
      if (options.json) return
      showFindings(
        screen,
        plan.findings.filter(({ check }) => check === 'cold-joint'),
      )
    })
}

interface Logged {
  readonly plan: Plan
  /** The job's own file. */
  readonly file: string
  /** What is to be added to the log. */
  readonly line?: string
}

/** The job planned with its log and the new line: only what holds together is written. */
async function loggedJob(path: string, words: LogWords, screen: Screen): Promise<Result<Logged>> {
  const opened = await readJob(path, screen)
  if (!opened.ok) return opened
  const file = jobFile(path, screen)
  const entry = logEntry(words, opened.value.job.site.timeZone)
  if (!entry.ok) return entry
  const line = entry.value
  const again = line === undefined ? opened : reopened(file, line)
  if (!again.ok) return again
  const plan = await planned(again.value, screen)
  const sections = plan.sections.map(({ id }, i) => ({ section: id, layers: plan.bands[i]?.layers ?? 0 }))
  const { hours } = again.value
  const problems = checkLog(again.value.log?.events ?? [], {
    sections,
    hours,
    timeZone: plan.job.site.timeZone,
  })
  return problems.length > 0
    ? failure(problems)
    : success({ plan, file, ...(line === undefined ? {} : { line }) })
}

/** The same job as if the line stood in its log already. */
function reopened(file: string, line: string): Result<OpenedJob> {
  const beside = besideJob(file)
  const read = (name: string) => {
    if (name !== logFile) return beside(name)
    const known = new TextDecoder().decode(beside(logFile) ?? new Uint8Array())
    return new TextEncoder().encode(`${known}${addedLines(known, [line])}`)
  }
  return openJob({ document: readFileSync(file, 'utf8'), read })
}

async function planned(opened: OpenedJob, screen: Screen): Promise<Plan> {
  const line = progressLine(screen, stageWords)
  const plan = await planJob(opened, { progress: (stage, share) => Promise.resolve(line(stage, share)) })
  assert(plan, 'a plan that nobody cancels is made')
  return plan
}

function appendLine(path: string, line: string): void {
  const known = existsSync(path) ? readFileSync(path, 'utf8') : ''
  // Flushed, so that the line is there when the generator fails in the next second.
  appendFileSync(path, addedLines(known, [line]), { flush: true })
}

function keepTold(path: string, plan: Plan): void {
  writeFileSync(`${path}.part`, writeTold(plan.campaign, plan.soFar?.now ?? plan.campaign.finish), {
    flush: true,
  })
  renameSync(`${path}.part`, path)
}

function logInWords(plan: Plan, columns: number | undefined): string {
  const { soFar, job } = plan
  if (!soFar)
    return [
      `${job.name}: nothing has been logged yet.`,
      'Say what is down: dawnlift log JOB --layer A:15 --at "2026-07-06 07:13"',
    ].join('\n')
  const zone = job.site.timeZone
  const told = soFar.changes.map(({ who, say }) => `  ${who}: ${say}`)
  const lost = soFar.lost.map(
    ({ cause, times, seconds }) =>
      `  ${cause}: ${times === 1 ? 'once' : `${times} times`}, ${Math.round(seconds / 60)} min`,
  )
  return [
    `${job.name}, as of ${momentWords(soFar.now, zone)}, the last event of the log.`,
    standingTable(plan),
    ...(lost.length > 0 ? [`The nozzle stood still for\n${lost.join('\n')}`] : []),
    printDays(plan, columns, soFar.now),
    told.length > 0
      ? `To be told, then kept with --tell:\n${told.join('\n')}`
      : 'Nobody needs to be told anything new.',
  ].join('\n\n')
}

const momentWords = (at: number, zone: string): string => `${localTime(at, zone).date} ${clockText(at, zone)}`

function standingTable({ soFar, sections, bands, job }: Plan): string {
  const rows = sections.map(({ id }, i) => {
    const stands = soFar?.standing.find(one => one.section === id)
    const layers = bands[i]?.layers ?? 0
    const since = stands?.lastEnd === undefined ? '' : momentWords(stands.lastEnd, job.site.timeZone)
    const share = layers === 0 ? 0 : (100 * (stands?.layers ?? 0)) / layers
    return [id, String(stands?.layers ?? 0), String(layers), `${Math.round(share)} %`, since]
  })
  return textTable(['section', 'layers', 'of', 'up', 'last layer down'], rows, [1, 2, 3])
}
