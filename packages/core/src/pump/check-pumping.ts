import type { Batching } from '../job/index.js'
import { sayQuantity, type Units } from '../limit/index.js'
import type { Machine } from '../machine/index.js'
import { ageFactor, type MixModel } from '../mix/index.js'
import type { Celsius, CubicMetresPerSecond, Metres } from '../quantity/index.js'
import type { Finding, Verdict } from '../result/index.js'
import { binghamPressure, type Hose } from './bingham-pipe.js'
import {
  type AggregateShape,
  aggregateMost,
  ROTOR_STATOR_AGGREGATE,
  residenceTime,
  risePressure,
} from './hose.js'
import { lubricatedPressure } from './lubricated-pipe.js'

/** A line from pump to nozzle as the job would run it. */
export interface Pumping {
  readonly machine: Machine
  readonly mix: MixModel
  readonly batching: Pick<Batching, 'hoseLength' | 'hoseDiameter'>
  readonly flow: CubicMetresPerSecond
  /** Nozzle at its highest above the pump. */
  readonly rise: Metres
  /** Mix in the hose. */
  readonly temperature: Celsius
  readonly shape?: AggregateShape
  /** Of the words; metric unless said. */
  readonly units?: Units
}

/** Pressure the line needs, between slip on paste and shear of the whole mix, rise included. */
export interface LinePressure {
  readonly slipping: number
  readonly shearing: number
}

export function linePressure({ mix, batching, flow, rise }: Omit<Pumping, 'machine'>): LinePressure {
  const hose = hoseOf(batching)
  const sheared = { yield: mix.pumping?.yield ?? mix.fitted.yield.start, viscosity: mix.plasticViscosity }
  const lift = risePressure(mix.density, rise)
  const shearing = binghamPressure(hose, sheared, flow) + lift
  const { pumping } = mix
  if (!pumping) return { slipping: shearing, shearing }
  const layer = { yield: pumping.slipYield, viscosity: pumping.slipViscosity }
  return { slipping: Math.min(shearing, lubricatedPressure(hose, layer, sheared, flow) + lift), shearing }
}

/** What speaks against pumping this mix through this hose: pressure, grain, time in the hose. */
export const checkPumping = (line: Pumping): Finding[] => [
  pressureFinding(line),
  hoseGrainFinding(line),
  pumpGrainFinding(line),
  openTimeFinding(line),
]

/** The pressure at the pump may reach this many times the slipping one in bends, reducers and an ageing mix. */
const RESERVE = 2

/** Slip is what a primed hose does; full shear is what a dry one comes to, told but not judged by: few pumps have it. */
function pressureFinding(line: Pumping): Finding {
  const { slipping, shearing } = linePressure(line)
  const most = line.machine.pump.pressureMost
  const said = (pressure: number) => sayQuantity(pressure / 1e5, 'bar', line.units ?? 'metric')
  const verdict: Verdict = slipping > most ? 'fail' : RESERVE * slipping > most ? 'warn' : 'pass'
  const advice = {
    fail: 'Shorten the hose, take the next diameter, or print slower.',
    warn: 'Little is left for bends and a stop: watch the gauge.',
    pass: 'Prime the hose with slurry, or it will not slip.',
  }[verdict]
  return {
    check: 'pump-pressure',
    at: line.machine.name,
    demand: slipping,
    capacity: most,
    unit: 'Pa',
    source: '[Kaplan2000]; reserve of two: common practice, no source',
    verdict,
    say: `The hose needs about ${said(slipping)} while the mix slips on paste (${said(shearing)} if it sheared whole); the pump gives ${said(most)}. ${advice} A blocked hose under pressure injures: release it before opening, stand clear of couplings.`,
  }
}

function hoseGrainFinding({ machine, mix, batching, shape, units }: Pumping): Finding {
  const said = (size: Metres) => sayQuantity(size * 1000, 'mm', units ?? 'metric')
  const most = aggregateMost(batching.hoseDiameter, shape ?? 'angular')
  const fits = mix.aggregate <= most
  return {
    check: 'hose-aggregate',
    at: machine.name,
    demand: mix.aggregate,
    capacity: most,
    unit: 'm',
    source: '[ACI304-2R]',
    verdict: fits ? 'pass' : 'fail',
    say: `Grain of ${said(mix.aggregate)} in a hose of ${said(batching.hoseDiameter)}, at most ${said(most)} ${fits ? 'passes' : 'may pass: it will block. Take a wider hose or sieve'}.`,
  }
}

function pumpGrainFinding({ machine, mix, units }: Pumping): Finding {
  const said = (size: Metres) => sayQuantity(size * 1000, 'mm', units ?? 'metric')
  const fits = mix.aggregate <= ROTOR_STATOR_AGGREGATE
  return {
    check: 'pump-aggregate',
    at: machine.name,
    demand: mix.aggregate,
    capacity: ROTOR_STATOR_AGGREGATE,
    unit: 'm',
    source: 'common practice, no source',
    verdict: fits ? 'pass' : 'warn',
    say: `Grain of ${said(mix.aggregate)}; a rotor-stator pump carries about ${said(ROTOR_STATOR_AGGREGATE)}${fits ? '' : ', coarser grain wears and jams it: ask the maker, or use a piston pump'}.`,
  }
}

function openTimeFinding({ machine, mix, batching, flow, temperature, units }: Pumping): Finding {
  const demand = residenceTime(hoseOf(batching), flow) * ageFactor(temperature, mix)
  const share = demand / mix.openTime
  return {
    check: 'hose-open-time',
    at: machine.name,
    demand,
    capacity: mix.openTime,
    unit: 's',
    source: mix.sources?.openTime ?? mix.provenance,
    verdict: share > 1 ? 'fail' : share > 0.5 ? 'warn' : 'pass',
    say: `The mix is in the hose for ${minutes(demand)} (counted at ${sayQuantity(mix.reference, '°C', units ?? 'metric')}) of its ${minutes(mix.openTime)} open time${
      share > 0.5 ? '; a stop longer than the rest means a blocked hose' : ''
    }.`,
  }
}

const hoseOf = ({ hoseLength, hoseDiameter }: Pumping['batching']): Hose => ({
  length: hoseLength,
  diameter: hoseDiameter,
})

const minutes = (seconds: number): string => `${(seconds / 60).toFixed(1)} min`
