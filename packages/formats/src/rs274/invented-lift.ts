import { type Machine, type MachineOrigin, machineProfile } from '@dawnlift/core/machine'
import { routeSection } from '@dawnlift/core/route'
import type { SectionBands } from '@dawnlift/core/wall'
import type { LiftFile } from './lift-file.js'

type Bead = SectionBands['bands'][number]['beads'][number]

const quarter = Math.tan(Math.PI / 8)

/** A hollow wall with round corners and a tie inside, a bowed wall, and a wall with a sharp corner; 0.4 m tall. */
const beads: readonly Bead[] = [
  {
    id: 'w1',
    role: 'wythe',
    width: 0.05,
    height: 0.02,
    path: {
      points: [
        [1.08, 1],
        [4.92, 1],
        [5, 1.08],
        [5, 1.22],
        [4.92, 1.3],
        [1.08, 1.3],
        [1, 1.22],
        [1, 1.08],
      ],
      bulges: [0, quarter, 0, quarter, 0, quarter, 0, quarter],
      closed: true,
    },
  },
  {
    id: 't1',
    role: 'web',
    width: 0.05,
    height: 0.02,
    path: {
      points: Array.from({ length: 13 }, (_, i) => [1.1 + i * 0.3, 1.045 + (i % 2) * 0.21] as const),
      bulges: new Array(12).fill(0),
      closed: false,
    },
  },
  {
    id: 'bow',
    role: 'line',
    width: 0.06,
    height: 0.02,
    path: {
      points: [
        [1, 3],
        [3, 3],
        [6, 3],
      ],
      bulges: [0, 0.3],
      closed: false,
    },
  },
  {
    id: 'bend',
    role: 'line',
    width: 0.05,
    height: 0.02,
    path: {
      points: [
        [7, 1],
        [8, 1],
        [8, 2.5],
      ],
      bulges: [0, 0],
      closed: false,
    },
  },
]

export const inventedBands: SectionBands = {
  section: 'A',
  layers: 20,
  bands: [
    { fromLayer: 1, toLayer: 12, body: [], bodyArea: 0, beads, thinPlaces: [] },
    { fromLayer: 13, toLayer: 20, body: [], bodyArea: 0, beads: beads.slice(0, 3), thinPlaces: [] },
  ],
  volume: 0,
}

export const inventedOrigin: MachineOrigin = { x: 2, y: 0.5, z: 0.1, turn: 0.2 }

/** An invented lift of layers 3 to 16 over a change of plan, placed askew in the machine. */
export function inventedLift(change: Partial<LiftFile> = {}): LiftFile {
  const machine: Machine = change.machine ?? machineProfile('gantry-12')!
  const options = change.options ?? { speed: 0.15, origin: inventedOrigin }
  return {
    job: 'Invented house',
    lift: 'A1',
    machine,
    options,
    routes: routeSection(inventedBands, machine, options).routes,
    fromLayer: 3,
    toLayer: 16,
    holds: [{ afterLayer: 6, duration: 900, reason: 'lintel', ref: 'L1' }],
    calls: [{ id: 'E1', trade: 'electrical', what: 'box', wall: 'W1', layerIn: 5, layerOut: 9 }],
    ...change,
  }
}
