import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Path, type Point, pathLength } from '../geometry/index.js'
import type { Opening, Wall } from '../job/index.js'
import { compareScores, connectedParts, scorePartition } from './partition.js'
import { changed, changesAt, hopeless } from './partition-change.js'
import { bestOfAll, bestOfMany } from './partition-search.js'
import { proposeSections } from './propose-sections.js'
import type { SectionGraph } from './section-graph.js'
import type { SectionJob } from './section-job.js'

const line = (...points: readonly Point[]): Path => ({
  points,
  bulges: new Array(points.length - 1).fill(0),
  closed: false,
})

const wall = (id: string, centreline: Path, joints: readonly number[] = []): Wall => ({
  id,
  name: id,
  centreline,
  makeUp: { kind: 'single' },
  thickness: 0.05,
  base: 0,
  top: 2.6,
  joints,
})

const opening = (id: string, onWall: string, at: number, head = 2.1, width = 1): Opening => ({
  id,
  wall: onWall,
  kind: 'door',
  at,
  width,
  sill: 0,
  head,
})

/** Speed 0.1 m/s: a metre takes 10 s. */
const job = (
  walls: readonly Wall[],
  openings: readonly Opening[],
  layerTimeMost: number,
  change: Partial<SectionJob> = {},
): SectionJob => ({
  walls,
  openings,
  print: { beadWidth: 0.05, layerHeight: 0.02, cornerRadius: 0.03, overhang: 0.2, speed: 0.1 },
  rules: { layerTimeMost: { value: layerTimeMost, source: 'the job' } } as SectionJob['rules'],
  sections: [],
  noCutAt: [],
  ...change,
})

/** A 10 × 6 m room of four walls with a door in each long side. */
const room = [
  wall('S', line([0, 0], [10, 0])),
  wall('E', line([10, 0], [10, 6])),
  wall('N', line([10, 6], [0, 6])),
  wall('W', line([0, 6], [0, 0])),
]
const doors = [opening('D1', 'S', 5), opening('D2', 'N', 5)]

/** Metres of each wall by section, and whether any metre is claimed twice or not at all. */
function coverage(
  walls: readonly Wall[],
  sections: ReturnType<typeof proposeSections>['sections'],
): readonly string[] {
  return walls.flatMap(one => {
    const own = sections
      .flatMap(section => section.stretches)
      .filter(stretch => stretch.wall === one.id)
      .sort((a, b) => a.from - b.from)
    const ends = [0, ...own.flatMap(stretch => [stretch.from, stretch.to]), pathLength(one.centreline)]
    const faults: string[] = []
    for (let i = 0; i < ends.length; i += 2) {
      if (Math.abs(ends[i]! - ends[i + 1]!) > 1e-5) faults.push(`${one.id} at ${ends[i]} ≠ ${ends[i + 1]}`)
    }
    return faults
  })
}

describe('proposeSections', () => {
  it('leaves a plan whole that can be printed within the layer time', () => {
    const { sections } = proposeSections(job(room, doors, 400))
    expect(sections.map(section => section.id)).toEqual(['A'])
    expect(sections[0]?.joints).toEqual([])
  })
  // Hand: 32 m take 320 s. With 200 s the room needs two joints; cut at one jamb of each door the halves are
  // 4.5 + 6 + 4.5 or 5.5 …: jambs on the same side give 15 m and 17 m, on opposite sides 16 m and 16 m.
  // Each then takes 160 s, two starts of 8 s, and one more on the 2.1 of 2.6 m its door is open: 6.5 s.
  it('halves a room at opposite jambs of its two doors', () => {
    const { sections, proposals } = proposeSections(job(room, doors, 200))
    expect(sections.map(section => section.id)).toEqual(['A', 'B'])
    expect(proposals[0]?.layerTimes.map(time => Math.round(time))).toEqual([182, 182])
    expect(proposals[0]?.isProven).toBe(true)
    expect(sections[0]?.joints.map(joint => joint.ref).sort()).toEqual(['D1', 'D2'])
  })
  it('cuts an opening as high as the wall in its middle', () => {
    const tall = [opening('D1', 'S', 5, 2.6), opening('D2', 'N', 5, 2.6)]
    const { sections } = proposeSections(job(room, tall, 200))
    expect(sections[0]?.joints.map(joint => joint.at)).toEqual([5, 5])
  })
  it('keeps its hands off an opening where the lead forbids a cut', () => {
    const { sections, findings } = proposeSections(job(room, doors, 200, { noCutAt: ['D2'] }))
    expect(sections.flatMap(section => section.joints).every(joint => joint.ref !== 'D2')).toBe(true)
    expect(findings.map(finding => finding.check)).toContain('section/layer-time')
  })
  it('cuts where the lead insists', () => {
    const pinned = [
      { wall: 'S', at: 2 },
      { wall: 'N', at: 7 },
    ]
    const { sections } = proposeSections(job(room, doors, 400), { pinned })
    expect(sections[0]?.joints.map(joint => joint.at).sort()).toEqual([2, 7])
  })
  it('offers divisions with one and two sections more', () => {
    const { proposals } = proposeSections(job(room, [...doors, opening('D3', 'E', 3)], 400))
    expect(proposals.map(proposal => proposal.sections.length)).toEqual([1, 2, 3])
  })
  // A ring with two doors falls into two sections; the third could only be what hangs over a door.
  it('makes no section of the head of a door alone', () => {
    const { proposals } = proposeSections(job(room, doors, 400))
    expect(proposals.map(proposal => proposal.sections.length)).toEqual([1, 2])
    expect(proposals.map(({ score }) => score.empty)).toEqual([0, 0])
  })
  it('parts a stem from the wall it meets, unless that is not allowed', () => {
    const tee = [wall('M', line([0, 0], [12, 0])), wall('T', line([6, 0], [6, 12]))]
    const apart = proposeSections(job(tee, [], 150))
    expect(apart.sections[0]?.joints).toMatchObject([{ kind: 'tee', wall: 'T', at: 0, ref: 'M' }])
    expect(proposeSections(job(tee, [], 150), { teesAllowed: false }).sections).toHaveLength(1)
  })
})

describe('sections set by hand', () => {
  const west = {
    id: 'West',
    stretches: [
      { wall: 'S', from: 0, to: 4.5 },
      { wall: 'W', from: 0, to: 6 },
      { wall: 'N', from: 4.5, to: 10 },
    ],
  }
  const east = {
    id: 'East',
    stretches: [
      { wall: 'S', from: 4.5, to: 10 },
      { wall: 'E', from: 0, to: 6 },
      { wall: 'N', from: 0, to: 4.5 },
    ],
  }
  it('are honoured, with their joints named', () => {
    const { sections, problems } = proposeSections(job(room, doors, 400, { sections: [west, east] }))
    expect(problems).toEqual([])
    expect(sections.map(section => section.id)).toEqual(['West', 'East'])
    expect(sections[0]?.joints.map(joint => `${joint.kind} ${joint.ref} ${joint.at}`).sort()).toEqual([
      'opening D1 4.5',
      'opening D2 4.5',
    ])
  })
  it('tell all their gaps, overlaps and wrong walls at once', () => {
    const broken = {
      id: 'East',
      stretches: [
        { wall: 'S', from: 4, to: 9 },
        { wall: 'E', from: 0, to: 7 },
        { wall: 'Q', from: 0, to: 1 },
      ],
    }
    const { problems, sections } = proposeSections(job(room, doors, 400, { sections: [west, broken] }))
    expect(problems.map(problem => problem.code).sort()).toEqual([
      'section/gap',
      'section/gap',
      'section/off-the-wall',
      'section/overlap',
      'section/unknown-wall',
    ])
    expect(sections.map(section => section.id)).toEqual(['A'])
  })
})

/** Layers of a block: a wall, a low wall, sill and head of a window, the head of a door. */
const solids = fc.constantFrom(
  [{ fromLayer: 1, toLayer: 120 }],
  [{ fromLayer: 1, toLayer: 120 }],
  [{ fromLayer: 1, toLayer: 40 }],
  [
    { fromLayer: 1, toLayer: 45 },
    { fromLayer: 106, toLayer: 120 },
  ],
  [{ fromLayer: 106, toLayer: 120 }],
)

/** Random graphs of blocks in a row, ring or mesh. */
const graphs = fc
  .record({
    times: fc.array(fc.integer({ min: 5, max: 120 }), { minLength: 2, maxLength: 9 }),
    solid: fc.array(solids, { minLength: 9, maxLength: 9 }),
    extra: fc.array(fc.tuple(fc.nat(8), fc.nat(8)), { maxLength: 3 }),
  })
  .map(({ times, solid, extra }): SectionGraph => {
    const tie = (a: number, b: number, i: number) => ({
      a,
      b,
      cut: {
        wall: 'W',
        at: i,
        point: [i, 0] as const,
        kind: 'opening' as const,
        ref: `O${i}`,
        cost: 1,
        isPinned: false,
        why: '',
      },
    })
    const chain = times.slice(1).map((_, i) => tie(i, i + 1, i))
    const more = extra
      .map(([a, b]) => [a % times.length, b % times.length] as const)
      .filter(([a, b]) => a !== b)
      .map(([a, b], i) => tie(a, b, 100 + i))
    return {
      blocks: times.map((time, i) => ({ stretches: [], time, solid: solid[i]!, x: i, y: 0 })),
      ties: [...chain, ...more],
    }
  })

describe('dividing large plans', () => {
  const aims = { most: 200, least: 0, startTime: 4 }
  // The quick search is compared with trying everything; it may miss evenness, not layer time or sections.
  it('keeps within the layer time with as few sections as trying everything, nearly always', () => {
    let missed = 0
    let tried = 0
    fc.assert(
      fc.property(graphs, graph => {
        const [all, many] = [bestOfAll(graph, aims), bestOfMany(graph, aims)]
        const [best, quick] = [scorePartition(graph, all, aims), scorePartition(graph, many, aims)]
        expect(compareScores(best, quick)).toBeLessThanOrEqual(0)
        // Undivided, the plan has something to print on as many layers as it can have.
        const whole = scorePartition(
          graph,
          connectedParts(graph, () => true),
          aims,
        ).empty
        expect([best.empty, quick.empty]).toEqual([whole, whole])
        tried++
        if (quick.outside > best.outside + 0.1 || quick.sections > best.sections) missed++
      }),
      { numRuns: 150, seed: 7 },
    )
    expect(missed / tried).toBeLessThan(0.05)
  })

  it('calls no change hopeless that would be better', () => {
    let skipped = 0
    fc.assert(
      fc.property(
        graphs,
        fc.integer({ min: 60, max: 400 }),
        fc.nat(255),
        fc.nat(2),
        (graph, most, cuts, least) => {
          const tight = { ...aims, most, sectionsLeast: least + 1 }
          const partition = connectedParts(graph, tie => ((cuts >> tie) & 1) === 1)
          const score = scorePartition(graph, partition, tight)
          const isHopeless = hopeless(graph, partition, tight)
          for (let tie = 0; tie < graph.ties.length; tie++)
            for (const change of changesAt(graph, partition, tie)) {
              if (!isHopeless(change, score)) continue
              skipped++
              const next = scorePartition(graph, changed(graph, partition, change), tight)
              expect(compareScores(next, score)).toBeGreaterThanOrEqual(0)
            }
        },
      ),
      { numRuns: 300 },
    )
    expect(skipped).toBeGreaterThan(300)
  })

  // A street of rooms: more cuts than can be tried out.
  it('puts every wall metre into exactly one section, each in one piece', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 7 }), fc.integer({ min: 100, max: 500 }), (rooms, most) => {
        const walls = Array.from({ length: rooms }, (_, i) => [
          wall(`S${i}`, line([8 * i, 0], [8 * i + 8, 0]), [3]),
          wall(`N${i}`, line([8 * i, 6], [8 * i + 8, 6])),
          wall(`W${i}`, line([8 * i, 0], [8 * i, 6])),
        ]).flat()
        const openings = walls
          .filter(one => one.id.startsWith('N'))
          .map(one => opening(`O${one.id}`, one.id, 4))
        const { sections } = proposeSections(job(walls, openings, most))
        expect(coverage(walls, sections)).toEqual([])
      }),
      { numRuns: 25 },
    )
  })
})
