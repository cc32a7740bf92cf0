import type { Formula } from '../formula/index.js'
import { riseRate } from './bead-flow.js'

const mm = 1e-3

/** What `calc` offers about the pace of printing; beads and flow are with the wall, motion with the machine. */
export const formulas: readonly Formula[] = [
  {
    name: 'rise-rate',
    says: 'How fast a wall rises at a layer height and layer time.',
    inputs: [
      { name: 'height', unit: 'mm', meaning: 'layer height, mm', least: 0, example: 20 },
      { name: 'layer-time', unit: 's', meaning: 'one layer with its stops, s', least: 1e-9, example: 300 },
    ],
    output: { name: 'rate', unit: 'm/h' },
    source: 'closed form',
    caution: 'How high the green wall may rise is a matter of standing, not of speed alone.',
    calculate: given => riseRate((given.height ?? Number.NaN) * mm, given['layer-time'] ?? Number.NaN) * 3600,
  },
]
