import { fitMix, type MixFit, type MixTest } from '@dawnlift/core/mix'
import { uniformFrom } from '@dawnlift/core/numeric'

const minutes = [4, 10, 20, 35, 50, 75, 100, 140, 190, 240] as const

/** Tests of an invented mix that stiffens by 0.12 kPa a minute, each a little off, one of them far. */
export function smallMixFit(): MixFit {
  const off = [1.04, 0.97, 1.02, 0.95, 1.03, 0.99, 1.05, 0.96, 1.01, 1] as const
  const tests = minutes.flatMap((age, index): MixTest[] => [
    {
      kind: 'vane',
      at: `tests.csv:${2 * index + 2}`,
      age: age * 60,
      temperature: 20,
      stress: (1800 + 120 * age) * off[index]! * (age === 75 ? 0.55 : 1),
    },
    {
      kind: 'compression',
      at: `tests.csv:${2 * index + 3}`,
      age: age * 60,
      temperature: 20,
      strength: (3200 + 210 * age) * off[9 - index]!,
      stiffness: (70_000 + 1900 * age) * off[9 - index]!,
    },
  ])
  const fit = fitMix(tests, {
    name: 'orchard mix',
    provenance: 'tests.csv',
    random: uniformFrom(7),
    replicates: 100,
  })
  if (!fit.ok) throw new RangeError(fit.problems.map(problem => problem.say).join(' '))
  return fit.value
}
