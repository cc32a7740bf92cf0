import { describe, expect, it } from 'vitest'
import { editJob, newJobText, rawJob } from './index.js'

describe('rawJob', () => {
  const raw = rawJob(newJobText('Shed'))
  it('leaves quantities as they are written', () =>
    expect(raw.ok && (raw.value.print as Record<string, unknown>).layerHeight).toBe('20 mm'))
  it('finds the place an edit goes to', () => {
    const openings = raw.ok ? (raw.value.openings as { id: string }[]) : []
    const index = openings.findIndex(each => each.id === 'F1')
    const after = editJob(newJobText('Shed'), [
      { kind: 'set', path: ['openings', index, 'at'], value: '9 m' },
    ])
    expect(after.ok && after.value).toContain('{ id: F1, wall: W1, kind: window, at: 9 m,')
  })
  it('refuses what is no block of keys, and broken YAML with its line', () => {
    const codes = ['- a', '{ a: ]'].map(text => {
      const read = rawJob(text)
      return read.ok ? [] : read.problems.map(each => each.code.split('/')[0])
    })
    expect(codes[0]).toEqual(['job'])
    expect(codes[1]?.length).toBeGreaterThan(0)
  })
})
