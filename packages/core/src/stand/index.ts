export { standGeometry } from './derive-geometry.js'
export type { StandGeometry, StandMake, StandPanel, StandSupports } from './stand-geometry.js'
export { makeStanding, type Standing, type StandingInput } from './standing.js'
export type { StrengthRule } from './strength.js'
