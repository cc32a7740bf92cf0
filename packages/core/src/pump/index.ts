export type { Hose, ShearedMix } from './bingham-pipe.js'
export { binghamFlow, binghamPressure, wallStress } from './bingham-pipe.js'
export type { LinePressure, Pumping } from './check-pumping.js'
export { checkPumping, linePressure } from './check-pumping.js'
export type { SpeedWindow } from './flow-window.js'
export { speedWindow } from './flow-window.js'
export { formulas } from './formulas.js'
export type { AggregateShape, StoppedHose } from './hose.js'
export {
  aggregateMost,
  ROTOR_STATOR_AGGREGATE,
  residenceTime,
  risePressure,
  stoppedHoseTemperature,
} from './hose.js'
export type { SlipLayer } from './lubricated-pipe.js'
export { lubricatedPressure } from './lubricated-pipe.js'
