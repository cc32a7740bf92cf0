import { momentAt } from '@dawnlift/core/clock'
import type { SiteEvent } from '@dawnlift/core/log'
import { closestName, failure, type Problem, type Result, success } from '@dawnlift/core/result'
import { logFile } from './log-files.js'
import { keysOf, type LogLine, lineSchema } from './log-line.js'

const mostLines = 100_000

interface Numbered {
  readonly number: number
  readonly line: LogLine
}

/**
 * A site log: one JSON object a line, lines only ever added, a wrong one struck by a later one. Empty lines are passed
 * over. Every problem of every line at once.
 */
export function readLog(text: string, zone: string): Result<readonly SiteEvent[]> {
  const raw = text.replace(/^\uFEFF/, '').split(/\r?\n/)
  if (raw.length > mostLines)
    return failure([
      problem(
        mostLines,
        `The log has ${raw.length} lines; ${mostLines} are allowed. Begin a new one and keep the old.`,
      ),
    ])
  const problems: Problem[] = []
  const lines: Numbered[] = []
  raw.forEach((text, index) => {
    if (text.trim() === '') return
    const read = readLine(text, index + 1)
    if (read.ok) lines.push({ number: index + 1, line: read.value })
    else problems.push(...read.problems)
  })
  const struck = strikes(lines, problems)
  const events = lines
    .filter(({ number }) => !struck.has(number))
    .flatMap(each => eventOf(each, zone, problems))
  return problems.length > 0 ? failure(problems) : success(events)
}

const problem = (line: number, say: string): Problem => ({ code: 'log/line', at: `${logFile}:${line}`, say })

/** One line by itself: what it means for others is not looked at. */
export function readLine(text: string, number: number): Result<LogLine> {
  let value: unknown
  try {
    value = JSON.parse(text)
  } catch {
    return failure([
      problem(
        number,
        'This line is no JSON object. It was perhaps cut short when the power went: complete or empty it. A line looks like {"at":"2026-07-06 07:13","what":"layer","section":"A","layer":15}',
      ),
    ])
  }
  const read = lineSchema.safeParse(value)
  return read.success
    ? success(read.data)
    : failure(read.error.issues.flatMap(issue => issueProblems(issue, value, number)))
}

function issueProblems(issue: ZodIssue, value: unknown, number: number): readonly Problem[] {
  if (issue.code !== 'unrecognized_keys') {
    const key = issue.path.join('.')
    return [problem(number, `${key ? `“${key}”` : 'The line'} ${issue.message}.`)]
  }
  const known = keysOf[(value as LogLine).what]
  return issue.keys.map(key => {
    const near = closestName(key, known)
    const hint = near ? `did you mean “${near}”?` : `known in such a line: ${known.join(', ')}.`
    return problem(number, `The key “${key}” is not known here; ${hint}`)
  })
}

type ZodIssue = NonNullable<ReturnType<typeof lineSchema.safeParse>['error']>['issues'][number]

/** Numbers of the lines that others strike, of a log that need not hold together. */
export const struckLines = (lines: readonly string[]): ReadonlySet<number> =>
  new Set(
    lines.flatMap((text, index) => {
      const read = text.includes('"strike"') ? readLine(text, index + 1) : undefined
      return read?.ok && read.value.what === 'strike' && read.value.line <= index ? [read.value.line] : []
    }),
  )

/** Numbers of the lines that later lines strike. */
function strikes(lines: readonly Numbered[], problems: Problem[]): ReadonlySet<number> {
  const struck = new Set<number>()
  for (const { number, line } of lines) {
    if (line.what !== 'strike') continue
    const meant = lines.find(each => each.number === line.line)
    if (line.line >= number || !meant || meant.line.what === 'strike')
      problems.push(
        problem(number, `There is no earlier event in line ${line.line} to strike; name the line of one.`),
      )
    else struck.add(line.line)
  }
  return struck
}

function eventOf({ number, line }: Numbered, zone: string, problems: Problem[]): readonly SiteEvent[] {
  if (line.what === 'strike') return []
  const moment = (text: string): number => {
    const read = momentAt(text, zone)
    if (!read.ok) problems.push(...read.problems.map(({ say }) => problem(number, say)))
    return read.ok ? read.value : 0
  }
  const at = moment(line.at)
  switch (line.what) {
    case 'shift':
      return [{ kind: 'shift', at }]
    case 'layer':
    case 'taken-down':
      return [{ kind: line.what, at, section: line.section, layer: line.layer }]
    case 'stop':
      return [
        {
          kind: 'stop',
          at,
          cause: line.cause,
          ...(line.until === undefined ? {} : { until: moment(line.until) }),
        },
      ]
    case 'note':
      return [{ kind: 'note', at, text: line.text }]
  }
}
