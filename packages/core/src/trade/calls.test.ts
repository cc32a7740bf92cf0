import { describe, expect, it } from 'vitest'
import { layersBelow } from '../wall/index.js'
import { callsOf } from './calls.js'
import { checkCalls } from './check-calls.js'
import { layerSpan } from './embed-calls.js'
import { passingShare } from './lift-time.js'
import { clock, exampleDoor, exampleEmbed, exampleLift, exampleParts } from './trade-example.js'

const [monday, tuesday, wednesday] = ['2026-07-13', '2026-07-14', '2026-07-15'] as const
const [friday, nextMonday] = ['2026-07-17', '2026-07-20'] as const
const lifts = [
  [monday, exampleLift('A', 1, monday, 1, 50)],
  [tuesday, exampleLift('A', 2, tuesday, 51, 110)],
  [friday, exampleLift('A', 3, friday, 111, 120)],
] as const

describe('layerSpan', () => {
  it.each([
    // hand: layers of 20 mm, heights to the nearest layer
    [0.3, 0.4, 16, 20],
    [0, 1, 1, 50],
    [0.307, 0.407, 16, 20],
    // hand: halves go down, as in the plan of the beads: 15.5 → 15 below, 20.5 → 20
    [0.31, 0.41, 16, 20],
    [0.31, 0.43, 16, 21],
    [0.3, 0.305, 16, 16],
  ])('from %d m to %d m is layers %d to %d', (bottom, top, first, last) =>
    expect(layerSpan(bottom, top, 0.02)).toEqual({ first, last }),
  )

  it('calls for the layers that the beads were laid around', () => {
    for (let mm = 0; mm <= 400; mm += 1) {
      const span = layerSpan(mm / 1000, mm / 1000 + 0.13, 0.02)
      expect(span).toEqual({
        first: layersBelow(mm / 1000, 0.02) + 1,
        last: layersBelow(mm / 1000 + 0.13, 0.02),
      })
    }
  })
})

describe('callsOf', () => {
  it('cuts between the youngest layer firm and the oldest still soft', () => {
    const [call] = callsOf(exampleParts({ embeds: [exampleEmbed('X')], lifts }))
    // hand: layers 16–20 are down at 07:20–07:40; + 20 min for the youngest, + 80 min for the oldest
    expect(call).toMatchObject({ layerIn: 16, layerOut: 20, lift: 'A1', date: monday })
    expect(call?.cut).toEqual({ from: clock(monday, 8), until: clock(monday, 8, 40) })
    expect(call?.cutInSteps).toBeUndefined()
  })

  it('cuts in steps what is too tall for one moment', () => {
    const parts = exampleParts({
      embeds: [exampleEmbed('C', { kind: 'chase', bottom: 0, height: 1 })],
      lifts,
    })
    const [call] = callsOf(parts)
    // hand: layer 1 is down 06:05, soft until 07:25; layer 50 is down 10:10, firm from 10:30
    expect(call).toMatchObject({ cutInSteps: true, from: clock(monday, 6, 25), until: clock(monday, 11, 30) })
    expect(checkCalls(parts, callsOf(parts)).map(finding => finding.check)).toEqual(['cut-in-steps'])
  })

  it('calls a chase through two lifts on both days', () => {
    const parts = exampleParts({
      embeds: [exampleEmbed('C', { kind: 'chase', bottom: 0.8, height: 0.4 })],
      lifts,
    })
    expect(callsOf(parts).map(({ id, lift, layerIn, layerOut }) => [id, lift, layerIn, layerOut])).toEqual([
      ['C', 'A1', 41, 50],
      ['C/2', 'A2', 51, 60],
    ])
    // hand: the second part starts on the first lift's top, 50 layers of 20 mm
    expect(callsOf(parts).map(call => call.place.up)).toEqual([0.8, 1])
  })

  it('lets what is printed round stand before the nozzle comes by', () => {
    const [call] = callsOf(exampleParts({ embeds: [exampleEmbed('X', { method: 'gap' })], lifts }))
    // hand: half-way through layers 15 (07:10–07:15) and 16 (07:15–07:20)
    expect([call?.from, call?.until]).toEqual([clock(monday, 7, 12) + 30, clock(monday, 7, 17) + 30])
  })

  it('gives what begins with a lift the time before it', () => {
    const [call] = callsOf(exampleParts({ embeds: [exampleEmbed('X', { method: 'gap', bottom: 1 })], lifts }))
    expect([call?.from, call?.until]).toEqual([clock(tuesday, 5), clock(tuesday, 6, 2) + 30])
  })

  it('sets on a layer while the nozzle holds', () => {
    const hold = { afterLayer: 15, duration: 720, reason: 'embed', ref: 'X' } as const
    const held = [[monday, exampleLift('A', 1, monday, 1, 50, [hold])]] as const
    const [call] = callsOf(exampleParts({ embeds: [exampleEmbed('X', { method: 'set' })], lifts: held }))
    expect([call?.from, call?.until]).toEqual([clock(monday, 7, 15), clock(monday, 7, 27)])
  })

  it('counts a hold into the time of what comes after it', () => {
    const hold = { afterLayer: 10, duration: 600, reason: 'embed', ref: 'Y' } as const
    const held = [[monday, exampleLift('A', 1, monday, 1, 50, [hold])]] as const
    const [call] = callsOf(
      exampleParts({ embeds: [exampleEmbed('X', { method: 'gap', bottom: 0.2 })], lifts: held }),
    )
    // hand: layer 10 is down 06:50, held to 07:00; half of layer 11 is 07:02:30
    expect(call?.until).toBe(clock(monday, 7, 2) + 30)
  })

  it('cuts a lintel’s pockets on the day and sets it before the next lift', () => {
    const calls = callsOf(exampleParts({ openings: [exampleDoor('D')], lifts }))
    // hand: layers 101–110 end 10:15–11:00; + 20 min and + 80 min. Wednesday’s morning is the next; the next lift starts on Friday at 06:00.
    expect(calls.map(call => call.id)).toEqual(['D/cut', 'D/set'])
    expect(calls[0]).toMatchObject({ layerIn: 101, layerOut: 110, lift: 'A2' })
    expect(calls[0]?.cut).toEqual({ from: clock(tuesday, 11, 20), until: clock(tuesday, 11, 35) })
    expect([calls[1]?.from, calls[1]?.until]).toEqual([clock(wednesday, 5), clock(friday, 6)])
  })

  it('sets the last lintel on the next morning that is worked', () => {
    const last = [
      [monday, exampleLift('A', 1, monday, 1, 50)],
      [friday, exampleLift('A', 2, friday, 51, 110)],
    ] as const
    const set = callsOf(exampleParts({ openings: [exampleDoor('D')], lifts: last }))[1]
    expect(set?.from).toBe(clock(nextMonday, 5))
  })

  it('waits for both sections where a lintel rests on two', () => {
    const sections = [
      { id: 'A', stretches: [{ wall: 'W', from: 0, to: 3 }], joints: [] },
      { id: 'B', stretches: [{ wall: 'W', from: 3, to: 6 }], joints: [] },
    ]
    const two = [
      [monday, exampleLift('A', 1, monday, 1, 110)],
      [tuesday, exampleLift('B', 1, tuesday, 1, 110)],
      [friday, exampleLift('A', 2, friday, 111, 120)],
    ] as const
    const parts = exampleParts({ openings: [exampleDoor('D')], sections, lifts: two })
    const calls = callsOf(parts)
    expect(calls.map(call => [call.id, call.lift])).toEqual([
      ['D/cut-start', 'A1'],
      ['D/cut-end', 'B1'],
      ['D/set', 'B1'],
    ])
    expect(calls[2]?.date).toBe(wednesday)
    expect(checkCalls(parts, calls)).toEqual([])
  })

  it('names the pockets’ size in the job’s units', () => {
    const [cut] = callsOf(exampleParts({ openings: [exampleDoor('D')], lifts }))
    expect(cut?.tool).toMatch(/^pockets 200 mm long beyond each jamb, 200 mm high/)
  })

  it('has a chase that is left free cleaned once its last layer in a lift is down', () => {
    const chase = exampleEmbed('C', { kind: 'chase', method: 'gap', bottom: 0.8, height: 0.4 })
    const calls = callsOf(exampleParts({ embeds: [chase], lifts }))
    // hand: layer 50 is down 10:10 and soft for 80 min; layer 60 is down 06:50
    expect(calls.map(call => [call.id, call.from, call.until])).toEqual([
      ['C', clock(monday, 10, 10), clock(monday, 11, 30)],
      ['C/2', clock(tuesday, 6, 50), clock(tuesday, 8, 10)],
    ])
    expect(calls[0]?.cut).toBeUndefined()
  })

  it('says when a morning has more lintels than time', () => {
    const next = { ...exampleLift('A', 3, wednesday, 111, 120) }
    const early = [...lifts.slice(0, 2), [wednesday, next] as const]
    const doors = [1, 2.5, 4, 5.2].map((at, index) => exampleDoor(`D${index}`, { at, width: 0.6 }))
    const parts = exampleParts({ openings: doors, lifts: early })
    // hand: four at 20 min against 05:00–06:00
    expect(checkCalls(parts, callsOf(parts))).toMatchObject([
      { check: 'lintel-crew', demand: 4800, capacity: 3600 },
    ])
  })

  it('finds it where one section goes on before the other is cut', () => {
    const sections = [
      { id: 'A', stretches: [{ wall: 'W', from: 0, to: 3 }], joints: [] },
      { id: 'B', stretches: [{ wall: 'W', from: 3, to: 6 }], joints: [] },
    ]
    const two = [
      [monday, exampleLift('A', 1, monday, 1, 110)],
      [tuesday, exampleLift('A', 2, tuesday, 111, 120)],
      [friday, exampleLift('B', 1, friday, 1, 110)],
    ] as const
    const parts = exampleParts({ openings: [exampleDoor('D')], sections, lifts: two })
    expect(checkCalls(parts, callsOf(parts)).map(finding => [finding.check, finding.verdict])).toContainEqual(
      ['lintel-late', 'fail'],
    )
  })

  it('says when the mix cannot be cut at all', () => {
    const parts = {
      ...exampleParts({ embeds: [exampleEmbed('X')], lifts }),
      cutWindow: () => undefined,
    }
    expect(callsOf(parts)[0]).toMatchObject({ cutDoubt: 'none' })
    expect(callsOf(parts)[0]!.cut).toBeUndefined()
    expect(checkCalls(parts, callsOf(parts)).map(finding => [finding.check, finding.verdict])).toEqual([
      ['no-cut-window', 'fail'],
    ])
  })

  it('says that a window holds for the best estimate of the mix alone', () => {
    const parts = {
      ...exampleParts({ embeds: [exampleEmbed('X')], lifts }),
      cutWindow: (down: number) => ({ from: down + 1200, until: down + 4800, sure: false }),
    }
    const calls = callsOf(parts)
    expect(calls[0]).toMatchObject({ cutDoubt: 'unsure' })
    expect(checkCalls(parts, calls).map(finding => [finding.check, finding.verdict, finding.at])).toEqual([
      ['cut-window-unsure', 'warn', 'X'],
    ])
  })

  it('says what the campaign does not reach', () => {
    const parts = exampleParts({ embeds: [exampleEmbed('X', { bottom: 2.2 })], lifts: lifts.slice(0, 1) })
    expect(callsOf(parts)).toEqual([])
    expect(checkCalls(parts, []).map(finding => [finding.check, finding.at])).toEqual([['uncalled', 'X']])
  })

  it('says which call falls outside the crew’s day', () => {
    const late = { ...exampleLift('A', 1, monday, 1, 50) }
    const shifted = {
      ...late,
      start: late.start + 43_200,
      end: late.end + 43_200,
      layerEnds: late.layerEnds.map(t => t + 43_200),
    }
    const parts = exampleParts({ embeds: [exampleEmbed('X')], lifts: [[monday, shifted]] })
    // hand: the cut is at 20:00 then, when the crew's day ends.
    expect(checkCalls(parts, callsOf(parts)).map(finding => finding.check)).toEqual(['call-after-hours'])
  })
})

describe('passingShare', () => {
  const pass = (from: readonly [number, number], to: readonly [number, number], time: number) => ({
    bead: 'b',
    path: { points: [from, to], bulges: [0], closed: false },
    width: 0.05,
    height: 0.02,
    length: 1,
    volume: 0.001,
    flow: 0.0002,
    speeds: [0.2],
    time,
    headings: [0, 0],
  })
  const route = {
    section: 'A',
    fromLayer: 1,
    toLayer: 9,
    parity: 1 as const,
    passes: [pass([0, 0], [4, 0], 20), pass([4, 1], [0, 1], 20)],
    travels: [
      { from: [0, 0] as const, to: [0, 0] as const, lift: 0, time: 0, turn: 0 },
      { from: [4, 0] as const, to: [4, 1] as const, lift: 0, time: 10, turn: 0 },
    ],
    printTime: 40,
    travelTime: 10,
    length: 8,
    volume: 0.002,
  }
  it.each([
    // hand: 20 s out, 10 s across, 20 s back, 50 s in all
    [[1, -0.1], 5 / 50],
    [[1, 1.1], 45 / 50],
    [[4, 1], 30 / 50],
  ] as const)('of the nozzle at %j is %d', (point, share) =>
    expect(passingShare(route, point)).toBeCloseTo(share, 12),
  )

  it('calls an inspector to every section the nozzle waits in, a day ahead', () => {
    const hold = { afterLayer: 20, duration: 1800, reason: 'inspection' as const, ref: 'I1' }
    const parts = exampleParts({
      lifts: [[tuesday, exampleLift('A', 1, tuesday, 1, 50, [hold])]],
    })
    const [wall] = parts.job.walls
    const inspections = [{ id: 'I1', wall: wall!.id, above: 0.4, takes: 1800, what: 'bars of the sill' }]
    const calls = callsOf({ ...parts, job: { ...parts.job, inspections } })
    // hand: layers of five minutes from six: layer 20 is down at 07:40, and the nozzle waits half an hour
    expect(calls).toMatchObject([
      {
        id: 'I1',
        trade: 'inspector',
        what: 'inspection',
        lift: 'A1',
        date: tuesday,
        from: clock(tuesday, 7, 40),
        until: clock(tuesday, 8, 10),
        tellBy: clock(monday, 7, 40),
        layerIn: 20,
      },
    ])
    expect(calls[0]!.tool).toContain('bars of the sill')
    expect(callsOf(parts)).toEqual([])
  })
})
