import type { Machine } from './machine.js'

const litresPerMinute = 1 / 60000
const degrees = Math.PI / 180

/** A gantry over a small house: 12 × 10 × 4 m, one tangential axis. All values invented, of common order. */
const gantry12: Machine = {
  name: 'gantry-12',
  reach: { x: [0, 12], y: [0, 10], z: [0, 4] },
  keepOut: [],
  printSpeedMost: 0.25,
  travelSpeed: 0.4,
  liftSpeed: 0.1,
  acceleration: 0.5,
  cornerDeviation: 0.002,
  headingRate: 90 * degrees,
  headingAcceleration: 180 * degrees,
  headingTravel: 540 * degrees,
  travelClearance: 0.06,
  pump: {
    flowLeast: 2 * litresPerMinute,
    flowMost: 22 * litresPerMinute,
    startLag: 0.6,
    stopLag: 0.4,
    pressureMost: 3e6,
    settingPerFlow: 10 / litresPerMinute,
  },
  words: { rotary: 'C', pumpOn: 'M3', units: 'G21' },
}

/** The same way of building over a larger plot: 28 × 14 × 8 m; heavier, so slower to pick up speed. */
const gantry28: Machine = {
  ...gantry12,
  name: 'gantry-28',
  reach: { x: [0, 28], y: [0, 14], z: [0, 8] },
  printSpeedMost: 0.2,
  acceleration: 0.3,
  headingTravel: 720 * degrees,
  pump: { ...gantry12.pump, flowLeast: 4 * litresPerMinute, flowMost: 40 * litresPerMinute },
}

/** The small gantry with a round nozzle: nothing to turn, no smoothing plates. */
const gantry12Round: Machine = {
  ...gantry12,
  name: 'gantry-12-round',
  headingRate: 0,
  headingAcceleration: 0,
  headingTravel: 0,
}

/** Profiles to start from. Every value belongs to nobody's machine: measure your own and overwrite. */
export const machineProfiles: readonly Machine[] = [gantry12, gantry28, gantry12Round]

export const machineProfile = (name: string): Machine | undefined =>
  machineProfiles.find(profile => profile.name === name)
