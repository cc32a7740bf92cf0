export type { Binder, Cement } from './cement.js'
export { activationOfCement, binderHeat, cementHeat, hydrationOfCement } from './cement.js'
export type { CellWall, FaceLaw } from './conduction.js'
export { cavityWall, conductionStep, faceFlux, faceTemperature, slabOf, stepRoom } from './conduction.js'
export type { Cover, CoverKind } from './cover.js'
export { covers } from './cover.js'
export type { CureCase } from './cure-case.js'
export { type CureJob, type CureOptions, cureLifts } from './cure-lifts.js'
export { type CurePlan, curePlan, FOLLOWED } from './cure-plan.js'
export type { CureStep } from './cure-steps.js'
export { type CureTables, cureTables } from './cure-tables.js'
export { type CureWords, cureWords } from './cure-words.js'
export type { FaceAir, FaceBalance } from './face-balance.js'
export { faceBalance, faceLaw } from './face-balance.js'
export { facePlaces, type ShadeCase, standingWalls } from './face-shade.js'
export { type Facing, facingsOf, type WallPiece } from './facings.js'
export { formulas } from './formulas.js'
export {
  COLD_AIR,
  checkCooling,
  checkFrost,
  coolingMost,
  heatingNeed,
  isColdWeather,
  leastKept,
} from './frost.js'
export {
  checkHeat,
  checkPlastic,
  checkWater,
  PEAK_MOST,
  PLASTIC_SCATTER,
  PLASTIC_WARM,
  WATER_SHOCK,
} from './heat-checks.js'
export type { Hydration } from './hydration.js'
export {
  adiabaticRise,
  hydrated,
  hydrationOf,
  hydrationPower,
  hydrationStore,
  ultimateHydration,
} from './hydration.js'
export type { Spell } from './maturity.js'
export { ageFactorDanish, ageFactorEurocode, nurseSaul } from './maturity.js'
export type { CureTarget, Milestone, MilestoneKind } from './milestones.js'
export { cureTargets, milestones } from './milestones.js'
export type { DryingAdvice } from './precautions.js'
export { dryingAdvice } from './precautions.js'
export { strengthShareAci, strengthShareEurocode } from './strength-curves.js'
export type { CoverSpan, WallHeatInput } from './wall-case.js'
export type { WallBuild } from './wall-cells.js'
export { CAVITY, CONDUCTIVITY, heatCapacity, wallCells } from './wall-cells.js'
export { wallHeat } from './wall-heat.js'
export type { Rewetting, WallHeat } from './wall-trace.js'
export { coldestOf, momentOfTraceAge, peakOf, steepestOf, traceAgeAt } from './wall-trace.js'
export type { WallPlace, WallWeather } from './wall-weather.js'
export { buildingFilm, cloudCovers, wallWeather, windFilm, windOfFilm } from './wall-weather.js'
export type { Wetting } from './wetting.js'
export { shortestRound, wettingRounds } from './wetting.js'
