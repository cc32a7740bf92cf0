import type { Formula } from '../formula/index.js'
import { beadArea, beadContact, beadPerimeter, fillPitch } from './bead-section.js'

const millimetre = 1e-3
const width = { name: 'width', unit: 'mm', meaning: 'bead width, mm', least: 1, example: 50 }
const height = {
  name: 'height',
  unit: 'mm',
  meaning: 'layer height, at most the width, mm',
  least: 1,
  example: 15,
}
const source = '[BeadStadium]'
const caution = 'Stacked beads squash towards rectangles: weigh a printed metre before ordering by it.'
const sized = (inputs: Readonly<Record<string, number>>) =>
  [(inputs.width ?? NaN) * millimetre, (inputs.height ?? NaN) * millimetre] as const

/** The wall formulas of the registry. */
export const formulas: readonly Formula[] = [
  {
    name: 'bead-area',
    says: 'Cross-section of a bead with flat top and bottom and half-round sides: h(w − h) + πh²/4',
    inputs: [width, height],
    output: { name: 'area', unit: 'mm²' },
    source,
    caution,
    calculate: inputs => beadArea(...sized(inputs)) * 1e6,
  },
  {
    name: 'bead-contact',
    says: 'Width over which a bead rests on the one below: w − h',
    inputs: [width, height],
    output: { name: 'contact width', unit: 'mm' },
    source,
    caution,
    calculate: inputs => beadContact(...sized(inputs)) * 1e3,
  },
  {
    name: 'bead-perimeter',
    says: 'Length round the section of a bead: 2(w − h) + πh',
    inputs: [width, height],
    output: { name: 'perimeter', unit: 'mm' },
    source,
    caution,
    calculate: inputs => beadPerimeter(...sized(inputs)) * 1e3,
  },
  {
    name: 'fill-pitch',
    says: 'Distance between parallel beads that fill a solid wall without gap or excess: w − h(1 − π/4)',
    inputs: [width, height],
    output: { name: 'pitch', unit: 'mm' },
    source,
    caution,
    calculate: inputs => fillPitch(...sized(inputs)) * 1e3,
  },
  {
    name: 'bead-flow',
    says: 'What the pump must give: area of the bead times speed',
    inputs: [
      width,
      height,
      { name: 'speed', unit: 'mm/s', meaning: 'nozzle speed, mm/s', least: 0, example: 150 },
    ],
    output: { name: 'flow', unit: 'L/min' },
    source,
    caution,
    calculate: inputs => beadArea(...sized(inputs)) * (inputs.speed ?? NaN) * millimetre * 60_000,
  },
]
