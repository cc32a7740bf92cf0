import { gGroup, letters, mGroup, notFollowed } from './modal-groups.js'
import type { ReadLine, Report, Word } from './read-line.js'

/** The words of a line by what they do. */
export interface Block {
  readonly line: number
  readonly g: readonly number[]
  readonly m: readonly number[]
  /** Every other letter, at most once. */
  readonly values: Readonly<Partial<Record<string, number>>>
  readonly comment: string | undefined
}

/** "Integer" words accept a number this close to one they know (3.3.2). */
const close = 1e-4

/** Rules of one line (3.3.5, table 4): known words, none twice, no two of one group, at most four M words. */
export function checkLine({ line, words, comment }: ReadLine, report: Report): Block {
  const g: number[] = []
  const m: number[] = []
  const values: Partial<Record<string, number>> = {}
  for (const word of words) {
    if (word.letter === 'G') take(word, g, gGroup, line, report)
    else if (word.letter === 'M') take(word, m, mGroup, line, report)
    else if (!letters.includes(word.letter))
      report('rs274/letter', line, `${word.letter} is no word of RS-274. Remove it or use another word.`)
    else if (values[word.letter] !== undefined)
      report('rs274/repeated', line, `${word.letter} stands twice on the line. Keep one.`)
    else values[word.letter] = word.value
  }
  if (m.length > 4) report('rs274/too-many-m', line, `${m.length} M words on one line; four are allowed.`)
  checkSigns(values, line, report)
  return { line, g, m, values, comment }
}

function take(
  { letter, value }: Word,
  taken: number[],
  groups: ReadonlyMap<number, string>,
  line: number,
  report: Report,
): void {
  const tenths = Math.round(value * 10) / 10
  const number = Math.abs(value - tenths) <= close ? tenths : value
  const group = groups.get(number)
  if (group === undefined) {
    report(
      'rs274/unknown-word',
      line,
      `${letter}${value} is no word of RS-274. Remove it or use another word.`,
    )
    return
  }
  if (letter === 'G' && notFollowed.has(number))
    report(
      'rs274/not-followed',
      line,
      `G${number} is for cutting tools and is not followed here. Write the moves out.`,
    )
  const other = taken.find(each => groups.get(each) === group)
  if (other !== undefined)
    report(
      'rs274/same-group',
      line,
      `${letter}${other} and ${letter}${number} exclude each other (${group}). Use two lines.`,
    )
  taken.push(number)
}

function checkSigns(values: Block['values'], line: number, report: Report): void {
  for (const [letter, name] of [
    ['F', 'feed'],
    ['S', 'pump setting'],
    ['T', 'tool number'],
  ] as const)
    if ((values[letter] ?? 0) < 0)
      report('rs274/negative', line, `${letter}${values[letter]}: a ${name} is not negative.`)
}
