import { smallPlan } from '@dawnlift/drawing/examples'
import fc from 'fast-check'
import { unzipSync } from 'fflate'
import { describe, expect, it } from 'vitest'
import { csvField, planTables, writeCsv, writeWorkbook } from './index.js'

/** A reader of RFC 4180 of its own, by the grammar of section 2. */
function readCsv(text: string): string[][] {
  const rows: string[][] = []
  const pattern = /(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n)/gy
  let row: string[] = []
  for (let match = pattern.exec(text); match; match = pattern.exec(text)) {
    row.push(match[1] === undefined ? (match[2] ?? '') : match[1].replaceAll('""', '"'))
    if (match[3] === '\r\n') {
      rows.push(row)
      row = []
    }
  }
  return rows
}

describe('writeCsv', () => {
  it('is read back to the same fields, whatever they hold', () => {
    const letters = fc.constantFrom('a', 'ü', '"', ',', '\r', '\n', ' ', '=', "'", '7')
    // A letter in front, so that nothing is disarmed: that is the next test.
    const value = fc.string({ unit: letters }).map(text => `x${text}`)
    fc.assert(
      fc.property(fc.array(fc.tuple(value, value)), rows => {
        expect(readCsv(writeCsv({ name: 't', heads: ['a', 'b'], rows })).slice(1)).toEqual(rows)
      }),
    )
  })

  it.each(['=1+1', '+cmd', '-2+3', '@sum', '\t=1', ' =1'])('disarms %j', text =>
    expect(readCsv(`${csvField(text)}\r\n`)[0]?.[0]?.startsWith("'")).toBe(true),
  )

  it('keeps negative numbers numbers', () => expect(csvField(-3.5)).toBe('-3.5'))
})

describe('planTables', () => {
  const tables = planTables(smallPlan())

  it('have as many fields in every row as heads', () => {
    for (const table of tables) for (const row of table.rows) expect(row).toHaveLength(table.heads.length)
  })

  it('name a unit or a zone wherever a number or a clock time stands', () => {
    const bare = ['lift', 'section', 'date', 'first layer', 'last layer', 'layer in', 'layer out', 'bags']
    for (const table of tables)
      table.heads.forEach((head, index) => {
        if (table.rows.every(row => typeof row[index] === 'number') && !bare.includes(head))
          expect(head).toMatch(/\(.+\)/)
      })
  })

  it('make a workbook with a page for each', async () => {
    const files = unzipSync(await writeWorkbook(tables))
    const pages = Object.keys(files).filter(name => name.startsWith('xl/worksheets/sheet'))
    expect(pages).toHaveLength(tables.length)
    const book = new TextDecoder().decode(files['xl/workbook.xml'])
    for (const table of tables) expect(book).toContain(`name="${table.name}"`)
  })
})
