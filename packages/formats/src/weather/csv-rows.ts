/** One line of a table with its number in the file, counted from 1. */
export interface Row {
  readonly line: number
  readonly cells: readonly string[]
}

/** Rows of comma-, semicolon- or tab-separated text; quotes may hold separators; empty lines fall out. */
export function csvRows(text: string, separator: string): readonly Row[] {
  return text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .flatMap((line, index) =>
      line.trim() === '' ? [] : [{ line: index + 1, cells: cellsOf(line, separator) }],
    )
}

function cellsOf(line: string, separator: string): readonly string[] {
  if (!line.includes('"')) return line.split(separator).map(cell => cell.trim())
  const cells: string[] = []
  let cell = ''
  let quoted = false
  for (let index = 0; index < line.length; index += 1) {
    const letter = line[index]!
    if (letter === '"' && quoted && line[index + 1] === '"') {
      cell += '"'
      index += 1
    } else if (letter === '"') quoted = !quoted
    else if (letter === separator && !quoted) {
      cells.push(cell.trim())
      cell = ''
    } else cell += letter
  }
  return [...cells, cell.trim()]
}

/** The separator a first line uses most. */
export function separatorOf(line: string): string {
  const count = (separator: string) => line.split(separator).length
  return [',', ';', '\t'].reduce((best, next) => (count(next) > count(best) ? next : best))
}

/** A number with point or, where the columns are not separated by it, decimal comma; undefined if it is none. */
export function numberIn(cell: string | undefined, decimalComma = false): number | undefined {
  const text = decimalComma ? cell?.replace(',', '.') : cell
  return text !== undefined && /^[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d+)?$/.test(text) ? Number(text) : undefined
}
