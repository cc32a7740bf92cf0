import { assert } from '@dawnlift/core/result'
import type { Table, TableValue } from './table.js'

/** RFC 4180: CRLF, a heading line, quotes where needed. UTF-8 without a mark. */
export const writeCsv = (table: Table): string =>
  [table.heads, ...table.rows]
    .map(row => row.map(csvField).join(','))
    .join('\r\n')
    .concat('\r\n')

/**
 * Text that a spreadsheet would take for a formula gets an apostrophe before it, so that a name typed on site cannot
 * run anything on the office's machine. Numbers stay numbers, negative ones too.
 */
export function csvField(value: TableValue): string {
  if (typeof value === 'number') {
    assert(Number.isFinite(value), 'a table holds finite numbers')
    return String(value)
  }
  const safe = /^[\s]*[=+\-@\t\r|]/.test(value) ? `'${value}` : value
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe
}
