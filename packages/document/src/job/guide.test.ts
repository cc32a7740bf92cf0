import { readFileSync } from 'node:fs'
import { type Dimension, parseClock, parseQuantity, unitTable } from '@dawnlift/core/quantity'
import { describe, expect, it } from 'vitest'
import { parse } from 'yaml'
import { defaultTable, parseJob, readJobFiles } from './index.js'

const guide = (name: string) =>
  readFileSync(new URL(`../../../../docs/guide/${name}`, import.meta.url), 'utf8')
const examples = (name: string) =>
  [...guide(name).matchAll(/```yaml\n([\s\S]*?)```/g)].map(found => found[1] ?? '')

const base = {
  dawnlift: 1,
  name: 'guide',
  site: { name: 'yard', latitude: '41.2°', longitude: '-3.4°', timeZone: 'Europe/Madrid' },
  calendar: { firstDay: '2026-05-04' },
  weather: { file: 'hours.epw' },
  walls: [
    {
      id: 'W1',
      makeUp: 'single',
      height: '1 m',
      path: [
        ['0 m', '0 m'],
        ['6 m', '0 m'],
      ],
    },
  ],
}

describe('the guide', () => {
  it.each(examples('job-document.md').map((text, i) => [i + 1, text] as const))(
    'example %d of the job document reads',
    (_, text) => {
      const read = parseJob(JSON.stringify({ ...base, ...parse(text) }))
      expect(read.ok ? [] : read.problems).toEqual([])
    },
  )
  it('example of the drawing names its layers as they are read', () => {
    const types = { wallTypes: { outer: { makeUp: 'solid', thickness: '200 mm', height: '2 m' } } }
    const files = readJobFiles(
      JSON.stringify({ ...base, ...types, ...parse(examples('drawing.md')[0] ?? '') }),
    )
    expect(files.ok && files.value.drawing).toMatchObject({
      file: 'plan.dxf',
      unit: 'mm',
      joinWithin: 0.005,
      curveWithin: 0.001,
    })
  })
  it('shows only quantities that some dimension or the clock reads', () => {
    const table = guide('job-document.md').split('## Walls')[0] ?? ''
    const cells = table
      .split('\n')
      .filter(line => line.startsWith('| '))
      .flatMap(line => line.split('|').slice(2))
    const shown = cells.flatMap(cell => [...cell.matchAll(/`([^`]+)`/g)].map(found => found[1] ?? ''))
    const dimensions = Object.keys(unitTable) as Dimension[]
    const unread = shown.filter(
      text => !parseClock(text).ok && !dimensions.some(each => parseQuantity(text, each).ok),
    )
    expect([shown.length > 30, unread]).toEqual([true, []])
  })
})

describe('the table of defaults', () => {
  it('gives every default a source and a reason', () =>
    expect(Object.entries(defaultTable).filter(([, row]) => row.source === '' || row.why === '')).toEqual([]))
})
