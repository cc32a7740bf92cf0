import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Path } from '../geometry/index.js'
import { type Machine, machineProfile } from '../machine/index.js'
import {
  layerRouteOf,
  layerTime,
  liftRun,
  newRouteCache,
  routeSection,
  sharpTurn,
  startsOf,
} from './index.js'
import { bead, hollowWall, line, roundedBox, sectionOf, zigzag } from './invented-section.js'
import { segmentsOf } from './segment.js'

const gantry = machineProfile('gantry-12')!
const round = machineProfile('gantry-12-round')!
const speed = 0.15
const routed = (beads: Parameters<typeof sectionOf>[0], machine: Machine = gantry, more = {}) =>
  routeSection(sectionOf(beads), machine, { speed, ...more })

const pathLength = (path: Path) => segmentsOf(path).reduce((sum, segment) => sum + segment.length, 0)

describe('a hollow wall', () => {
  const { routes, findings } = routed(hollowWall)
  const [odd, even] = [layerRouteOf(routes, 1), layerRouteOf(routes, 2)]

  it('is printed as one unbroken bead: the tie touches the wythe', () => {
    expect(startsOf(odd)).toBe(1)
    expect(startsOf(even)).toBe(1)
    expect(odd.travels.map(travel => travel.joined ?? false)).toEqual([false, true])
  })
  it('has nothing against it', () => expect(findings).toEqual([]))
  it('lays every bead once, with at most one joining piece', () => {
    const beads = hollowWall.reduce((sum, each) => sum + pathLength(each.path), 0)
    for (const route of [odd, even]) {
      expect(route.passes.map(pass => pass.bead).sort()).toEqual(['t', 'w'])
      expect(route.length).toBeGreaterThanOrEqual(beads - 1e-9)
      expect(route.length).toBeLessThanOrEqual(beads + 0.05 + 1e-6)
    }
  })
  it('has the volume of its length times the bead section', () =>
    expect(odd.volume).toBeCloseTo(odd.length * (0.02 * 0.03 + (Math.PI / 4) * 0.02 ** 2), 12))
  it('runs the loop the other way round in the next layer', () => {
    const turned = (route: typeof odd) => {
      const loop = route.passes.find(pass => pass.bead === 'w')!
      return Math.sign(segmentsOf(loop.path).reduce((sum, segment) => sum + segment.sweep, 0))
    }
    expect(turned(odd)).toBe(-turned(even))
  })
  it('adds its times up', () => {
    expect(odd.printTime).toBeCloseTo(
      odd.passes.reduce((sum, pass) => sum + pass.time, 0),
      9,
    )
    expect(layerTime(odd)).toBeCloseTo(odd.printTime + odd.travelTime, 12)
  })
})

describe('a loop alone', () => {
  const loop = [bead('w', roundedBox(1, 1, 4, 3, 0.1))]
  it('starts elsewhere in the next layer when staggered', () => {
    const { routes } = routed(loop)
    const [a, b] = [1, 2].map(layer => layerRouteOf(routes, layer).passes[0]!.path.points[0]!)
    expect(Math.hypot(a![0] - b![0], a![1] - b![1])).toBeGreaterThan(0.3)
  })
  it('starts at the hidden place in every layer when one is chosen', () => {
    const { routes } = routed(loop, gantry, { start: { kind: 'hidden', near: [3, 5] } })
    for (const layer of [1, 2]) {
      const path = layerRouteOf(routes, layer).passes[0]!.path
      expect(path.points[0]).toEqual([3, 4])
      expect(path.points.at(-1)).toEqual([3, 4])
      expect(pathLength(path)).toBeCloseTo(2 * (3.8 + 2.8) + 0.2 * Math.PI, 12)
    }
  })
})

describe('nested loops of a solid wall', () => {
  const nested = [0, 1, 2, 3].map(i =>
    bead(`f${i}`, roundedBox(1 + i * 0.045, 1 + i * 0.045, 3 - i * 0.09, 0.5 - i * 0.09, 0.05), 'fill'),
  )
  it('are one bead for a round nozzle', () =>
    expect(startsOf(layerRouteOf(routed(nested, round).routes, 1))).toBe(1))
  it('are broken where the axis would wind past its stops', () => {
    const tight = { ...gantry, headingTravel: 2.1 * Math.PI }
    const { routes, findings } = routed(nested, tight)
    const route = layerRouteOf(routes, 1)
    expect(startsOf(route)).toBe(2)
    expect(findings.filter(finding => finding.check === 'heading-travel')).toEqual([])
    for (const heading of route.passes.flatMap(pass => pass.headings))
      expect(Math.abs(heading)).toBeLessThanOrEqual(tight.headingTravel + 1e-9)
  })
  it('stop inside a loop to turn back where one loop alone winds too far', () => {
    const stiff = { ...gantry, headingTravel: 1.2 * Math.PI }
    const { routes, findings } = routed(nested, stiff)
    const found = findings.find(finding => finding.check === 'heading-travel')!
    expect(found.verdict).toBe('warn')
    expect(found.demand).toBeCloseTo(360, 6)
    let turnedBack = 0
    for (const pass of layerRouteOf(routes, 1).passes) {
      const turns = segmentsOf(pass.path)
        .slice(1)
        .map((_, i) => pass.headings[i + 1]! - pass.headings[i]! - segmentsOf(pass.path)[i]!.sweep)
      // a whole turn back or none, the rest smooth
      for (const turn of turns) expect(Math.abs(Math.sin(turn))).toBeLessThan(1e-9)
      turnedBack += turns.filter(turn => Math.abs(Math.abs(turn) - 2 * Math.PI) < 1e-9).length
      for (const heading of pass.headings)
        expect(Math.abs(heading)).toBeLessThanOrEqual(stiff.headingTravel + 1e-9)
    }
    expect(turnedBack).toBeGreaterThan(0)
  })
  it('cannot be printed when the axis does not even reach all directions', () => {
    const found = routed(nested, { ...gantry, headingTravel: 0.4 * Math.PI }).findings
    expect(found.filter(finding => finding.check === 'heading-travel').map(each => each.verdict)).toContain(
      'fail',
    )
  })
})

describe('headings', () => {
  const coordinate = fc.double({ min: 1, max: 8, noNaN: true })
  const point = fc.tuple(coordinate, coordinate)
  const openBead = fc
    .tuple(fc.array(point, { minLength: 2, maxLength: 5 }), fc.double({ min: -1.5, max: 1.5, noNaN: true }))
    .filter(([points]) =>
      points.every(
        (p, i) => i === 0 || Math.hypot(p[0] - points[i - 1]![0], p[1] - points[i - 1]![1]) > 0.05,
      ),
    )
    .map(
      ([points, bulge]): Path => ({
        points,
        bulges: points.slice(1).map((_, i) => (i % 2 ? bulge : 0)),
        closed: false,
      }),
    )

  it('follow the path, turn the shorter way and stay within the travel of the axis', () =>
    fc.assert(
      fc.property(fc.array(openBead, { minLength: 1, maxLength: 4 }), paths => {
        const { routes, findings } = routed(paths.map((path, i) => bead(`b${i}`, path)))
        const winding = findings.filter(finding => finding.check === 'heading-travel')
        const most = winding.length > 0 ? 3 * Math.PI : Math.PI
        for (const route of routes.routes)
          for (const pass of route.passes) {
            const segments = segmentsOf(pass.path)
            expect(pass.headings.length).toBe(segments.length + 1)
            segments.forEach((segment, i) => {
              const off = (pass.headings[i]! - segment.heading) / (2 * Math.PI)
              expect(Math.abs(off - Math.round(off))).toBeLessThan(1e-9)
              const jump = pass.headings[i + 1]! - pass.headings[i]! - segment.sweep
              // turning back adds one whole turn to the shorter way
              expect(Math.abs(jump)).toBeLessThanOrEqual(most + 1e-6)
            })
            for (const heading of pass.headings)
              expect(Math.abs(heading)).toBeLessThanOrEqual(gantry.headingTravel + 1e-6)
          }
      }),
      { numRuns: 60, interruptAfterTimeLimit: 10_000 },
    ))
  it('are counted from the home of the machine when the building is turned in it', () => {
    const origin = { x: 0, y: 0, z: 0, turn: Math.PI / 6 }
    const { routes } = routed([bead('a', line([1, 1], [3, 1]))], gantry, { origin })
    expect(Math.abs(Math.sin(layerRouteOf(routes, 1).passes[0]!.headings[0]! - origin.turn))).toBeLessThan(
      1e-12,
    )
  })
})

describe('sharp corners', () => {
  it('stop a tangential nozzle for the turn and the pump to come back', () => {
    const corner = [bead('a', line([1, 1], [3, 1], [3, 4]))]
    const pass = layerRouteOf(routed(corner).routes, 1).passes[0]!
    // hand: 2 m and 3 m rest to rest at 0.15 m/s, 0.5 m/s²: L/v + v/a; turn 90° at 90°/s, 180°/s²: 1.5 s; pump 0.6 s twice
    expect(pass.time).toBeCloseTo(2 / 0.15 + 0.3 + 3 / 0.15 + 0.3 + 1.5 + 1.2, 9)
  })
  it('only slow a round nozzle', () => {
    const corner = [bead('a', line([1, 1], [3, 1], [3, 4]))]
    const pass = layerRouteOf(routed(corner, round).routes, 1).passes[0]!
    // hand: corner speed √(0.5·0.002·2.41421) = 0.04914 m/s; each leg loses (v−u)²/(2·a·v) at the corner
    const u = Math.sqrt(0.5 * 0.002 * (1 / (Math.SQRT2 - 1)))
    const lost = (0.15 - u) ** 2 / (2 * 0.5 * 0.15)
    expect(pass.time).toBeCloseTo(5 / 0.15 + 0.15 / 0.5 + 2 * lost + 0.6, 9)
  })
  it('do not stop the axis when they are gentle', () => {
    const gentle = line([1, 1], [2, 1], [3, 1 + Math.tan(sharpTurn * 0.9)])
    const sharp = line([1, 1], [2, 1], [3, 1 + Math.tan(sharpTurn * 1.1)])
    const time = (path: Path) => layerRouteOf(routed([bead('a', path)]).routes, 1).passes[0]!.time
    expect(time(sharp) - time(gentle)).toBeGreaterThan(0.6)
  })
})

describe('routes already known', () => {
  it('are taken from the cache under the names of the band that asks', () => {
    const cache = newRouteCache()
    const first = routeSection(sectionOf(hollowWall), gantry, { speed, cache })
    const other = sectionOf(
      hollowWall.map(each => ({ ...each, id: `up-${each.id}` })),
      30,
    )
    const second = routeSection(other, gantry, { speed, cache })
    expect(cache.bands.size).toBe(1)
    const [a, b] = [first.routes.routes[0]!, second.routes.routes[0]!]
    expect(b.toLayer).toBe(30)
    expect(b.passes.map(pass => pass.path)).toEqual(a.passes.map(pass => pass.path))
    expect(b.passes.map(pass => pass.bead)).toEqual(a.passes.map(pass => `up-${pass.bead}`))
  })
  it('are run once where a band lays the same points again', () => {
    const cache = newRouteCache()
    const one = sectionOf(hollowWall)
    const again = structuredClone(one.bands[0]!)
    const bands = [one.bands[0]!, { ...again, fromLayer: 11, toLayer: 20 }]
    const { routes } = routeSection({ ...one, layers: 20, bands }, gantry, { speed, cache })
    expect(cache.bands.size).toBe(1)
    expect(routes.routes.map(route => route.fromLayer)).toEqual([1, 1, 11, 11])
    expect(routes.routes[2]!.passes).toEqual(routes.routes[0]!.passes)
  })
  it('are the very same object for a section that is the same, and not for one of other names', () => {
    const cache = newRouteCache()
    const first = routeSection(sectionOf(hollowWall), gantry, { speed, cache })
    expect(routeSection(structuredClone(sectionOf(hollowWall)), gantry, { speed, cache })).toBe(first)
    const other = routeSection({ ...sectionOf(hollowWall), section: 'T' }, gantry, { speed, cache })
    expect(other.routes.section).toBe('T')
    const higher = routeSection(sectionOf(hollowWall, 11), gantry, { speed, cache })
    expect(higher.routes.routes[0]!.toLayer).toBe(11)
  })
  it('refuse points that are not numbers', () => {
    expect(() => routed([bead('l', line([1, 1], [Number.NaN, 1]))])).toThrow('finite')
    expect(() => routed([{ ...bead('l', line([1, 1], [3, 1])), width: Number.NaN }])).toThrow('width')
  })
  it('are made anew for another speed', () => {
    const cache = newRouteCache()
    const slow = routeSection(sectionOf(hollowWall), gantry, { speed: 0.05, cache })
    const fast = routeSection(sectionOf(hollowWall), gantry, { speed, cache })
    expect(fast.routes.routes[0]!.printTime).toBeLessThan(slow.routes.routes[0]!.printTime)
  })
  it('survive being cloned', () => {
    const { routes } = routed(hollowWall)
    expect(structuredClone(routes)).toEqual(JSON.parse(JSON.stringify(routes)))
  })
})

describe('a lift', () => {
  const { routes } = routed([...hollowWall, bead('x', zigzag([6, 1], 2, 0.2, 0.5))])
  it('is its layers one after another', () => {
    const run = liftRun(routes, gantry, { speed }, { fromLayer: 3, toLayer: 6 })
    expect(run.layers.map(layer => layer.layer)).toEqual([3, 4, 5, 6])
    expect(run.layers.map(layer => layer.z)).toEqual([0.06, 0.08, 0.1, 0.12].map(z => expect.closeTo(z, 12)))
    // every layer but the first follows the one below as its route says
    for (const layer of run.layers.slice(1))
      expect(layer.time).toBeCloseTo(layerTime(layerRouteOf(routes, layer.layer)), 9)
  })
  it('restarted from a pass prints what is left', () => {
    const whole = liftRun(routes, gantry, { speed }, { fromLayer: 3, toLayer: 4 })
    const rest = liftRun(routes, gantry, { speed }, { fromLayer: 3, toLayer: 4, fromPass: 1 })
    expect(rest.layers[0]!.passes.map(pass => pass.bead)).toEqual(
      whole.layers[0]!.passes.slice(1).map(pass => pass.bead),
    )
    expect(rest.time).toBeLessThan(whole.time)
  })
})
