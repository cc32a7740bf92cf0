import type { Point } from '@dawnlift/core/geometry'
import type { Wall } from '@dawnlift/core/job'
import { editJob, newJobText, parseJob, rawJob } from '@dawnlift/document/job'
import { describe, expect, it } from 'vitest'
import { movedBy, shiftEdits, shiftedTo, takeWall } from './shift.js'

const path = (...points: Point[]) => points.map(point => point.map(each => `${each} m`))
const made = editJob(newJobText('Shed'), [
  { kind: 'set', path: ['walls', 0, 'path'], value: path([0, 0], [8, 0]) },
  { kind: 'set', path: ['walls', 1], value: { id: 'W2', type: 'outer', path: path([3, 0], [3, 5]) } },
  { kind: 'set', path: ['walls', 2], value: { id: 'W3', type: 'outer', path: path([12, 1], [12, 6]) } },
  { kind: 'set', path: ['openings', 1, 'at'], value: '6 m' },
])
if (!made.ok) throw new Error(made.problems[0]?.say)
const text = made.value
const read = (from: string) => {
  const parsed = parseJob(from)
  if (!parsed.ok) throw new Error(parsed.problems.map(each => each.say).join('; '))
  return parsed.value.job
}
const raw = rawJob(text)
if (!raw.ok) throw new Error('the job is a block of keys')
const draft = read(text)
const held = takeWall(draft, { kind: 'wall', id: 'W1' })!
const by = { reach: 0.1, step: 0.01 }
const points = (walls: readonly Wall[], id: string) => walls.find(each => each.id === id)?.centreline.points

describe('a whole wall in the hand', () => {
  it('goes straight across where it nearly does', () =>
    expect(shiftedTo(draft, held, [0.04, -1.203], by).by).toEqual([0, -1.2]))
  it('falls onto the end of another wall', () => {
    // hand: W1 ends at (8, 0); the start of W3 is at (12, 1).
    const { by: moved, to } = shiftedTo(draft, held, [4.03, 0.98], by)
    expect([moved, to]).toEqual([[4, 1], 'start of W3'])
  })
  it('stretches the walls that end on it, and keeps what stands in it at its station', () => {
    const down = { ...held, by: [0, -1] as const }
    expect(movedBy(draft, down).map(each => each.wall.id)).toEqual(['W1', 'W2'])
    const edits = editJob(text, shiftEdits(raw.value, draft, down))
    const after = read(edits.ok ? edits.value : '')
    expect(points(after.walls, 'W1')).toEqual([
      [0, -1],
      [8, -1],
    ])
    expect(points(after.walls, 'W2')).toEqual([
      [3, -1],
      [3, 5],
    ])
    expect(after.openings.map(each => each.at)).toEqual(draft.openings.map(each => each.at))
  })
  it('gets an entry of its own, and so does each wall it stretches, where all come from a drawing', () => {
    const drawn = editJob(text, [{ kind: 'remove', path: ['walls'] }])
    const bare = rawJob(drawn.ok ? drawn.value : '')
    const edits = shiftEdits(bare.ok ? bare.value : {}, draft, { ...held, by: [0, -1] })
    const written = editJob(drawn.ok ? drawn.value : '', edits)
    const after = rawJob(written.ok ? written.value : '')
    expect(after.ok && (after.value.walls as { id: string }[]).map(each => each.id)).toEqual(['W1', 'W2'])
  })
  it('writes nothing when it is set down where it was', () =>
    expect(shiftEdits(raw.value, draft, held)).toEqual([]))
  it('is a wall: what stands in one is carried along it', () =>
    expect(takeWall(draft, { kind: 'opening', id: 'F1' })).toBeUndefined())
})
