import { describe, expect, it } from 'vitest'
import type { Embed, Opening, Wall } from '../job/index.js'
import { checkWalls } from './check-walls.js'
import { house } from './fixtures/house.js'
import { double, embed, fixture, line, opening, single, solid, wall } from './fixtures/invented.js'
import { plans } from './fixtures/plans.js'
import type { WallParts } from './parts.js'

const codes = (parts: Partial<WallParts>) =>
  checkWalls(fixture('checked', { walls: [wall('w', line([0, 0], [4, 0]))], ...parts }).parts).map(
    ({ code }) => code,
  )
const ofWall = (rest: Partial<Wall>) => codes({ walls: [wall('w', line([0, 0], [4, 0]), rest)] })
const ofOpening = (at: number, width: number, rest: Partial<Opening> = {}) =>
  codes({ openings: [opening('o', 'w', at, width, rest)] })
const ofEmbed = (rest: Partial<Embed>, at = 2) => codes({ embeds: [embed('e', 'w', at, rest)] })

describe('a plan', () => {
  it.each([...plans, house].map(plan => [plan.name, plan] as const))(
    'of ours has no problem: %s',
    (_, { parts }) => expect(checkWalls(parts)).toEqual([]),
  )
  it('with many faults gets all of them at once, with numbers', () => {
    const problems = checkWalls(
      fixture('bad', {
        walls: [wall('w', line([0, 0], [4, 0]), { top: 0 }), wall('w', line([0, 2], [4, 2]))],
        openings: [opening('o', 'w', 0.2, 1, { sill: 2, head: 1 })],
        embeds: [embed('e', 'nowhere', 1)],
      }).parts,
    )
    expect(new Set(problems.map(({ code }) => code))).toEqual(
      new Set([
        'wall/repeated-id',
        'wall/no-height',
        'opening/outside-wall',
        'opening/upside-down',
        'opening/above-wall',
        'wall/unknown',
      ]),
    )
    expect(problems.find(({ code }) => code === 'opening/outside-wall')!.say).toContain('-0.300 m to 0.700 m')
  })
})

describe('a wall', () => {
  it.each([
    ['wall/no-height', { top: 0 }],
    ['wall/no-length', { centreline: line([1, 1], [1, 1]) }],
    ['wall/crosses-itself', { centreline: line([0, 0], [2, 2], [2, 0], [0, 2]) }],
    ['wall/under-two-beads', { thickness: 0.09 }],
    ['wall/no-room-for-tie', { thickness: 0.12 }],
    ['wall/not-one-bead', { makeUp: single, thickness: 0.06 }],
    ['wall/under-one-bead', { makeUp: solid, thickness: 0.04 }],
    ['wall/no-pitch', { makeUp: double('wave', 0) }],
    ['wall/joint-outside', { joints: [5] }],
  ] as const)('is stopped by %s', (code, rest) => expect(ofWall(rest)).toEqual([code]))
  it('too thick for one bead and too thin for two as wide as they are high is told what it takes', () => {
    const thin = [wall('w', line([0, 0], [4, 0]), { makeUp: solid, thickness: 0.06 })]
    const { parts } = fixture('high', { walls: thin })
    // Hand: layers of 35 mm; two beads fill 60 mm at (60 − 7.51)/2 = 26.24 mm, 33.76 mm wide. Circles of 35 mm need 2 × 27.49 + 7.51 = 62.5.
    const [problem] = checkWalls({ ...parts, print: { ...parts.print, layerHeight: 0.035 } })
    expect(problem?.code).toBe('wall/no-fill')
    expect(problem?.say).toContain('2 beads fill it 34 mm wide, but a layer is 35 mm high')
    expect(problem?.say).toContain('make it 62 mm')
    expect(checkWalls({ ...parts, print: { ...parts.print, layerHeight: 0.033 } })).toEqual([])
  })
})

describe('two walls', () => {
  it('may not run inside each other, but may go on end to end or cross', () => {
    const beside = (...points: Parameters<typeof line>) =>
      codes({ walls: [wall('w', line([0, 0], [4, 0])), wall('v', line(...points))] })
    expect(beside([1, 0.1], [3, 0.1])).toEqual(['wall/alongside'])
    expect(beside([1, 0.3], [3, 0.3])).toEqual([])
    expect(beside([4, 0], [6, 0])).toEqual([])
    expect(beside([2, -1], [2, 1])).toEqual([])
  })
})

describe('an opening', () => {
  it.each([
    ['opening/outside-wall', ofOpening(3.8, 1)],
    ['opening/outside-wall', ofOpening(2, 5)],
    ['opening/upside-down', ofOpening(2, 1, { sill: 1, head: 1 })],
    ['opening/above-wall', ofOpening(2, 1, { head: 2.5 })],
    ['opening/below-wall', ofOpening(2, 1, { sill: -0.1 })],
    ['opening/no-width', ofOpening(2, 0)],
  ])('is stopped by %s', (code, found) => expect(found).toEqual([code]))
  it('may not overlap another, lintels counted in', () => {
    const below = opening('a', 'w', 2, 1, { sill: 0.2, head: 0.8 })
    expect(codes({ openings: [below, opening('b', 'w', 2.2, 1, { sill: 1.1, head: 1.8 })] })).toEqual([])
    expect(codes({ openings: [below, opening('b', 'w', 2.2, 1, { sill: 0.9, head: 1.8 })] })).toEqual([
      'opening/overlap',
    ])
  })
  it('leaves a jamb of one bead beside a wall that meets its own', () => {
    const walls = [wall('w', line([0, 0], [4, 0])), wall('v', line([2, 0], [2, 2]))]
    // hand: half the opening 0.5 + half the stem 0.125 + one bead 0.05 = 0.675 from the stem's middle.
    expect(codes({ walls, openings: [opening('o', 'w', 2.674, 1)] })).toEqual(['opening/in-junction'])
    expect(codes({ walls, openings: [opening('o', 'w', 2.676, 1)] })).toEqual([])
  })
  it('leaves that jamb where a slanting wall comes out of the face, too', () => {
    const walls = [wall('w', line([0, 0], [4, 0])), wall('v', line([2, 0], [3.5, 1.5]))]
    // hand: at 45° the stem leaves the face 0.125 on and is 0.125·√2 to each side of that: 2.3018; then 0.5 + 0.05.
    expect(codes({ walls, openings: [opening('o', 'w', 2.851, 1)] })).toEqual(['opening/in-junction'])
    expect(codes({ walls, openings: [opening('o', 'w', 2.852, 1)] })).toEqual([])
    // On its blunt side the stem takes up no more than at the centreline: 2 − 0.1768 − 0.55 = 1.2732.
    expect(codes({ walls, openings: [opening('o', 'w', 1.274, 1)] })).toEqual(['opening/in-junction'])
    expect(codes({ walls, openings: [opening('o', 'w', 1.273, 1)] })).toEqual([])
    const turned = [{ ...walls[0]!, centreline: line([4, 0], [0, 0]) }, walls[1]!]
    expect(codes({ walls: turned, openings: [opening('o', 'w', 4 - 2.851, 1)] })).toEqual([
      'opening/in-junction',
    ])
  })
  it('leaves a jamb of one bead beside a corner of its wall', () => {
    const walls = [wall('w', line([0, 0], [2, 0], [2, 3]))]
    const at = (station: number, width = 1) => codes({ walls, openings: [opening('o', 'w', station, width)] })
    // hand: inner faces meet 0.125 before the right angle at 2 m, and a bead is 0.05: 2 − 0.175 − 0.5.
    expect(at(1.326)).toEqual(['opening/at-corner'])
    expect(at(1.325)).toEqual([])
    expect(at(2.674)).toEqual(['opening/at-corner'])
    expect(at(2.675)).toEqual([])
    // The corner itself may be open, but not end on the inner face: 0.125 on each side of it.
    expect(at(2.3)).toEqual([])
    expect(at(2.376)).toEqual(['opening/at-corner'])
  })
  // A random plan (seed 606): two millimetres of wall between a window and the bend.
  it('leaves that jamb before an arc that goes on at an angle', () => {
    const bent = {
      points: [
        [0, 0],
        [2, 0],
        [3.5422, -1.974],
      ] as const,
      bulges: [0, 0.2],
      closed: false,
    }
    const walls = [wall('w', bent, { makeUp: single, thickness: 0.05 })]
    expect(codes({ walls, openings: [opening('o', 'w', 1.84, 0.316)] })).toEqual(['opening/at-corner'])
    expect(codes({ walls, openings: [opening('o', 'w', 1.77, 0.316)] })).toEqual([])
  })
  // A random plan (seed 1353822458): a stem crosses an arc at a slant and ends inside it, beside a window.
  it('leaves that jamb beside the end of a wall that stops inside its own', () => {
    const arc = {
      points: [
        [0, 0],
        [2.488, 0],
      ] as const,
      bulges: [0.2],
      closed: false,
    }
    const stem = { makeUp: single, thickness: 0.05 }
    const walls = [
      wall('w', arc, { thickness: 0.2 }),
      wall('v', line([2.2965, 0.5262], [1.0951, -0.3466]), stem),
    ]
    const at = (station: number) => codes({ walls, openings: [opening('o', 'w', station, 0.3)] })
    expect(at(1.02)).toEqual(['opening/in-junction'])
    // hand: met at 1.263, 0.134 further to where the stem ends, half a stem at 36°: 0.0425; then 0.15 + 0.05.
    expect(at(0.88)).toEqual([])
  })
})

describe('an embed', () => {
  it.each([
    ['embed/outside-wall', ofEmbed({}, 0.02)],
    ['embed/outside-height', ofEmbed({ bottom: 2.35 })],
    ['embed/deeper-than-wall', ofEmbed({ depth: 0.3 })],
    ['embed/no-size', ofEmbed({ width: 0 })],
  ])('is stopped by %s', (code, found) => expect(found).toEqual([code]))
})

describe('a gap where another wall meets its own', () => {
  it('in the face that wall comes out of does not take its foot away', () => {
    const walls = [wall('w', line([0, 0], [4, 0])), wall('v', line([2, 0], [2, 2]))]
    const at = (station: number, rest: Partial<Embed>) =>
      codes({ walls, embeds: [embed('e', 'w', station, rest)] })
    // hand: half the box 0.05 + half the stem 0.125 = 0.175 from the stem's middle; it comes out on the left.
    expect(at(2.174, {})).toEqual(['embed/in-junction'])
    expect(at(2.176, {})).toEqual([])
    expect(at(2, { face: 'right' })).toEqual([])
    expect(at(2, { face: 'middle' })).toEqual([])
    expect(at(2, { method: 'cut' })).toEqual([])
  })
  it('right through leaves a jamb of one bead', () => {
    const walls = [wall('w', line([0, 0], [4, 0])), wall('v', line([2, 0], [2, 2]))]
    const at = (station: number, face: Embed['face']) =>
      codes({ walls, embeds: [embed('e', 'w', station, { face, kind: 'sleeve', depth: 0.2 })] })
    // hand: half the sleeve 0.05 + half the stem 0.125 + one bead 0.05 = 0.225 from the stem's middle.
    expect(at(2.224, 'through')).toEqual(['embed/in-junction'])
    expect(at(2.226, 'through')).toEqual([])
    expect(at(2, 'right')).toEqual([])
  })
  // Random plans (seeds 404 and 505): a pipe, and a niche, that leave less than a bead of a solid wall of 100 mm beside a stem.
  it('that interrupts its wall for want of a bead behind it leaves that jamb too', () => {
    const walls = [
      wall('w', line([0, 0], [4, 0]), { makeUp: solid, thickness: 0.1 }),
      wall('v', line([2, 0], [2, 2])),
    ]
    const at = (station: number, rest: Partial<Embed>) =>
      codes({ walls, embeds: [embed('e', 'w', station, rest)] })
    // hand: as above, 0.225.
    for (const rest of [{ face: 'middle', depth: 0.04 } as const, { face: 'right', depth: 0.051 } as const]) {
      expect(at(2.224, rest)).toEqual(['embed/in-junction'])
      expect(at(2.226, rest)).toEqual([])
    }
  })
  // Random plans (seeds 202 and 606): a double stem takes the place of a solid wall it meets, with the hole in it.
  it('in the middle of a solid wall is not where another wall has its foot', () => {
    const walls = [
      wall('w', line([0, 0], [4, 0]), { makeUp: solid, thickness: 0.2 }),
      wall('v', line([2, 0], [2, 2])),
    ]
    const at = (station: number) =>
      codes({ walls, embeds: [embed('e', 'w', station, { face: 'middle', depth: 0.06 })] })
    // hand: half the pipe 0.05 + half the stem 0.125.
    expect(at(2.174)).toEqual(['embed/in-junction'])
    expect(at(2.176)).toEqual([])
  })
  // A random plan (seed 303): a niche ends where a single stem begins.
  it('in the face leaves half a bead beside a single wall, which bulges onto it', () => {
    const walls = [
      wall('w', line([0, 0], [4, 0])),
      wall('v', line([2, 0], [2, 2]), { makeUp: single, thickness: 0.05 }),
    ]
    const at = (station: number) => codes({ walls, embeds: [embed('e', 'w', station)] })
    // hand: half the box 0.05, half the stem 0.025, half a bead 0.025.
    expect(at(2.099)).toEqual(['embed/in-junction'])
    expect(at(2.101)).toEqual([])
  })
})

describe('a column', () => {
  const column = { id: 'c', wall: 'w', at: 2, length: 0.3, thickness: 0.25, cover: 0.03 }
  it.each([
    ['column/outside-wall', { columns: [{ ...column, at: 0.1 }] }],
    ['column/thinner-than-wall', { columns: [{ ...column, thickness: 0.2 }] }],
    ['column/no-cavity', { columns: [column], walls: [wall('w', line([0, 0], [4, 0]), { makeUp: solid })] }],
    [
      'column/in-junction',
      // hand: half the column 0.15 + its cross tie 0.05 + half the stem 0.125 = 0.325 from the stem's middle.
      {
        columns: [column],
        walls: [wall('w', line([0, 0], [4, 0])), wall('v', line([2.324, 0], [2.324, 2]))],
      },
    ],
    ['column/in-opening', { columns: [column], openings: [opening('o', 'w', 2.59, 0.8)] }],
  ])('is stopped by %s', (code, parts) => expect(codes(parts)).toEqual([code]))
})
