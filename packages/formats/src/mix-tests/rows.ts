/** One line of a table with its number in the file, counted from 1. */
export interface Row {
  readonly line: number
  readonly cells: readonly string[]
}

/**
 * Rows of a test sheet as spreadsheets save it: comma, semicolon or tab between cells (whichever the first line uses
 * most), quotes round cells that hold one, a byte order mark, empty lines and lines that start with `#` left out.
 */
export function sheetRows(text: string): readonly Row[] {
  const lines = text
    .replace(/^\uFEFF/, '')
    .split(/\r\n|\n|\r/)
    .map((content, index) => ({ content, line: index + 1 }))
    .filter(({ content }) => content.trim() !== '' && !content.trimStart().startsWith('#'))
  const separator = separatorOf(lines[0]?.content ?? '')
  return lines.map(({ content, line }) => ({ line, cells: cellsOf(content, separator) }))
}

function separatorOf(line: string): string {
  const count = (mark: string) => line.split(mark).length
  return [',', ';', '\t'].reduce((best, mark) => (count(mark) > count(best) ? mark : best))
}

/** A quoted cell may hold the separator and doubled quotes; everything between separators otherwise. */
function cellsOf(line: string, separator: string): string[] {
  const cells: string[] = []
  let [cell, quoted] = ['', false]
  for (let i = 0; i < line.length; i++) {
    const mark = line[i]!
    if (mark === '"' && quoted && line[i + 1] === '"') cell += line[i++]
    else if (mark === '"') quoted = !quoted
    else if (mark === separator && !quoted) {
      cells.push(cell.trim())
      cell = ''
    } else cell += mark
  }
  return [...cells, cell.trim()]
}
