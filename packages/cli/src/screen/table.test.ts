import { describe, expect, it } from 'vitest'
import { textTable } from './table.js'

describe('a table on a narrow screen', () => {
  const head = ['lift', 'why']
  const rows = [['A1', 'stops at layer 38 of 50: mix passes 32 °C at 09:40']]

  it('goes on below itself in its last column, and loses no word', () => {
    const lines = textTable(head, rows, [], 40).split('\n')
    expect(lines.every(line => [...line].length <= 40)).toBe(true)
    expect(lines.slice(2).join(' ').replace(/\s+/g, ' ').trim()).toBe(`A1 ${rows[0]![1]}`)
  })

  it('keeps a row on one line where nobody says how wide the screen is', () =>
    expect(textTable(head, rows).split('\n')).toHaveLength(3))
})
