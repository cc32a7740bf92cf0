export { formulas } from './formulas.js'
export { type MachineFrame, type MachineOrigin, machineFrame, machinePoint, sameFrame } from './frame.js'
export type { Laying, Machine } from './machine.js'
export {
  arcSpeed,
  cornerRadius,
  cornerSpeed,
  jerkTime,
  peakSpeed,
  type SpeedRamp,
  trapezoidTime,
  turnTime,
} from './motion.js'
export { machineProfile, machineProfiles } from './profiles.js'
export { pumpFlow, pumpOffWord, pumpOnWords, pumpSetting } from './pump-words.js'
