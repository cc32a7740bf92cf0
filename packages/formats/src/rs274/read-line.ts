import type { Problem } from '@dawnlift/core/result'

export interface Word {
  readonly letter: string
  readonly value: number
}

/** One line of a machine file taken apart, nothing yet done. */
export interface ReadLine {
  readonly line: number
  /** Begins with `/`: skipped when the operator says so. */
  readonly deletable: boolean
  readonly words: readonly Word[]
  /** Only the last comment of a line counts (3.3.4). */
  readonly comment: string | undefined
}

/** Collects problems with their line. */
export type Report = (code: string, line: number, say: string, values?: Problem['values']) => void

/** NISTIR 6556, 3.3: at most 256 characters. */
const longestLine = 256

/** Larger than any machine: a number beyond it is damage [file units]. */
const largest = 1e9

/**
 * A line of RS-274: optional `/`, optional N, then words and comments in any order (3.3). Blanks inside words and
 * the case of letters mean nothing.
 */
export function readLine(text: string, line: number, report: Report): ReadLine {
  if (text.length > longestLine)
    report(
      'rs274/line-too-long',
      line,
      `The line has ${text.length} characters; ${longestLine} are allowed. Break it in two.`,
    )
  const { code, comment } = withoutComments(text, line, report)
  const deletable = code.startsWith('/')
  return { line, deletable, words: readWords(deletable ? code.slice(1) : code, line, report), comment }
}

function withoutComments(text: string, line: number, report: Report) {
  if (!text.includes('(') && !text.includes(')')) return { code: tidy(text), comment: undefined }
  let comment: string | undefined
  let code = ''
  for (let i = 0; i < text.length; i++) {
    if (text[i] === ')') report('rs274/comment', line, 'A ")" stands without its "(". Remove it.')
    else if (text[i] !== '(') code += text[i]
    else {
      const end = text.indexOf(')', i)
      const inner = text.slice(i + 1, end < 0 ? undefined : end)
      if (end < 0) report('rs274/comment', line, 'A comment is not closed on its line. Add the ")".')
      else if (inner.includes('('))
        report('rs274/comment', line, 'A comment stands inside a comment. Use other brackets.')
      comment = inner
      i = end < 0 ? text.length : end
    }
  }
  return { code: tidy(code), comment }
}

const tidy = (code: string): string => code.replace(/[ \t\r]+/g, '').toUpperCase()

const wordPattern = /([A-Z])([+-]?(?:\d+\.?\d*|\.\d+))/y

function readWords(code: string, line: number, report: Report): Word[] {
  const words: Word[] = []
  wordPattern.lastIndex = 0
  while (wordPattern.lastIndex < code.length) {
    const at = wordPattern.lastIndex
    const match = wordPattern.exec(code)
    if (!match) {
      reportRest(code.slice(at), line, report)
      return words
    }
    const value = Number(match[2])
    if (match[1] === 'N') checkLineNumber(match[2]!, at, line, report)
    else if (Math.abs(value) > largest)
      report(
        'rs274/number',
        line,
        `${match[1]}${match[2]!.slice(0, 20)}… is larger than any machine. Correct it.`,
      )
    else words.push({ letter: match[1]!, value })
  }
  return words
}

/** N: no sign, at most five digits, first on the line (3.3.1). */
function checkLineNumber(text: string, at: number, line: number, report: Report): void {
  if (!/^\d{1,5}$/.test(text))
    report('rs274/line-number', line, `N${text.slice(0, 20)}: a line number has one to five digits.`)
  if (at > 0)
    report('rs274/line-number', line, 'N stands behind other words; it has to be first on the line.')
}

function reportRest(rest: string, line: number, report: Report): void {
  const shown = rest.slice(0, 20)
  if (/^(?:[A-Z]?[#[]|#)/.test(rest))
    report(
      'rs274/parameter',
      line,
      `"${shown}": parameters and expressions are not read here. Write the numbers out.`,
    )
  else if (rest.startsWith(';'))
    report('rs274/character', line, 'A ";" begins no comment in RS-274. Put comments into ( ).')
  else if (/^[A-Z]/.test(rest))
    report('rs274/number', line, `"${shown}": the letter ${rest[0]} is followed by no number.`)
  else report('rs274/character', line, `"${shown}" is neither a letter nor part of a number.`)
}
