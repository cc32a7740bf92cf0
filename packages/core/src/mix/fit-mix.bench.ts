import { compressionTests, vaneTests } from './fixtures/site-tests.js'
import { fitMix, type MixTest } from './index.js'

/** A fixed walk through 0…1 stands in for chance. */
function walk(): () => number {
  let state = 0.5
  return () => {
    state = (state + Math.SQRT2) % 1
    return state
  }
}

const fit = (tests: readonly MixTest[], replicates: number) => () => {
  fitMix(tests, { name: 'bench', provenance: 'bench', random: walk(), replicates })
}

export const bench = () => [
  { name: '15 vane tests at 3 temperatures, 400 replicates', run: fit(vaneTests, 400) },
  { name: 'and 8 compression tests', run: fit([...vaneTests, ...compressionTests], 400) },
  { name: '15 vane tests, no band', run: fit(vaneTests, 1) },
]
