import type { Finding, Problem } from '@dawnlift/core/result'
import type { Screen } from './terminal.js'

/** All problems at once, each with where, what and what to do. */
export function showProblems(screen: Screen, problems: readonly Problem[], json: boolean): void {
  if (json) screen.out(JSON.stringify({ problems }, null, 2))
  else {
    screen.err(problems.length === 1 ? '1 problem:' : `${problems.length} problems:`)
    for (const { at, say, code } of problems) screen.err(`  ${at}\n    ${say}  [${code}]`)
  }
}

const marks: Readonly<Record<Finding['verdict'], string>> = {
  pass: 'ok',
  warn: 'look',
  fail: 'FAIL',
  'outside-range': 'outside range',
}

export function showFindings(screen: Screen, findings: readonly Finding[]): void {
  for (const finding of findings)
    screen.out(`  ${marks[finding.verdict]}  ${finding.at}: ${finding.say}  (${finding.source})`)
}
