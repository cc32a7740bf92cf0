import type { Opening, Wall } from '@dawnlift/core/job'
import { describe, expect, it } from 'vitest'
import { parseJob } from './index.js'

const text = (leaveOut: string, more = '') => `dawnlift: 1
name: Wall
site: { name: yard, latitude: 41.2°, longitude: 3.4° W, timeZone: Europe/Madrid }
calendar: { firstDay: 2026-05-04 }
weather: { file: hours.epw }
drawing: { file: plan.dxf, unit: m, leaveOut: ${leaveOut}, layers: {} }
${more}`
const wall = (id: string, y: number): Wall => ({
  id,
  name: id,
  centreline: {
    points: [
      [0, y],
      [8, y],
    ],
    bulges: [0],
    closed: false,
  },
  makeUp: { kind: 'single' },
  thickness: 0.05,
  base: 0,
  top: 2.6,
  joints: [],
})
const window = (id: string, on: string): Opening => ({
  id,
  wall: on,
  kind: 'window',
  at: 2,
  width: 1,
  sill: 0.9,
  head: 2,
})
const drawing = {
  walls: [wall('W1', 0), wall('W2', 4)],
  openings: [window('F1', 'W1'), window('F2', 'W2')],
  embeds: [],
  columns: [],
  notes: [],
}
const parsed = (leaveOut: string, more?: string) => parseJob(text(leaveOut, more), { drawing })
const kept = (leaveOut: string) => {
  const read = parsed(leaveOut)
  return read.ok ? [...read.value.job.walls, ...read.value.job.openings].map(each => each.id) : read.problems
}
const said = (leaveOut: string, more?: string) => {
  const read = parsed(leaveOut, more)
  return read.ok ? [] : read.problems.map(({ code, at, say }) => [code, at, say])
}

describe('what the job leaves out of its drawing', () => {
  it('is not in the job', () => expect(kept('[F1]')).toEqual(['W1', 'W2', 'F2']))
  it('takes along what is drawn in a wall', () => expect(kept('[W1]')).toEqual(['W2', 'F2']))
  it('has to be in the drawing', () =>
    expect(said('[F1, F9]')).toEqual([
      [
        'job/leave-out',
        'job.yaml:6:52 drawing.leaveOut[1]',
        'There is no “F9” in plan.dxf to leave out; did you mean “F1”?',
      ],
    ]))
  it('is named once', () => expect(said('[F1, F1]')[0]?.[2]).toBe('“F1” is left out twice; once is enough.'))
  it('is not given by the job too', () =>
    expect(
      said(
        '[F1]',
        'openings:\n  - { id: F1, wall: W1, kind: window, width: 1 m, sill: 900 mm, head: 2 m, at: 4 m }\n',
      )[0]?.[2],
    ).toBe('“F1” is left out of the drawing and given in the job: take it out of one of the two.'))
  it('leaves an own window in a wall that is gone without its wall', () =>
    expect(
      said(
        '[W1]',
        'openings:\n  - { id: F7, wall: W1, kind: window, width: 1 m, sill: 900 mm, head: 2 m, at: 4 m }\n',
      )[0]?.[0],
    ).toBe('job/unknown-wall'))
})
