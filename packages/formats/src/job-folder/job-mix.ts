import type { Units } from '@dawnlift/core/limit'
import { fitMix, type MixFit, type MixModel } from '@dawnlift/core/mix'
import { uniformFrom } from '@dawnlift/core/numeric'
import { failure, type Result } from '@dawnlift/core/result'
import { readMixTests } from '../mix-tests/index.js'
import { keptLast } from './kept-last.js'

/** Fixed: the same tests give the same band, today and in the permit office. */
const bandSeed = 1

const keptFit = keptLast<Result<MixFit>>()

/** The mix from the site's own tests; what they do not cover comes from the job's mix. The last answer is kept: an edit of a wall must not fit again. */
export function mixFromTests(
  name: string,
  content: Uint8Array | undefined,
  base: MixModel,
  units: Units = 'metric',
): Result<MixFit> {
  if (!content) {
    return failure([
      {
        code: 'job/no-file',
        at: name,
        say: `The job names the mix tests ${name}, but there is no such file beside it (or it is larger than 100 MB). Put it there or correct the name.`,
      },
    ])
  }
  return keptFit({ text: JSON.stringify([name, base, units]), content }, () => {
    const tests = readMixTests(new TextDecoder().decode(content), name)
    return tests.ok
      ? fitMix(tests.value, {
          name: base.name === 'generic printable mortar' ? name.replace(/\.csv$/i, '') : base.name,
          provenance: name,
          random: uniformFrom(bandSeed),
          probability: base.lowerProbability,
          base,
          units,
        })
      : tests
  })
}
