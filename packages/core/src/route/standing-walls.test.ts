import { describe, expect, it } from 'vitest'
import { machineProfile } from '../machine/index.js'
import { layerRouteOf, liftRun, routeSection } from './index.js'
import { standingWalls } from './standing-walls.js'

const rules = { origin: { x: 0, y: 0, z: 0.1, turn: 0 }, nozzleRadius: 0.1 }
/** A wall 2 m long and 0.3 m thick, 1.5 m high. */
const wall = {
  name: 'section B',
  outline: [
    [2, 1],
    [4, 1],
    [4, 1.3],
    [2, 1.3],
  ] as const,
  top: 1.5,
}
const over = (from: readonly [number, number], to: readonly [number, number]) =>
  standingWalls([wall], rules).topUnder({ from, to })

describe('a wall that stands beside a lift', () => {
  it('is travelled over where the way crosses it, or passes it nearer than the nozzle is wide', () => {
    // hand: 1.5 m above the slab, the slab 0.1 m above the machine's zero
    expect(over([3, 0], [3, 3])).toBeCloseTo(1.6, 12)
    expect(over([1, 0.95], [5, 0.95])).toBeCloseTo(1.6, 12)
  })
  it('is not where the way keeps clear of it', () =>
    expect(over([1, 0.85], [5, 0.85])).toBe(Number.NEGATIVE_INFINITY))
  it('is not where a way only begins or ends beside it, as beads at a joint do', () => {
    expect(over([1.97, 1.15], [0.5, 1.15])).toBe(Number.NEGATIVE_INFINITY)
    expect(over([1.97, 1.02], [1.97, 1.28])).toBe(Number.NEGATIVE_INFINITY)
  })
  it('is where the way leads from its very end across it', () =>
    expect(over([2, 1.15], [4.5, 1.15])).toBeCloseTo(1.6, 12))
})

describe('a lift among walls that stand', () => {
  const machine = machineProfile('gantry-12')!
  const beads = [0, 2].map((y, i) => ({
    id: `b${i}`,
    role: 'line' as const,
    width: 0.05,
    height: 0.02,
    path: {
      points: [
        [2.5, y],
        [3.5, y],
      ] as const,
      bulges: [0],
      closed: false,
    },
  }))
  const band = { fromLayer: 1, toLayer: 100, body: [], bodyArea: 0, beads, thinPlaces: [] }
  const { routes } = routeSection({ section: 'A', layers: 100, bands: [band], volume: 0 }, machine, {
    speed: 0.15,
  })
  const run = (span: { readonly fromLayer: number; readonly toLayer: number }) =>
    liftRun(routes, machine, { speed: 0.15 }, { ...span, standing: [wall] })

  it('comes in, travels and leaves over them by the clearance', () => {
    const { layers, end } = run({ fromLayer: 1, toLayer: 3 })
    for (const { z, travels } of layers)
      for (const travel of travels) {
        const across = travel.from[1] !== travel.to[1]
        expect(z + travel.lift).toBeCloseTo(across || travel === layers[0]!.travels[0] ? 1.56 : z + 0.06, 12)
      }
    expect(layers.at(-1)!.z + end.lift).toBeCloseTo(1.56, 12)
  })
  it('takes the time of going up and down as well', () => {
    const [layer] = run({ fromLayer: 1, toLayer: 1 }).layers
    const plain = layerRouteOf(routes, 1).travels[1]!
    // hand: 1.48 m more up and as much down at 0.1 m/s; both ramps are the same
    expect(layer!.travels[1]!.time - plain.time).toBeCloseTo((2 * 1.48) / 0.1, 9)
  })
  it('is as if alone once it is higher', () => {
    const alone = liftRun(routes, machine, { speed: 0.15 }, { fromLayer: 80, toLayer: 90 })
    expect(run({ fromLayer: 80, toLayer: 90 })).toEqual(alone)
  })
})
