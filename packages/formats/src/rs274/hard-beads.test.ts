import { machineProfile } from '@dawnlift/core/machine'
import { liftRun, routeSection } from '@dawnlift/core/route'
import { expect, it } from 'vitest'
import { inspectRun, readMachineFile, writeLift } from './index.js'

type Point = readonly [number, number]
const quarter = Math.tan(Math.PI / 8)
const open = (points: readonly Point[], bulges = points.slice(1).map(() => 0)) => ({
  points,
  bulges,
  closed: false,
})

/** Quarter circles that grow outwards; the heading winds on all the way. */
function spiral(turns: number, least: number, growth: number, hand: 1 | -1) {
  const quarters = Array.from({ length: 4 * turns + 1 }, (_, k) => k)
  const points = quarters.map((k): Point => {
    const [angle, radius] = [(hand * k * Math.PI) / 2, least + growth * k]
    return [5 + radius * Math.cos(angle), 4 + radius * Math.sin(angle)]
  })
  return open(
    points,
    points.slice(1).map(() => hand * quarter),
  )
}

const circle = (radius: number, x: number) => ({
  points: [
    [x - radius, 3],
    [x + radius, 3],
  ] as const,
  bulges: [1, 1],
  closed: true,
})

const row = (count: number, place: (k: number) => Point) => Array.from({ length: count }, (_, k) => place(k))
const hard = {
  'a spiral that winds to the left': [spiral(5, 0.06, 0.03, 1)],
  'a spiral that winds to the right': [spiral(5, 0.06, 0.03, -1)],
  'a spiral tighter than the nozzle': [spiral(3, 0.005, 0.002, 1)],
  'circles that all wind the same way': row(12, k => [0.05 + 0.02 * k, 2 + 0.4 * k]).map(([r, x]) =>
    circle(r, x),
  ),
  'circles of a few millimetres': row(12, k => [0.002 + 0.001 * k, 2 + 0.3 * k]).map(([r, x]) =>
    circle(r, x),
  ),
  'a zigzag of sharp corners': [open(row(60, k => [1 + 0.1 * k, 1 + (k % 2) * 0.4]))],
  'a wave in chords of 5 mm': [open(row(400, k => [1 + 0.005 * k, 2 + 0.02 * Math.sin(k / 3)]))],
  'half circles, left and right in turn': [
    open(
      row(40, k => [1 + 0.12 * k, 2]),
      Array.from({ length: 39 }, (_, k) => (k % 2 ? 0.95 : -0.95)),
    ),
  ],
  'a bead of 4 mm': [
    open([
      [1, 1],
      [1.004, 1],
    ]),
  ],
  'pieces shorter than the written grid': [
    open([
      [1, 1],
      [1.00001, 1],
      [1.00002, 1.00001],
      [2, 1.00001],
      [2.0000001, 1.00001],
      [3, 2],
    ]),
  ],
}

const gantry = machineProfile('gantry-12')!
const machines = {
  millimetres: gantry,
  inches: { ...gantry, words: { ...gantry.words, units: 'G20' as const } },
  'long lags': { ...gantry, pump: { ...gantry.pump, startLag: 2, stopLag: 3 } },
}
const each = Object.entries(hard).flatMap(([name, paths]) =>
  Object.entries(machines).map(([words, machine]) => ({ name, words, paths, machine })),
)

it.each(each)(
  '$name, $words: heading within its limits, pump off on every way over, all of it laid',
  ({ paths, machine }) => {
    const beads = paths.map((path, i) => ({
      id: `b${i}`,
      role: 'line' as const,
      width: 0.05,
      height: 0.02,
      path,
    }))
    const band = { fromLayer: 1, toLayer: 3, body: [], bodyArea: 0, beads, thinPlaces: [] }
    const options = { speed: 0.15, origin: { x: 0.3, y: 0.2, z: 0.05, turn: 0.4 } }
    const { routes } = routeSection({ section: 'A', layers: 3, bands: [band], volume: 0 }, machine, options)
    const file = { job: 'hard', lift: 'A1', machine, options, routes, fromLayer: 1, toLayer: 3 }
    const read = readMachineFile(writeLift(file))
    if (!read.ok) throw new Error(JSON.stringify(read.problems[0]))
    const summary = inspectRun(read.value, { machine })
    const passes = liftRun(routes, machine, options, file).layers.flatMap(layer => layer.passes)
    const sum = (of: 'length' | 'volume') => passes.reduce((total, pass) => total + pass[of], 0)
    expect(summary.notes).toEqual([])
    expect(summary.headingRateMost).toBeLessThanOrEqual(machine.headingRate * (1 + 1e-9))
    expect(Math.max(...summary.headingRange!.map(Math.abs))).toBeLessThanOrEqual(machine.headingTravel + 1e-6)
    expect(Math.abs(summary.length / sum('length') - 1)).toBeLessThan(1e-4)
    expect(Math.abs(summary.volume! / sum('volume') - 1)).toBeLessThan(1e-4)
  },
)
