import { sayQuantity, type Units } from '../limit/index.js'
import type { Result } from '../result/index.js'
import { success } from '../result/index.js'
import type { BandOptions } from './bootstrap.js'
import type { Arrhenius } from './equivalent-age.js'
import { fitCurve } from './fit-curve.js'
import type { StrengthPart } from './mix-fit.js'
import type { MixModel, StrengthGrowth } from './mix-model.js'
import type { MixTest, Observation } from './mix-test.js'
import { atReference, breaks } from './observations.js'
import type { SettingTimes } from './setting.js'
import { strengthAt } from './strength.js'
import { strengthFamilies } from './strength-family.js'

/** Strength against maturity from the breaks; with fewer than three, only its ultimate value is theirs. */
export function fitStrength(
  tests: readonly MixTest[],
  clock: Arrhenius,
  base: MixModel,
  setting: SettingTimes | undefined,
  band: BandOptions,
  units: Units = 'metric',
): Result<StrengthPart> {
  const observations = atReference(breaks(tests), clock)
  const start = setting?.final ?? base.strength.start
  const usable = observations.filter(({ age }) => age > start)
  if (usable.length === 0) return success(withoutBreaks({ ...base.strength, start }, setting, units))
  if (new Set(usable.map(({ age }) => age)).size < 3)
    return success(ultimateOnly(usable, { ...base.strength, start }))
  const fit = fitCurve('strength', strengthFamilies(start), usable, band)
  if (!fit.ok) return fit
  return success({ growth: fit.value.growth, curve: fit.value, assumed: [] })
}

const withoutBreaks = (
  growth: StrengthGrowth,
  setting: SettingTimes | undefined,
  units: Units,
): StrengthPart => ({
  growth,
  assumed: [
    `strength assumed (${sayQuantity(growth.ultimate / 1e6, 'MPa', units)} in the end${
      setting ? ', starting at the final set that was measured' : ''
    }): no cylinder or cube breaks`,
  ],
})

/** Breaks at one or two ages: their mean ratio to the assumed curve scales it. */
function ultimateOnly(breaks: readonly Observation[], assumed: StrengthGrowth): StrengthPart {
  const logs = breaks.map(({ age, value }) => Math.log(value / strengthAt(assumed, age)))
  const ratio = Math.exp(logs.reduce((sum, log) => sum + log, 0) / logs.length)
  return {
    growth: { ...assumed, ultimate: assumed.ultimate * ratio },
    assumed: [
      `pace of strength assumed: ${breaks.length} breaks at fewer than 3 ages fit the ultimate strength only`,
    ],
  }
}
