import type { Opening, Wall } from '@dawnlift/core/job'
import { describe, expect, it } from 'vitest'
import { parseJob } from './index.js'

const text = `dawnlift: 1
name: Wall
site: { name: yard, latitude: 41.2°, longitude: 3.4° W, timeZone: Europe/Madrid }
calendar: { firstDay: 2026-05-04 }
weather: { file: hours.epw }
drawing: { file: plan.dxf, unit: m, layers: {} }
openings:
  - { id: F1, wall: W1, kind: window, width: 1 m, sill: 900 mm, head: 2 m, at: 4 m }
`
const wall: Wall = {
  id: 'W1',
  name: 'W1',
  centreline: {
    points: [
      [0, 0],
      [8, 0],
    ],
    bulges: [0],
    closed: false,
  },
  makeUp: { kind: 'single' },
  thickness: 0.05,
  base: 0,
  top: 2.6,
  joints: [],
}
const drawn = (id: string): Opening => ({
  id,
  wall: 'W1',
  kind: 'window',
  at: 2,
  width: 1,
  sill: 0.9,
  head: 2,
})
const drawing = { walls: [wall], openings: [drawn('F1'), drawn('F2')], embeds: [], columns: [], notes: [] }

describe('a job over its drawing', () => {
  it('puts its own window in the place of the drawn one of that name, and leaves the others', () => {
    const read = parseJob(text, { drawing })
    const openings = read.ok ? read.value.job.openings.map(({ id, at }) => [id, at]) : read.problems
    expect(openings).toEqual([
      ['F1', 4],
      ['F2', 2],
    ])
  })
})
