import type { MixTest } from './index.js'

/** Vane tests of an invented mortar: minutes, °C, Pa. Made from an exponential growth (900 Pa, 0.55 Pa/s, 2700 s at 20 °C, Q 4200 K) with 6 % scatter. */
const rows = [
  [5, 20, 986],
  [15, 20, 1381],
  [30, 20, 2452],
  [45, 20, 3495],
  [60, 20, 5612],
  [90, 20, 10_924],
  [5, 30, 1052],
  [20, 30, 2334],
  [40, 30, 4644],
  [60, 30, 12_903],
  [80, 30, 23_226],
  [10, 12, 1103],
  [40, 12, 2237],
  [70, 12, 3496],
  [100, 12, 5748],
] as const

export const vaneTests: readonly MixTest[] = rows.map(([minutes, temperature, stress], i) => ({
  kind: 'vane',
  at: `tests.csv:${i + 2}`,
  age: minutes * 60,
  temperature,
  stress,
}))

export const steadyTests = vaneTests.filter(test => test.temperature === 20)

/** Compression tests of the same mortar at 20 °C: minutes, kPa, kPa. */
export const compressionTests: readonly MixTest[] = (
  [
    [5, 1.9, 160],
    [12, 2.4, 205],
    [20, 3.0, 260],
    [32, 4.4, 385],
    [45, 6.3, 540],
    [60, 9.1, 730],
    [75, 13.4, 1010],
    [90, 19.8, 1400],
  ] as const
).map(([minutes, strength, stiffness], i) => ({
  kind: 'compression',
  at: `press.csv:${i + 2}`,
  age: minutes * 60,
  temperature: 20,
  strength: strength * 1000,
  stiffness: stiffness * 1000,
}))
