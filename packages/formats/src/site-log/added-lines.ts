import { readLine, struckLines } from './read-log.js'

/**
 * What has to be added to the end of a log for it to hold these lines. A line that stands there already and is not struck
 * is not written again, so that whoever got no answer may send the same lines once more.
 */
export function addedLines(known: string, lines: readonly string[]): string {
  const standing = known.split(/\r?\n/)
  const struck = struckLines(standing)
  const has = (line: string) => standing.some((each, index) => each === line && !struck.has(index + 1))
  const fresh = lines.filter((line, index) => !has(line) && lines.indexOf(line) === index)
  // With an end of line before it: a log cut short must not swallow the next event.
  const ended = known === '' || known.endsWith('\n') ? '' : '\n'
  return fresh.length === 0 ? '' : `${ended}${fresh.join('\n')}\n`
}

/** Whether a text is one line of a log, whatever the log it is to be added to says. */
export const isLogLine = (text: string): boolean => !/[\r\n]/.test(text) && readLine(text, 1).ok
