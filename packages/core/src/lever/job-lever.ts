import { sayLever } from '../campaign/index.js'
import type { Units } from '../limit/index.js'
import { assert } from '../result/index.js'

export type JobLeverKind =
  | 'earlier-start'
  | 'night-start'
  | 'longer-shift'
  | 'second-crew'
  | 'chilled-water'
  | 'ice'
  | 'silo-shade'
  | 'accelerator'
  | 'faster-nozzle'
  | 'slower-pace'
  | 'wider-bead'
  | 'other-sections'
  | 'taller-lift'

/** One thing the lead could change about the whole job, with its setting in the unit of `jobLeverFacts`. */
export interface JobLever {
  readonly kind: JobLeverKind
  readonly setting: number
}

export interface JobLeverFacts {
  readonly unit: string
  /** What the lever takes for granted and where that comes from. */
  readonly assumes: string
  /** What has to be settled before it is pulled; nothing for plain changes of the plan. */
  readonly first?: string
  /** What it needs that the job's rates do not price. */
  readonly unpriced?: string
}

/** In the order a lead asks for them. */
export const jobLeverFacts: Readonly<Record<JobLeverKind, JobLeverFacts>> = {
  'earlier-start': {
    unit: 's',
    assumes: 'the day begins earlier and ends as before; the shift is no longer',
    first: 'permitted hours of the place',
  },
  'night-start': {
    unit: 'h',
    assumes: 'a day as long as before that begins in the evening; light enough to work by',
    first: 'permitted hours of the place; lights; pay for night work',
    unpriced: 'lights and night pay',
  },
  'longer-shift': {
    unit: 's',
    assumes: 'the same crew, longer; rests between shifts as the job has them',
    first: 'the law on working hours',
  },
  'second-crew': {
    unit: 'crews',
    assumes:
      'crews follow one another at one machine, each for the job’s longest shift; half an hour of both at a handover',
    first: 'a second trained crew',
  },
  'chilled-water': {
    unit: '°C',
    assumes: 'a chiller that keeps up with the flow of mix; water as cold as that at the mixer',
    unpriced: 'the chiller',
  },
  ice: {
    unit: '%',
    assumes: 'so much of the mixing water as flake ice that melts wholly in the mixer [ACI305-2010]',
    first: 'a mixer that takes ice',
    unpriced: 'the ice',
  },
  'silo-shade': {
    unit: '%',
    assumes: 'a roof keeps the beam of the sun off the silo; light of sky and ground stays (derived)',
    unpriced: 'the shade',
  },
  accelerator: {
    unit: '%',
    assumes:
      'the mix stiffens faster by so much from the nozzle on, and its open time and tested rest shorten in proportion; cost of the material up by 8 % (assumption, no source)',
    first: 'the dosed mix tested like a new one; accelerators burn skin and eyes: gloves and goggles',
  },
  'faster-nozzle': {
    unit: 'mm/s',
    assumes: 'routes run anew by the machine’s own limits',
    first: 'a trial bead at that speed',
  },
  'slower-pace': { unit: '%', assumes: 'the nozzle slower, routes run anew' },
  'wider-bead': {
    unit: 'mm',
    assumes: 'walls as thick as before, beads laid and routes run anew',
    first: 'a nozzle of that width; clearances of what lies in the cavity',
    unpriced: 'the nozzle',
  },
  'other-sections': {
    unit: 'sections',
    assumes: 'divided anew, beads laid and routes run anew',
    first: 'what its joints do to the look and to the engineer’s shear walls',
  },
  'taller-lift': {
    unit: 'm',
    assumes: 'the height rule alone is relaxed; standing is asked for as before',
    first: 'permission of the engineer and of the inspector',
  },
}

export const jobLeverKinds = Object.keys(jobLeverFacts) as readonly JobLeverKind[]

export const isJobLeverKind = (kind: string): kind is JobLeverKind => kind in jobLeverFacts

/** A lever with its setting, as it stands in a table. */
export function sayJobLever({ kind, setting }: JobLever, units: Units): string {
  switch (kind) {
    case 'second-crew':
      return `${setting} crews in turn`
    case 'ice':
      return `${setting} % of the water as ice`
    case 'silo-shade':
      return `shade on the silo, ${setting} % of its gain left`
    case 'accelerator':
      return `an accelerator, ${setting} % faster`
    case 'wider-bead':
      return `a bead ${units === 'imperial' ? `${(setting / 25.4).toFixed(2)} in` : `${setting} mm`} wide`
    case 'other-sections':
      return setting === 1 ? 'one section' : `${setting} sections`
    default:
      return sayLever({ kind, setting }, units)
  }
}

/** Levers side by side. */
export function sayJobLevers(levers: readonly JobLever[], units: Units): string {
  assert(levers.length > 0, 'there is a lever to name')
  return levers.map(lever => sayJobLever(lever, units)).join(' and ')
}
