import { sayQuantity, type Units } from '../limit/index.js'
import type { Metres, MetresPerSecond, Pascals } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { materialWidth } from './make-up.js'
import { GRAVITY } from './members.js'
import type { StandMake } from './stand-geometry.js'
import { crackingPressure, overturningPressure, windPressure, windSpeedOfPressure } from './wind.js'

/** A stretch of wall in the wind, with nothing bracing it. */
export interface WindyWall {
  readonly place: string
  readonly make: StandMake
  readonly density: number
  /** `green`: the lift over yesterday's wall, no bond in its foot; `hard`: all of the wall over the slab, unbraced. */
  readonly state: 'green' | 'hard'
  /** Of the lift, or of the whole wall. */
  readonly height: Metres
  /** Tension a hard joint may bear [Pa]; a licensed engineer says how much. Not used for a green wall. */
  readonly jointTension: Pascals
}

/** Force coefficient of a free-standing wall near its ends and the safety on pressure, as the job has them. */
export interface WindRules {
  readonly coefficient: number
  readonly safety: number
}

/**
 * Gust the wall bears with its safety [m/s]: the first of tipping over its edge and, once hard, cracking its foot joint.
 * A hard wall tips only when its joint has cracked, so the better of the two counts.
 */
export function windSpeedBorne(wall: WindyWall, { coefficient, safety }: WindRules): MetresPerSecond {
  const size = {
    height: wall.height,
    thickness: wall.make.thickness,
    solidWidth: materialWidth(wall.make),
    weight: wall.density * GRAVITY,
  }
  const tips = overturningPressure(size)
  const cracks = crackingPressure({ ...size, sectionModulus: sectionModulus(wall.make) }, wall.jointTension)
  const borne = wall.state === 'green' ? tips : Math.max(tips, cracks)
  return windSpeedOfPressure(borne / safety, coefficient)
}

/** Section modulus per metre of wall about its middle; of a double wall the two wythes only [m²]. */
export function sectionModulus(make: StandMake): number {
  if (make.kind === 'leaf') return make.thickness ** 2 / 6
  const spacing = make.thickness - make.bead
  return (2 * (make.bead ** 3 / 12 + make.bead * (spacing / 2) ** 2)) / (make.thickness / 2)
}

/** The verdict on a wall in a gust. */
export function checkWind(
  wall: WindyWall,
  gust: MetresPerSecond,
  rules: WindRules,
  units: Units = 'metric',
): Finding {
  const borne = windSpeedBorne(wall, rules)
  const words = wall.state === 'green' ? 'green lift' : 'unbraced wall'
  return {
    check: `wind-${wall.state}`,
    at: wall.place,
    demand: gust,
    capacity: borne,
    unit: 'm/s',
    source: '[ASCE7]',
    verdict: gust <= 0.8 * borne ? 'pass' : gust <= borne ? 'warn' : 'fail',
    say:
      `The ${words} of ${sayQuantity(wall.height, 'm', units)} bears gusts of ${sayQuantity(borne, 'm/s', units)} ` +
      `(${sayQuantity(windPressure(borne, rules.coefficient), 'N/m²', units)}, safety ${rules.safety} on pressure taken off); expected ${sayQuantity(gust, 'm/s', units)}. ` +
      'Screening only: brace it or keep everyone out of its fall, and let a licensed engineer and local codes decide.',
  }
}
