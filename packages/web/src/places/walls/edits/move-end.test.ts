import { editJob, newJobText, parseJob, rawJob } from '@dawnlift/document/job'
import { describe, expect, it } from 'vitest'
import { endForLength, movedWallEdits, moveEnd } from './move-end.js'

/** Two walls in an L with a window in the first. */
const base = editJob(newJobText('Shed'), [
  {
    kind: 'set',
    path: ['walls', 0, 'path'],
    value: [
      ['0 m', '0 m'],
      ['6 m', '0 m'],
    ],
  },
  {
    kind: 'set',
    path: ['walls', 1],
    value: {
      id: 'W2',
      type: 'outer',
      path: [
        ['6 m', '0 m'],
        ['6 m', '4 m'],
      ],
    },
  },
  { kind: 'set', path: ['openings', 1, 'at'], value: '4 m' },
])
if (!base.ok) throw new Error(base.problems[0]?.say)
const text = base.value

const read = (from: string) => {
  const parsed = parseJob(from)
  if (!parsed.ok) throw new Error(parsed.problems.map(each => each.say).join('; '))
  return parsed.value.job
}
const raw = rawJob(text)
if (!raw.ok) throw new Error(raw.problems[0]?.say)

describe('moveEnd', () => {
  it('takes the ends that meet it along', () =>
    expect(moveEnd(read(text), 'W1', 'end', [7, 0]).map(each => [each.wall.id, each.path.points])).toEqual([
      [
        'W1',
        [
          [0, 0],
          [7, 0],
        ],
      ],
      [
        'W2',
        [
          [7, 0],
          [6, 4],
        ],
      ],
    ]))
  it('leaves a closed wall alone', () => {
    const closed = parseJob(newJobText('Shed'))
    expect(closed.ok && moveEnd(closed.value.job, 'W1', 'end', [1, 1])).toEqual([])
  })
})

describe('movedWallEdits', () => {
  it('keep what stands in the wall at its place when the wall grows at its start', () => {
    const draft = read(text)
    const after = editJob(text, movedWallEdits(raw.value, draft, moveEnd(draft, 'W1', 'start', [-1.5, 0])))
    const job = read(after.ok ? after.value : '')
    expect(job.walls[0]!.centreline.points[0]).toEqual([-1.5, 0])
    expect(job.openings.map(each => each.at)).toEqual([2.9, 5.5])
    expect(job.embeds[0]!.at).toBeCloseTo(draft.embeds[0]!.at + 1.5, 9)
  })
  it('leave stations as written when the wall grows at its end', () => {
    const draft = read(text)
    const edits = movedWallEdits(raw.value, draft, moveEnd(draft, 'W1', 'end', [6.5, 0]))
    expect(edits.map(each => each.path)).toEqual([
      ['walls', 0, 'path'],
      ['walls', 1, 'path'],
    ])
  })
})

describe('endForLength', () => {
  const path = {
    points: [
      [0, 0],
      [3, 0],
      [3, 2],
    ] as const,
    bulges: [0, 0],
    closed: false,
  }
  it('takes or gives at the last piece', () => {
    expect(endForLength(path, 6)).toEqual([3, 3])
    expect(endForLength(path, 3.5)).toEqual([3, 0.5])
  })
  it('does not fold the wall back or stretch an arc', () => {
    expect(endForLength(path, 3)).toBeUndefined()
    expect(endForLength({ ...path, bulges: [0, 0.3] }, 6)).toBeUndefined()
    expect(endForLength({ points: path.points, bulges: [0, 0, 0], closed: true }, 9)).toBeUndefined()
  })
})
