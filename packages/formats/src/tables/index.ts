export { csvField, writeCsv } from './csv.js'
export { callsTable, costsTable, daysTable, liftsTable, planTables } from './plan-tables.js'
export type { Table, TableValue } from './table.js'
export { writeWorkbook } from './workbook.js'
