import type { Formula, FormulaInput } from '../formula/index.js'
import { beadFlow, beadSection, fillPitch, riseRate } from './bead-flow.js'

const mm = 1e-3
const mm2 = 1e-6
const litresPerMinute = 1 / 60000

const width: FormulaInput = { name: 'width', unit: 'mm', meaning: '0.001 m', least: 0, example: 50 }
const height: FormulaInput = {
  name: 'height',
  unit: 'mm',
  meaning: '0.001 m, not above the width',
  least: 0,
  example: 15,
}
const caution = 'Stacked beads squash towards rectangles: weigh a metre of wall before ordering.'

/** What `calc` offers about beads and their flow. */
export const formulas: readonly Formula[] = [
  {
    name: 'bead-section',
    says: 'Area of a bead with flat top and bottom and half-round sides.',
    inputs: [width, height],
    output: { name: 'area', unit: 'mm2' },
    source: 'closed form',
    caution,
    calculate: given => beadSection(sizeOf(given)) / mm2,
  },
  {
    name: 'bead-flow',
    says: 'Pump flow that lays a bead at a nozzle speed.',
    inputs: [width, height, { name: 'speed', unit: 'mm/s', meaning: '0.001 m/s', least: 0, example: 150 }],
    output: { name: 'flow', unit: 'L/min' },
    source: 'closed form',
    caution,
    calculate: given => beadFlow(sizeOf(given), of(given, 'speed') * mm) / litresPerMinute,
  },
  {
    name: 'fill-pitch',
    says: 'Spacing of parallel beads that fills a solid wall without gaps.',
    inputs: [width, height],
    output: { name: 'pitch', unit: 'mm' },
    source: 'closed form',
    calculate: given => fillPitch(sizeOf(given)) / mm,
  },
  {
    name: 'rise-rate',
    says: 'How fast a wall rises at a layer height and layer time.',
    inputs: [height, { name: 'layer-time', unit: 's', meaning: '1 s', least: 1e-9, example: 300 }],
    output: { name: 'rate', unit: 'm/h' },
    source: 'closed form',
    caution: 'How high the green wall may rise is a matter of standing, not of speed alone.',
    calculate: given => riseRate(of(given, 'height') * mm, of(given, 'layer-time')) * 3600,
  },
]

const of = (given: Readonly<Record<string, number>>, name: string): number => given[name] ?? Number.NaN
const sizeOf = (given: Readonly<Record<string, number>>) => ({
  width: of(given, 'width') * mm,
  height: of(given, 'height') * mm,
})
