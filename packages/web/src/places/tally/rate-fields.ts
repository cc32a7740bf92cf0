import type { Field } from '../fields/index.js'

const rate = (name: string, label: string): Field => ({
  path: ['costs', name],
  label,
  kind: { kind: 'number' },
})

/** What the lead pays for what, in the job's currency. */
export const rateFields: readonly Field[] = [
  { path: ['costs', 'currency'], label: 'Currency', kind: { kind: 'text' } },
  rate('machinePerDay', 'Machine, a day'),
  rate('crewPerHour', 'Each of the crew, an hour'),
  rate('materialPerTonne', 'Dry material, a tonne'),
  rate('waterPerCubicMetre', 'Water, a cubic metre'),
  rate('pourPerCubicMetre', 'Poured concrete, a cubic metre'),
  rate('protectionPerSquareMetre', 'Protection, a square metre'),
  rate('mobilisation', 'Getting there and back'),
  rate('embedEach', 'An embed'),
  rate('lintelEach', 'A lintel'),
  rate('conventionalPerSquareMetre', 'The same wall as usual, a square metre'),
]
