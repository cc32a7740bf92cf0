import { sayQuantity, type Units } from '../limit/index.js'
import type { Celsius, Seconds } from '../quantity/index.js'
import type { Finding } from '../result/index.js'
import { ageFactor } from './equivalent-age.js'
import type { MixModel } from './mix-model.js'

/** How a plan uses the mix: the oldest green layer that carries others, and the temperatures it lives through. */
export interface MixUse {
  readonly at: string
  readonly oldest: Seconds
  readonly coldest: Celsius
  readonly hottest: Celsius
  /** Of the words; metric unless said. */
  readonly units?: Units
}

/** A degree or two outside the tests is no extrapolation worth a warning. */
const LEEWAY = 2

/** What a plan asks of the mix beyond what was tested: every number that rests on it says so. */
export function checkMixUse(mix: MixModel, use: MixUse): Finding[] {
  return [...untested(mix, use), ...tooOld(mix, use), ...outOfTemperature(mix, use)]
}

function untested(mix: MixModel, { at }: MixUse): Finding[] {
  if (mix.provenance !== 'default') return []
  const share = Math.round((1 - (mix.lowerShare ?? 0.6)) * 100)
  return [
    {
      check: 'mix-untested',
      at,
      demand: 1,
      capacity: 0,
      unit: 'tested mix',
      source: mix.sources?.yield ?? 'common practice, no source',
      verdict: 'warn',
      say: `The mix is the default one, planned ${share} % below a published mortar. Test the site's own mix at five ages or more and fit it before anyone stands beside a wall planned with it.`,
    },
  ]
}

function tooOld(mix: MixModel, { at, oldest, hottest, units }: MixUse): Finding[] {
  const age = oldest * ageFactor(hottest, mix)
  if (age <= mix.testedTo) return []
  return [
    {
      check: 'mix-age-untested',
      at,
      demand: age,
      capacity: mix.testedTo,
      unit: 's',
      source: mix.provenance,
      verdict: 'outside-range',
      say: `The foot of the lift gets ${hours(age)} old (at ${sayQuantity(mix.reference, '°C', units ?? 'metric')}), the mix was tested to ${hours(mix.testedTo)}; its stiffness is held from there on. Later tests would let the lift grow.`,
    },
  ]
}

function outOfTemperature(mix: MixModel, { at, coldest, hottest, units }: MixUse): Finding[] {
  if (!mix.testedTemperatures) return []
  const [least, most] = mix.testedTemperatures
  const said = (value: Celsius) => sayQuantity(value, '°C', units ?? 'metric')
  return [
    { demand: coldest, capacity: least, beyond: coldest < least - LEEWAY, word: 'coldest' },
    { demand: hottest, capacity: most, beyond: hottest > most + LEEWAY, word: 'hottest' },
  ].flatMap(({ demand, capacity, beyond, word }) =>
    beyond
      ? [
          {
            check: 'mix-temperature-untested',
            at,
            demand,
            capacity,
            unit: '°C',
            source: mix.provenance,
            verdict: 'outside-range' as const,
            say: `The wall is planned at ${said(demand)}, the ${word} test of the mix was at ${said(capacity)}. Test it at that temperature, or print when it is nearer.`,
          },
        ]
      : [],
  )
}

const hours = (seconds: Seconds): string => `${(seconds / 3600).toFixed(1)} h`
