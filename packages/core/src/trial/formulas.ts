import type { Formula, FormulaInput } from '../formula/index.js'
import { beadWidth, flowForBead } from './bead-trial.js'
import { cornerWidening } from './corner-trial.js'

const fill: FormulaInput = {
  name: 'fill',
  unit: '',
  meaning: 'section of the bead over pumped flow over speed, by your trials; 1 if not tried',
  least: 0.5,
  most: 1.5,
  example: 0.95,
}
const flow: FormulaInput = { name: 'flow', unit: 'L/min', meaning: 'pumped', least: 0, example: 8 }
const speed: FormulaInput = { name: 'speed', unit: 'mm/s', meaning: 'of the nozzle', least: 1, example: 150 }
const width: FormulaInput = { name: 'width', unit: 'mm', meaning: 'of the bead', least: 1, example: 50 }
const height: FormulaInput = { name: 'height', unit: 'mm', meaning: 'of the layer', least: 1, example: 20 }
const caution = 'Beads of one day scatter: `dawnlift trials` tells by how much.'

/** What `calc` offers about beads on trial. */
export const formulas: readonly Formula[] = [
  {
    name: 'bead-width',
    says: 'Width of the bead that a flow and a speed lay: f·Q/(v·h) + h(1 − π/4)',
    inputs: [fill, flow, speed, height],
    output: { name: 'width', unit: 'mm' },
    source: 'closed form',
    caution,
    calculate: given =>
      beadWidth(
        of(given, 'fill'),
        of(given, 'flow') / 60_000,
        of(given, 'speed') / 1000,
        metres(given, 'height'),
      ) * 1000,
  },
  {
    name: 'bead-pump-flow',
    says: 'Flow to pump for a bead at a speed: A·v/f',
    inputs: [fill, width, height, speed],
    output: { name: 'flow', unit: 'L/min' },
    source: 'closed form',
    caution,
    calculate: given =>
      flowForBead(
        of(given, 'fill'),
        metres(given, 'width'),
        metres(given, 'height'),
        of(given, 'speed') / 1000,
      ) * 60_000,
  },
  {
    name: 'corner-widening',
    says: 'Times wider a bead comes out where the nozzle is slow: (v/v₀)^−s',
    inputs: [
      {
        name: 'share',
        unit: '%',
        meaning: 'corner speed over straight speed',
        least: 5,
        most: 100,
        example: 50,
      },
      {
        name: 'swelling',
        unit: '',
        meaning: 's by your trials: 0 the pump follows, 1 it does not',
        least: 0,
        most: 1,
        example: 0.5,
      },
    ],
    output: { name: 'widening', unit: '' },
    source: 'closed form',
    caution: 'Holds for the slow-downs tried.',
    calculate: given => cornerWidening(of(given, 'share') / 100, of(given, 'swelling')),
  },
]

const of = (given: Readonly<Record<string, number>>, name: string): number => given[name] ?? Number.NaN
const metres = (given: Readonly<Record<string, number>>, name: string): number => of(given, name) / 1000
