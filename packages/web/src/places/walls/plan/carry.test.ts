import { editJob, newJobText, parseJob, rawJob } from '@dawnlift/document/job'
import { describe, expect, it } from 'vitest'
import { arrayOf, copyOf } from '../edits/copies.js'
import { freePlace, newColumn, newEmbed, newOpening, newWall } from '../edits/new-parts.js'
import { carriedBy } from '../elevation/use-elevation-hands.js'
import { pinnedFindings, placeOfFinding } from '../findings.js'
import { carriedTo, carriedUp, carryEdits, pickUp, withCarry } from './carry.js'

const text = newJobText('Shed')
const read = (from = text) => {
  const parsed = parseJob(from)
  if (!parsed.ok) throw new Error(parsed.problems.map(each => each.say).join('; '))
  return parsed.value.job
}
const raw = rawJob(text)
if (!raw.ok) throw new Error('the new job is a block of keys')
const draft = read()
const written = (edits: Parameters<typeof editJob>[1]) => {
  const result = editJob(text, edits)
  if (!result.ok) throw new Error(result.problems[0]?.say)
  return result.value
}
const window = { kind: 'opening', id: 'F1' } as const

describe('a window in the hand', () => {
  const carry = pickUp(draft, window)!
  it('moves along in whole centimetres and shows so before it is set down', () => {
    const moved = carriedTo(draft, carry, 10.123, 0)
    expect(withCarry(draft, moved).openings[1]).toEqual({ ...draft.openings[1], at: 10.12 })
    expect(read(written(carryEdits(raw.value, draft, moved))).openings[1]!.at).toBeCloseTo(10.12, 9)
  })
  it('goes up by layers, sill and head together', () => {
    const moved = carriedUp(draft, carry, 1.011)
    const opening = read(written(carryEdits(raw.value, draft, moved))).openings[1]!
    expect([opening.sill, opening.head, moved.to]).toEqual([1.02, 2.22, 'layer 51'])
  })
  it('writes nothing when it is set down where it was', () =>
    expect(carryEdits(raw.value, draft, carry)).toEqual([]))
  it('does not leave the top of the wall', () => expect(carriedUp(draft, carry, 5).low).toBeCloseTo(1.4, 9))
})

describe('a door in the hand', () => {
  it('stays on the slab', () => {
    const carry = pickUp(draft, { kind: 'opening', id: 'D1' })!
    expect(carriedUp(draft, carry, 0.5).low).toBe(0)
  })
})

describe('new parts', () => {
  const accepted = ({ edits }: { readonly edits: Parameters<typeof editJob>[1] }) => read(written(edits))
  it('stand where nothing else stands', () => {
    const added = newOpening(raw.value, draft, 'W1', 'window')
    const job = accepted(added)
    expect(job.openings.map(each => each.id)).toEqual(['D1', 'F1', 'F2'])
    expect(job.openings[2]!.lintel).toBeDefined()
    expect(accepted(newEmbed(raw.value, draft, 'W1')).embeds[1]!.id).toBe('E2')
  })
  it('are copied beside or mirrored about the middle of the wall', () => {
    const beside = accepted(copyOf(raw.value, draft, window, 'beside')!).openings[2]!
    // hand: F1 is 1.2 m wide at 10.8 m; the nearest place with a bead of 50 mm between is 1.25 m on.
    expect(Math.abs(beside.at - 10.8)).toBeCloseTo(1.25, 4)
    const mirrored = accepted(copyOf(raw.value, draft, { kind: 'embed', id: 'E1' }, 'mirrored')!).embeds[1]!
    expect(mirrored.at).toBeCloseTo(16.8 - 2.6, 9)
  })
  it('are set in a row, each with a name of its own', () => {
    const box = { kind: 'embed', id: 'E1' } as const
    const row = accepted(arrayOf(raw.value, draft, box, { times: 3, every: 0.4 })!).embeds
    expect(row.map(each => each.id)).toEqual(['E1', 'E2', 'E3', 'E4'])
    // hand: E1 stands at 2.6 m.
    expect(row.map(each => each.at.toFixed(3))).toEqual(['2.600', '3.000', '3.400', '3.800'])
  })
  it('of a wall are copied with what stands in it', () => {
    const job = accepted(copyOf(raw.value, draft, { kind: 'wall', id: 'W1' }, 'beside')!)
    expect(job.walls.map(each => each.id)).toEqual(['W1', 'W2'])
    expect(job.openings.filter(each => each.wall === 'W2').map(each => each.at)).toEqual(
      draft.openings.map(each => each.at),
    )
    expect(job.walls[1]!.centreline.points[0]).not.toEqual(job.walls[0]!.centreline.points[0])
  })
  it('turn their faces in a mirror', () => {
    const job = accepted(copyOf(raw.value, draft, { kind: 'wall', id: 'W1' }, 'mirrored')!)
    const [before, after] = job.embeds.map(each => each.face)
    expect([before, after].sort()).toEqual(['left', 'right'])
  })
  it('can be a column, as thick as its wall', () => {
    const column = accepted(newColumn(raw.value, draft, 'W1')!).columns[0]!
    expect([column.id, column.thickness]).toEqual(['C1', draft.walls[0]!.thickness])
  })
  it('find the place nearest to where they are wanted', () => {
    // hand: between the door, which ends at 1.9 m, and the box at 2.6 m, a bead of 50 mm from each.
    expect(freePlace(draft, 'W1', 0.1, 2.5)).toBeCloseTo(2.465, 9)
  })
  it('keep clear of walls that meet theirs', () => {
    const wall = {
      ...draft.walls[0]!,
      centreline: {
        points: [
          [0, 0],
          [6, 0],
        ] as const,
        bulges: [0],
        closed: false,
      },
    }
    const cross = {
      ...wall,
      id: 'W2',
      centreline: {
        ...wall.centreline,
        points: [
          [3, 0],
          [3, 4],
        ] as const,
      },
    }
    const bare = { ...draft, walls: [wall, cross], openings: [], embeds: [] }
    // hand: the wall that meets it at 3 m is 250 mm thick, and a bead of 50 mm stays on each side.
    const at = freePlace(bare, 'W1', 1.2, 3)
    expect(Math.abs(at - 3)).toBeCloseTo(0.125 + 0.05 + 0.6, 6)
  })
  it('are walls of the kind they are drawn beside', () => {
    const added = newWall(
      raw.value,
      draft,
      {
        points: [
          [0, 5],
          [3, 5],
          [4, 6],
        ],
        bulges: [0, 0.4],
      },
      'W1',
    )
    const wall = accepted(added).walls[1]!
    expect([wall.id, wall.thickness, wall.centreline.bulges]).toEqual(['W2', 0.25, [0, 0.4]])
    expect(written(added.edits)).toContain('type: outer, path: [ [ 0 mm, 5 m ]')
  })
})

describe('findings', () => {
  const finding = {
    check: 'x',
    at: 'B/F1',
    demand: 1,
    capacity: 0,
    unit: 'm',
    source: 'the job',
    verdict: 'warn',
    say: 'a',
  } as const
  it('lead to the part they name, or to the wall nearest to their point', () => {
    expect(placeOfFinding(draft, finding)).toEqual({ kind: 'opening', id: 'F1' })
    expect(placeOfFinding(draft, { at: 'B/B.2.w1', point: [2, 0.1] })).toEqual({ kind: 'wall', id: 'W1' })
    expect(placeOfFinding(draft, { at: 'B' })).toBeUndefined()
  })
  it('are told once, failures first', () => {
    const pins = pinnedFindings(draft, [
      finding,
      finding,
      { ...finding, verdict: 'fail', say: 'b' },
      { ...finding, verdict: 'pass' },
    ])
    expect(pins.map(each => [each.number, each.finding.say])).toEqual([
      [1, 'b'],
      [2, 'a'],
    ])
  })
})

describe('a window pulled on its wall', () => {
  const held = pickUp(draft, window)!
  it('keeps its height under a pull along, and its station under a pull up', () => {
    expect(carriedBy(draft, held, [0.5, 0.03])).toMatchObject({ at: 11.3, low: 0.9 })
    expect(carriedBy(draft, held, [0.02, 0.2])).toMatchObject({ at: 10.8, low: 1.1 })
  })
})
