/** Columns wide enough for what they hold; numbers right, words left. */
export function textTable(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): string {
  const all = [head, ...rows]
  const widths = head.map((_, column) => Math.max(...all.map(row => [...(row[column] ?? '')].length)))
  const line = (row: readonly string[]) =>
    row
      .map((cell, column) =>
        right.includes(column) ? pad(cell, widths[column]!, true) : pad(cell, widths[column]!, false),
      )
      .join('  ')
      .trimEnd()
  return [line(head), widths.map(width => '─'.repeat(width)).join('  '), ...rows.map(line)].join('\n')
}

function pad(cell: string, width: number, right: boolean): string {
  const space = ' '.repeat(Math.max(0, width - [...cell].length))
  return right ? space + cell : cell + space
}
