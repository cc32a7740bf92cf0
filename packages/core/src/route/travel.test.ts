import { describe, expect, it } from 'vitest'
import type { Path, Point } from '../geometry/index.js'
import { type Machine, machineProfile } from '../machine/index.js'
import { beadFlow, layerRouteOf, liftRun, routeSection } from './index.js'
import { bead, line, sectionOf } from './invented-section.js'

const gantry = machineProfile('gantry-12')!
const speed = 0.15
const routed = (beads: Parameters<typeof sectionOf>[0], machine: Machine = gantry, more = {}) =>
  routeSection(sectionOf(beads), machine, { speed, ...more })

describe('travel', () => {
  const apart = [bead('a', line([1, 1], [3, 1])), bead('b', line([5, 1], [7, 1]))]
  it('lifts by the clearance over open ground', () =>
    expect(layerRouteOf(routed(apart).routes, 1).travels[1]!.lift).toBeCloseTo(0.06, 12))
  it('lifts over what stands proud on the way', () => {
    const outline: Point[] = [
      [3.9, 0.9],
      [4.1, 0.9],
      [4.1, 1.1],
      [3.9, 1.1],
    ]
    const over = routed(apart, gantry, { proud: [{ name: 'bar', outline, top: 0.8 }] })
    // hand: top 0.80 m, first layer at 0.02 m, clearance 0.06 m
    expect(layerRouteOf(over.routes, 1).travels[1]!.lift).toBeCloseTo(0.84, 12)
    const run = liftRun(
      over.routes,
      gantry,
      { speed, proud: [{ name: 'bar', outline, top: 0.8 }] },
      { fromLayer: 5, toLayer: 6 },
    )
    expect(run.layers[0]!.travels[1]!.lift).toBeCloseTo(0.8 + 0.06 - 0.1, 12)
  })
  it('does not lift over what stands aside', () => {
    const outline: Point[] = [
      [3.9, 2],
      [4.1, 2],
      [4, 2.2],
    ]
    const aside = routed(apart, gantry, { proud: [{ name: 'bar', outline, top: 0.8 }] })
    expect(layerRouteOf(aside.routes, 1).travels[1]!.lift).toBeCloseTo(0.06, 12)
  })
  it('is refused where the machine would have to lift above its reach', () => {
    const mast = { name: 'mast', x: [3.9, 4.1], y: [0, 3], z: [0, 4] } as const
    const found = routed(apart, { ...gantry, keepOut: [mast] }).findings
    expect(found.map(finding => finding.check)).toEqual(['travel-height'])
    expect(found[0]!.demand).toBeCloseTo(4.06, 9)
    expect(found[0]!.say).toContain('mast')
  })
  it('takes the time of up, over and down', () => {
    // hand: 0.06 m rest to rest at 0.1 m/s, 0.5 m/s²: 0.06/0.1 + 0.1/0.5 = 0.8 s, twice; 2 m at 0.4 m/s: 5 + 0.8 s
    const travel = layerRouteOf(routed(apart).routes, 1).travels[1]!
    expect(travel.time).toBeCloseTo(1.6 + 5.8, 9)
  })
})

describe('reach and flow', () => {
  it('names the bead, the place and the metres missing', () => {
    const far = routed([bead('far', line([1, 1], [12.5, 1]))]).findings
    expect(far.map(finding => finding.check)).toEqual(['reach'])
    expect(far[0]).toMatchObject({
      at: 'S/far',
      point: [12.5, 1],
      demand: 12.5,
      capacity: 12,
      verdict: 'fail',
    })
  })
  it('counts the belly of an arc, in the frame of the machine', () => {
    const belly: Path = {
      points: [
        [2, 1],
        [4, 1],
      ],
      bulges: [1],
      closed: false,
    }
    const origin = { x: 0, y: 0.5, z: 0, turn: 0 }
    const low = { ...gantry, reach: { ...gantry.reach, y: [0.6, 10] as const } }
    const found = routeSection(sectionOf([bead('b', belly)]), low, { speed, origin }).findings[0]!
    // hand: half circle of radius 1 m below y = 1: lowest at 0, in the machine frame 0.5
    expect(found.demand).toBeCloseTo(0.5, 12)
    expect(found.point![0]).toBeCloseTo(3, 12)
  })
  it('tells the height of a section too tall for the machine', () => {
    const tall = routeSection(sectionOf([bead('a', line([1, 1], [3, 1]))], 220), gantry, { speed })
    expect(tall.findings.find(finding => finding.check === 'reach')?.demand).toBeCloseTo(4.4, 12)
  })
  it('reports a bead inside a keep-out', () => {
    const silo = { name: 'silo', x: [2, 3], y: [0, 2], z: [0, 4] } as const
    const found = routed([bead('a', line([1, 1], [4, 1]))], { ...gantry, keepOut: [silo] }).findings
    expect(found.map(finding => finding.check)).toContain('keep-out')
  })
  it('warns of a bar beside a bead while the bead lies lower than the bar', () => {
    const outline: Point[] = [
      [2, 1.05],
      [2.02, 1.05],
      [2.02, 1.07],
    ]
    const bar = { name: 'starter bar', outline, top: 0.5 }
    const beads = [bead('a', line([1, 1], [4, 1]))]
    const found = routed(beads, gantry, { proud: [bar] }).findings
    expect(found.map(finding => [finding.check, finding.verdict])).toEqual([['nozzle-clash', 'warn']])
    // ten layers of 20 mm from a slab 0.5 m up: the first lies above the bar
    expect(routed(beads, gantry, { proud: [bar], base: 0.5 }).findings).toEqual([])
  })
  it('slows to what the pump gives, and says so', () => {
    const weak = { ...gantry, pump: { ...gantry.pump, flowMost: 5 / 60000 } }
    const { routes, findings } = routed([bead('a', line([1, 1], [4, 1]))], weak)
    const pass = layerRouteOf(routes, 1).passes[0]!
    expect(pass.flow).toBeCloseTo(5 / 60000, 12)
    expect(beadFlow(pass, pass.speeds[0]!)).toBeCloseTo(5 / 60000, 12)
    expect(findings.map(finding => finding.check)).toEqual(['pump-flow-most'])
  })
  it('says lengths, speeds and flows in the units of the site', () => {
    const weak = { ...gantry, pump: { ...gantry.pump, flowMost: 5 / 60000 } }
    const beads = [bead('a', line([1, 1], [40, 1]))]
    const said = (units: 'metric' | 'imperial') =>
      routed(beads, weak, { units })
        .findings.map(finding => finding.say)
        .join(' ')
    expect(said('metric')).toMatch(/mm\/s needs .* L\/min/)
    expect(said('imperial')).toMatch(/in\/s needs .* gal\/min/)
    expect(said('imperial')).not.toMatch(/\d (m|mm|mm\/s|L\/min)\b/)
  })
  it('reports an arc so tight that the flow falls below the pump’s least', () => {
    const tight: Path = {
      points: [
        [1, 1],
        [1.02, 1],
      ],
      bulges: [1],
      closed: false,
    }
    const found = routed([bead('a', tight)]).findings
    expect(found.map(finding => finding.check)).toEqual(['pump-flow-least'])
  })
})
