export { checkStation, checkWeather, distanceBetween, stationReach, weatherRange } from './check-weather.js'
export type { ClearAir, Irradiance } from './clear-sky.js'
export {
  airMass,
  cloudTransmission,
  diffuseShare,
  haurwitzGlobal,
  skyTemperature,
  solisSky,
  splitGlobal,
} from './clear-sky.js'
export type { ClimateNormals, MonthNormals, SkyNormals } from './climate-normals.js'
export { checkNormals, normalsRange } from './climate-normals.js'
export { climateOfHours } from './climate-of-hours.js'
export { cloudsUnder } from './cloud-cover.js'
export type { CoolingHour, CoolingNeed } from './cooling.js'
export { coolingNeed } from './cooling.js'
export { checkCoverage } from './coverage.js'
export type { CrewHour, WorkLoad } from './crew-heat.js'
export {
  crewHeat,
  metabolicRates,
  RESTING_RATE,
  screeningShare,
  wbgtLimit,
  wbgtReference,
  windChill,
  workShare,
} from './crew-heat.js'
export {
  closingBetween,
  crossingBetween,
  limitInUse,
  type OpenSpan,
  openingBetween,
  openSpans,
} from './crossing.js'
export { airByDay, airByNight, clearShare, gustOf, sunOfHour, sunriseClock, windOfDay } from './day-curve.js'
export type { DayNormals } from './day-normals.js'
export { dayNormals } from './day-normals.js'
export { type CrewWork, type DayWeather, dayWeather } from './day-weather.js'
export type { Daylight } from './daylight.js'
export { CIVIL_DEGREES, daylight, RISEN_DEGREES, solarNoonNear } from './daylight.js'
export type { DryingAir } from './evaporation.js'
export {
  evaporationMenzel,
  evaporationPerHour,
  evaporationRange,
  evaporationThresholds,
  evaporationUnrounded,
  latentHeat,
  windAtHeight,
} from './evaporation.js'
export type { FaceSun } from './face-irradiance.js'
export { faceBearing, faceIrradiance, incidenceCosine } from './face-irradiance.js'
export { formulas } from './formulas.js'
export type { WorkAir } from './heat-stress.js'
export { globeTemperature, heatIndex, naturalWetBulb, wbgtFromAir, wbgtOutdoors } from './heat-stress.js'
export type { ReplayedYear, WeatherHistory } from './history-years.js'
export { replayYears } from './history-years.js'
export type { HourColumns, PrintConditions } from './hour-columns.js'
export { hourColumns, sinesOfSun, supplyOf } from './hour-columns.js'
export { hoursBetween } from './hours-between.js'
export { localClocks } from './local-clocks.js'
export type { SourceSpan } from './merge-hours.js'
export { alignHours, mergeHours, sourceRank, sourceSpans } from './merge-hours.js'
export type { Batch, Supply, SupplyHour } from './mix-temperature.js'
export {
  batchTemperature,
  chilledWater,
  chillerPower,
  DRY_HEAT,
  hoseRun,
  ICE_COLD,
  iceForTarget,
  iceShareMost,
  nozzleLine,
  nozzleTemperature,
  outdoorFilm,
  sunOnCylinder,
  waterFlow,
  waterForTarget,
} from './mix-temperature.js'
export type { Unrest } from './normals-hours.js'
export { hoursFromNormals, replayNormals, usualUnrest } from './normals-hours.js'
export type { CompletedHours, Observation } from './observation.js'
export { completeHours } from './observation.js'
export { closedBy, printHourAt, printHours } from './print-hour.js'
export {
  dewPoint,
  humidityFromDewPoint,
  humidityRatio,
  humidityRatioFromWetBulb,
  KELVIN,
  moistAirEnthalpy,
  moistAirVolume,
  psychrometricRange,
  saturationPressure,
  saturationSlope,
  standardPressure,
  vapourPressureOf,
  wetBulb,
  wetBulbQuick,
} from './psychrometrics.js'
export type { RainSpell } from './rain-spell.js'
export { rainInHour, spellsByChance, spellsByExpectation } from './rain-spell.js'
export { isShaded, type Neighbour, openSky, shadeHeight, sunlitShare } from './shade.js'
export type { Silo } from './silo.js'
export { shadeLeaves, siloGainOf, siloTemperatures, siteSilo, underShade } from './silo.js'
export type { HourSource, PrintHour, WeatherHour } from './site-hour.js'
export { solAir } from './sol-air.js'
export type { SunOfDay, SunPosition } from './sun.js'
export { extraterrestrialBeam, hourAngle, refraction, solarPosition, sunOfDay, sunTrack } from './sun.js'
