import { machineProfile } from '../machine/index.js'
import { bead, line, roundedBox, sectionOf, zigzag } from './invented-section.js'
import { newRouteCache } from './options.js'
import { routeSection } from './route-section.js'
import { type Move, speedProfile } from './velocity.js'

const machine = machineProfile('gantry-12')!
const options = { speed: 0.15 }

/** Rooms of hollow walls: a loop and ties in pieces to each. */
const rooms = (count: number) =>
  sectionOf(
    Array.from({ length: count }, (_, i) => [
      bead(`w${i}`, roundedBox(1 + (i % 3) * 3, 1 + Math.floor(i / 3) * 2, 2.4, 0.3, 0.06)),
      ...[0, 1, 2].map(k =>
        bead(
          `t${i}.${k}`,
          zigzag([1.1 + (i % 3) * 3 + k * 0.75, 1.045 + Math.floor(i / 3) * 2], 0.6, 0.21, 0.3),
          'web',
        ),
      ),
    ]).flat(),
  )

const fewBeads = rooms(2)
const manyBeads = rooms(9)
const closers = sectionOf(
  Array.from({ length: 100 }, (_, i) =>
    bead(
      `c${i}`,
      line([1 + (i % 10), 1 + Math.floor(i / 10) * 0.8], [1.5 + (i % 10), 1 + Math.floor(i / 10) * 0.8]),
    ),
  ),
)
const moves = Array.from(
  { length: 100_000 },
  (_, i): Move => ({
    length: 0.01 + (i % 7) * 0.02,
    speed: 0.15,
    turn: 0.02,
    heading: i * 0.02,
    endHeading: i * 0.02,
    afterStop: i % 50 === 0,
  }),
)

export function bench(): { readonly name: string; readonly run: () => void }[] {
  const known = newRouteCache()
  return [
    { name: 'route 8 beads, proved best', run: () => void routeSection(fewBeads, machine, options) },
    { name: 'route 36 beads', run: () => void routeSection(manyBeads, machine, options) },
    { name: 'route 100 beads', run: () => void routeSection(closers, machine, options) },
    {
      name: 'route 36 beads again, from the cache',
      run: () => void routeSection(manyBeads, machine, { ...options, cache: known }),
    },
    { name: 'speed profile of 100,000 pieces', run: () => void speedProfile(moves, machine) },
  ]
}
