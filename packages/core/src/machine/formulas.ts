import type { Formula } from '../formula/index.js'
import { arcSpeed, cornerSpeed, jerkTime, trapezoidTime, turnTime } from './motion.js'
import { pumpSetting } from './pump-words.js'

const mm = 1e-3
const degrees = Math.PI / 180
const closedForm = 'closed form'

const distance = { name: 'distance', unit: 'mm', meaning: '0.001 m', least: 0, example: 1000 }
const speed = { name: 'speed', unit: 'mm/s', meaning: '0.001 m/s', least: 1e-9, example: 200 }
const acceleration = {
  name: 'acceleration',
  unit: 'mm/s²',
  meaning: '0.001 m/s²',
  least: 1e-9,
  example: 500,
}

/** What `calc` offers about motion. Inputs are checked against their ranges before they arrive here. */
export const formulas: readonly Formula[] = [
  {
    name: 'move-time',
    says: 'Time of one straight move from rest to rest with limited acceleration.',
    inputs: [distance, speed, acceleration],
    output: { name: 'time', unit: 's' },
    source: closedForm,
    calculate: given =>
      trapezoidTime({
        distance: of(given, 'distance') * mm,
        speed: of(given, 'speed') * mm,
        acceleration: of(given, 'acceleration') * mm,
      }),
  },
  {
    name: 'move-time-jerk',
    says: 'Time of one straight move from rest to rest with limited acceleration and jerk.',
    inputs: [
      distance,
      speed,
      acceleration,
      { name: 'jerk', unit: 'mm/s³', meaning: '0.001 m/s³', least: 1e-9, example: 2000 },
    ],
    output: { name: 'time', unit: 's' },
    source: closedForm,
    caution: 'Layers are timed without a jerk limit; each stop can take up to acceleration / jerk longer.',
    calculate: given =>
      jerkTime({
        distance: of(given, 'distance') * mm,
        speed: of(given, 'speed') * mm,
        acceleration: of(given, 'acceleration') * mm,
        jerk: of(given, 'jerk') * mm,
      }),
  },
  {
    name: 'corner-speed',
    says: 'Speed through a corner that may be rounded by a small deviation.',
    inputs: [
      {
        name: 'angle',
        unit: 'deg',
        meaning: 'between the legs, 180 straight on',
        least: 0,
        most: 180,
        example: 90,
      },
      { name: 'deviation', unit: 'mm', meaning: '0.001 m', least: 0, example: 0.5 },
      acceleration,
    ],
    output: { name: 'speed', unit: 'mm/s' },
    source: closedForm,
    calculate: given =>
      cornerSpeed(of(given, 'angle') * degrees, of(given, 'deviation') * mm, of(given, 'acceleration') * mm) /
      mm,
  },
  {
    name: 'arc-speed',
    says: 'Speed on an arc that sideways acceleration and the heading axis allow.',
    inputs: [
      { name: 'radius', unit: 'mm', meaning: '0.001 m', least: 1e-9, example: 100 },
      acceleration,
      {
        name: 'heading-rate',
        unit: 'deg/s',
        meaning: 'π/180 rad/s; 0 for a round nozzle',
        least: 0,
        example: 90,
      },
    ],
    output: { name: 'speed', unit: 'mm/s' },
    source: closedForm,
    calculate: given =>
      arcSpeed(
        of(given, 'radius') * mm,
        of(given, 'acceleration') * mm,
        of(given, 'heading-rate') * degrees,
      ) / mm,
  },
  {
    name: 'turn-time',
    says: 'Time to turn the nozzle on the spot at a sharp corner.',
    inputs: [
      { name: 'angle', unit: 'deg', meaning: 'π/180 rad', least: 0, example: 90 },
      { name: 'rate', unit: 'deg/s', meaning: 'π/180 rad/s', least: 1e-9, example: 90 },
      { name: 'turn-acceleration', unit: 'deg/s²', meaning: 'π/180 rad/s²', least: 1e-9, example: 180 },
    ],
    output: { name: 'time', unit: 's' },
    source: closedForm,
    caution: 'The pump has to stop meanwhile or the bead blobs.',
    calculate: given =>
      turnTime(
        of(given, 'angle') * degrees,
        of(given, 'rate') * degrees,
        of(given, 'turn-acceleration') * degrees,
      ),
  },
  {
    name: 'pump-setting',
    says: 'S word that makes the pump give a flow: idle + slope·flow.',
    inputs: [
      { name: 'flow', unit: 'L/min', meaning: 'of mix', least: 0, example: 8 },
      { name: 'slope', unit: 'S per L/min', meaning: 'by your pump trials', least: 1e-9, example: 10 },
      { name: 'idle', unit: '', meaning: 'S at which it begins to deliver', example: 15 },
    ],
    output: { name: 'setting', unit: 'S' },
    source: 'closed form',
    caution: 'Rotor and stator wear: weigh a minute of output again each week.',
    calculate: given =>
      pumpSetting(
        { pump: { settingPerFlow: of(given, 'slope') * 60_000, settingIdle: of(given, 'idle') } },
        of(given, 'flow') / 60_000,
      ),
  },
]

const of = (given: Readonly<Record<string, number>>, name: string): number => given[name] ?? Number.NaN
