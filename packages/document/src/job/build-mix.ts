import {
  defaultMix,
  type MixModel,
  type StiffnessGrowth,
  scaleStiffness,
  scaleYield,
  type YieldGrowth,
} from '@dawnlift/core/mix'
import { given } from './build-types.js'
import type { JobDocument } from './job-schema.js'
import type { Ledger } from './ledger.js'

type MixBlock = Exclude<JobDocument['mix'], 'default'>

/** The mix: the default one, overwritten by what the job says of it. */
export function buildMix(mix: JobDocument['mix'], ledger: Ledger): MixModel {
  const block: Partial<MixBlock> = mix === 'default' ? {} : mix
  noteDefaults(block, ledger)
  const { tests: _, yield: growth, stiffness, lowerShare, strength, ...plain } = block
  const curves = {
    yield: (growth && yieldOf(growth, ledger)) ?? defaultMix.fitted.yield,
    stiffness: stiffness ? stiffnessOf(stiffness) : defaultMix.fitted.stiffness,
  }
  const share = lowerShare ?? defaultMix.lowerShare ?? 1
  return {
    ...defaultMix,
    ...given(plain),
    ...(strength ? { strength } : {}),
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
function noteDefaults(block: Partial<MixBlock>, ledger: Ledger): void {
  const why = 'no test of this site; the bands are wide on purpose'
  const sources = defaultMix.sources ?? {}
  const note = (key: keyof MixBlock, value: string, source: string | undefined) => {
    if (block[key] === undefined)
      ledger.note({ at: `mix.${key}`, value, source: source ?? 'common practice, no source', why })
  }
  const { fitted, density, strength, openTime, activation, plasticViscosity, waterRatio } = defaultMix
  note('yield', `${fitted.yield.kind}, from ${(fitted.yield.start / 1000).toFixed(2)} kPa`, sources.yield)
  note('stiffness', `from ${Math.round(fitted.stiffness.start / 1000)} kPa`, sources.stiffness)
  note('lowerShare', `${(defaultMix.lowerShare ?? 1) * 100} %`, sources.lower)
  note('density', `${density} kg/m³`, sources.density)
  note('strength', `${strength.ultimate / 1e6} MPa in the end`, sources.strength)
  note('activation', `${activation} K`, sources.activation)
  note('openTime', `${openTime / 60} min`, sources.openTime)
  note('plasticViscosity', `${plasticViscosity} Pa·s`, sources.plasticViscosity)
  note('waterRatio', `${waterRatio * 100} %`, sources.waterRatio)
  note('cutFrom', `${defaultMix.cutFrom / 1000} kPa`, defaultMix.cutSource)
  note('cutUntil', `${defaultMix.cutUntil / 1000} kPa`, defaultMix.cutSource)
}
