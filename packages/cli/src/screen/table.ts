/** Columns wide enough for what they hold; numbers right, words left. With a width, the last column goes on below itself. */
export function textTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
  width?: number,
): string {
  const all =
    width === undefined ? [head, ...rows] : [head, ...rows.flatMap(row => wrapped(row, head, rows, width))]
  const widths = head.map((_, column) => Math.max(...all.map(row => [...(row[column] ?? '')].length)))
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) =>
        right.includes(column) ? pad(cell, widths[column]!, true) : pad(cell, widths[column]!, false),
      )
      .join('  ')
      .trimEnd()
  return [line(head), widths.map(width => '─'.repeat(width)).join('  '), ...all.slice(1).map(line)].join('\n')
}

function pad(cell: string, width: number, right: boolean): string {
  const space = ' '.repeat(Math.max(0, width - [...cell].length))
  return right ? space + cell : cell + space
}

/** Least room that the last column gets, however narrow the screen [letters]. */
const leastRoom = 28

/** A row as several, the words of its last cell broken at the edge of the screen. */
function wrapped(
  row: readonly string[],
  head: readonly string[],
  rows: readonly (readonly string[])[],
  width: number,
): readonly (readonly string[])[] {
  const before = head
    .slice(0, -1)
    .reduce(
      (sum, name, column) =>
        sum + 2 + Math.max(...[name, ...rows.map(each => each[column] ?? '')].map(cell => [...cell].length)),
      0,
    )
  const room = Math.max(leastRoom, width - before)
  const lines: string[] = ['']
  for (const word of (row.at(-1) ?? '').split(' ')) {
    const last = lines.at(-1)!
    if (last !== '' && [...last].length + 1 + [...word].length > room) lines.push(word)
    else lines[lines.length - 1] = last === '' ? word : `${last} ${word}`
  }
  const blank = head.slice(0, -1).map(() => '')
  return lines.map((text, i) => [...(i === 0 ? row.slice(0, -1) : blank), text])
}
