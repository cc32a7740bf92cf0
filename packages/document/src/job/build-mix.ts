import {
  defaultMix,
  type MixModel,
  type PumpingModel,
  type StiffnessGrowth,
  scaleStiffness,
  scaleYield,
  type YieldGrowth,
} from '@dawnlift/core/mix'
import { type Dimension, formatQuantity, type Seconds } from '@dawnlift/core/quantity'
import { given } from './build-types.js'
import type { JobDocument } from './job-schema.js'
import type { Ledger } from './ledger.js'

type MixBlock = Exclude<JobDocument['mix'], 'default'>

/** The mix: the default one, overwritten by what the job says of it. */
export function buildMix(mix: JobDocument['mix'], units: 'metric' | 'imperial', ledger: Ledger): MixModel {
  const block: Partial<MixBlock> = mix === 'default' ? {} : mix
  noteDefaults(block, units, ledger)
  const { tests: _, yield: growth, stiffness, lowerShare, strength, bondTest, pumping, ...plain } = block
  const until = given({ until: plain.testedTo })
  const curves = {
    yield: held(growth && yieldOf(growth, ledger), until) ?? defaultMix.fitted.yield,
    stiffness: held(stiffness && stiffnessOf(stiffness), until) ?? defaultMix.fitted.stiffness,
  }
  const share = lowerShare ?? defaultMix.lowerShare ?? 1
  return {
    ...defaultMix,
    ...given(plain),
    ...(strength ? { strength } : {}),
    ...(bondTest ? { bondTest: { rest: bondTest.rest, source: bondTest.source ?? 'the job' } } : {}),
    ...(pumping ? { pumping: pumpingOf(pumping) } : {}),
    provenance: mix === 'default' ? 'default' : 'the job',
    fitted: curves,
    lower: { yield: scaleYield(curves.yield, share), stiffness: scaleStiffness(curves.stiffness, share) },
    lowerShare: share,
    sources: {
      ...defaultMix.sources,
      ...Object.fromEntries(Object.keys(given(block)).map(key => [key, 'the job'])),
    },
  }
}

/** The job's own growth ends where its tests do. */
const held = <T extends object>(growth: T | undefined, until: { readonly until?: Seconds }): T | undefined =>
  growth && { ...growth, ...until }

const pumpingOf = ({ slipLayer, ...yields }: NonNullable<MixBlock['pumping']>): PumpingModel => ({
  ...yields,
  slipViscosity: slipLayer.viscosity / slipLayer.thickness,
})

const stiffnessOf = ({ start, rate, bend }: NonNullable<MixBlock['stiffness']>): StiffnessGrowth => ({
  start,
  rate,
  bend: bend ?? 0,
})

function yieldOf(growth: NonNullable<MixBlock['yield']>, ledger: Ledger): YieldGrowth | undefined {
  const { start, rate, kneeAge, lateRate, time } = growth
  const path = ['mix', 'yield']
  if (growth.growth === 'linear') return { kind: 'linear', start, rate }
  if (growth.growth === 'exponential') {
    const constant = ledger.need(time, [...path, 'time'], 'the time constant of the growth, like “60 min”')
    return constant === undefined ? undefined : { kind: 'exponential', start, rate, time: constant }
  }
  const knee = ledger.need(kneeAge, [...path, 'kneeAge'], 'the age at which the growth slows, like “20 min”')
  const late = ledger.need(lateRate, [...path, 'lateRate'], 'the growth after the knee, like “0.5 Pa/s”')
  if (knee === undefined || late === undefined) return undefined
  return { kind: 'bilinear', start, earlyRate: rate, kneeAge: knee, lateRate: late }
}

/** The mix decides how high a lift stands: every part of it that the site has not tested is listed. */
function noteDefaults(block: Partial<MixBlock>, units: 'metric' | 'imperial', ledger: Ledger): void {
  const why = 'no test of this site; the bands are wide on purpose'
  const sources = defaultMix.sources ?? {}
  const note = (key: keyof MixBlock, value: string, source: string | undefined) => {
    if (block[key] === undefined)
      ledger.note({ at: `mix.${key}`, value, source: source ?? 'common practice, no source', why })
  }
  const { fitted, strength, lowerShare } = defaultMix
  const shown = (value: number, dimension: Dimension) => formatQuantity(value, dimension, units)
  note('yield', `${fitted.yield.kind}, from ${shown(fitted.yield.start, 'pressure')}`, sources.yield)
  note('stiffness', `from ${shown(fitted.stiffness.start, 'pressure')}`, sources.stiffness)
  note('lowerShare', shown(lowerShare ?? 1, 'share'), sources.lower)
  note('density', shown(defaultMix.density, 'density'), sources.density)
  note('strength', `${shown(strength.ultimate, 'pressure')} in the end`, sources.strength)
  note('activation', `${defaultMix.activation} K`, sources.activation)
  note('openTime', shown(defaultMix.openTime, 'time'), sources.openTime)
  note('plasticViscosity', shown(defaultMix.plasticViscosity, 'viscosity'), sources.plasticViscosity)
  note('waterRatio', shown(defaultMix.waterRatio, 'share'), sources.waterRatio)
  note('cutFrom', shown(defaultMix.cutFrom, 'pressure'), defaultMix.cutSource)
  note('cutUntil', shown(defaultMix.cutUntil, 'pressure'), defaultMix.cutSource)
}
