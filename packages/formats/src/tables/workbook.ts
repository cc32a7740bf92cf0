import writeExcelFile from 'write-excel-file/node'
import type { Table, TableValue } from './table.js'

/** All tables as the pages of one workbook, headings in bold and kept in sight. */
export async function writeWorkbook(tables: readonly Table[]): Promise<Uint8Array> {
  const pages = tables.map(table => ({
    sheet: table.name.replaceAll(/[\\/?*[\]:]/g, ' ').slice(0, 31),
    data: [
      table.heads.map(head => ({ value: head, fontWeight: 'bold' as const })),
      ...table.rows.map(row => row.map(cell)),
    ],
    stickyRowsCount: 1,
    columns: table.heads.map((head, index) => ({
      width: Math.min(
        60,
        Math.max(head.length, ...table.rows.map(row => String(row[index] ?? '').length)) + 2,
      ),
    })),
  }))
  return writeExcelFile(pages).toBuffer()
}

const cell = (value: TableValue) =>
  typeof value === 'number' ? { value, type: Number } : { value, type: String }
