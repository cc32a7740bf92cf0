import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fitMix, type MixTest } from '@dawnlift/core/mix'
import { describe, expect, it } from 'vitest'
import { noRealInputs, realFolder } from '../../../../tests/sources.js'
import { readMixTests } from './index.js'

// Published measurements that are not ours to pass on: read where they are kept, else left out.
const data = realFolder('mortar')
const here = existsSync(data)
const where = here ? '' : ` (left out: ${noRealInputs})`

/** A fixed walk through 0…1 stands in for chance: these tests look at the curves, not at the band. */
function walk(): () => number {
  let state = 0.5
  return () => {
    state = (state + Math.SQRT2) % 1
    return state
  }
}

/** Greatest shear stress after each rest of a vane run: the vane turns at 0.115/s between rests. */
function peaksAfterRests(text: string): { rest: number; peak: number }[] {
  const number = (cell: string | undefined) => Number((cell ?? '').replace(',', '.'))
  const points = text
    .split('\n')
    .map(line => line.split('\t'))
    .filter(cells => /^\d+$/.test(cells[1] ?? ''))
    .map(cells => ({ time: number(cells[4]), stress: number(cells[8]), rate: number(cells[9]) }))
  const peaks: { rest: number; peak: number }[] = []
  let stopped: number | undefined
  let turning = false
  for (const { time, stress, rate } of points) {
    const turns = rate > 0.05
    if (turns && !turning && stopped !== undefined) peaks.push({ rest: time - stopped, peak: 0 })
    if (!turns && turning) stopped = time
    const last = peaks.at(-1)
    if (turns && last) last.peak = Math.max(last.peak, stress)
    turning = turns
  }
  return peaks
}

describe(`cement paste of the rheocem data set${where}`, () => {
  const text = here
    ? new TextDecoder('utf-16le').decode(readFileSync(join(data, 'rheocem_SYS_0.55_250_1.csv')))
    : ''
  const peaks = here ? peaksAfterRests(text) : []

  it.runIf(here)('has the vane peaks that another program counted', () => {
    // Independent: counted from the same file by a script, 2026: the first rest follows the mixing at 31/s.
    const rests = [30, 60, 120, 240, 480]
    const counted = [169.6, 561.6, 1165, 2092, 3103]
    const last = peaks.slice(-5)
    expect(last.map(({ peak }) => peak)).toEqual(counted.map(value => expect.closeTo(value, 0)))
    for (const [i, { rest }] of last.entries()) expect(Math.abs(rest - rests[i]!)).toBeLessThan(1)
  })

  it.runIf(here)(
    'stiffens at the rate of an independent fit, and the fit says how badly a line suits it',
    () => {
      const tests = peaks.slice(-5).map(
        ({ rest, peak }, i): MixTest => ({
          kind: 'vane',
          at: `rest ${i + 1}`,
          age: rest,
          temperature: 20,
          stress: peak,
        }),
      )
      const fit = fitMix(tests, { name: 'paste', provenance: 'rheocem', random: walk(), replicates: 50 })
      if (!fit.ok) throw new Error(JSON.stringify(fit.problems))
      // Independent: scipy 1.17.1 curve_fit on ln(stress), rests rounded to 30…480 s, start held at 1 Pa: 7.792 Pa/s.
      // The rests in the file are up to 0.6 s off the round ones, 2 % of the shortest.
      expect(fit.value.yield.parameters.find(({ name }) => name === 'rate')!.value / 7.792).toBeCloseTo(1, 1)
      expect(fit.value.cautions.join()).toContain('scatter')
    },
  )
})

describe(`a slag concrete of the UCI data set${where}`, () => {
  it.runIf(here)('gains strength along the hyperbola of an independent fit', () => {
    const rows = readFileSync(join(data, 'uci_concrete_yeh1998.csv'), 'utf8').split('\n')
    const chosen = rows.map(row => row.split(',').map(Number)).filter(r => r[0] === 198.6 && r[1] === 132.4)
    const breaks = chosen.map(row => `cylinder,${row[7]} d,20,${row[8]} MPa`)
    const vanes = [5, 30, 60].map(minutes => `vane,${minutes} min,20,${1000 + 30 * minutes} Pa`)
    const tests = readMixTests(['kind,age,temperature_C,value', ...vanes, ...breaks].join('\n'))
    if (!tests.ok) throw new Error(JSON.stringify(tests.problems))
    const fit = fitMix(tests.value, { name: 'slag', provenance: 'uci', random: walk(), replicates: 50 })
    if (!fit.ok) throw new Error(JSON.stringify(fit.problems))
    // Independent: scipy 1.17.1 curve_fit on ln(strength), start of strength held at 0.3 d, 2026-11-25.
    const { strength } = fit.value.mix
    expect(breaks).toHaveLength(6)
    expect(strength.ultimate / 43.14668e6).toBeCloseTo(1, 4)
    expect((strength.rateConstant * 86_400) / 0.08798156).toBeCloseTo(1, 3)
    const [ultimate] = fit.value.strength!.parameters
    expect(ultimate!.standardError! / 2.2203e6).toBeCloseTo(1, 3)
  })
})
