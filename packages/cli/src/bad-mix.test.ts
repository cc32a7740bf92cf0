import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { emptyFolder, run } from './collecting-screen.js'

const { folder, remove } = emptyFolder()
afterAll(remove)

const heads = 'kind,age_min,temperature_C,value,unit,strength_kPa,stiffness_kPa'
const good = ['vane,5,21,980,Pa', 'vane,20,21,1500,Pa', 'vane,40,22,2600,Pa', 'vane,60,22,3600,Pa']

/** What `fit` answers to a sheet: its code, and all it says. */
async function fitted(...rows: readonly string[]): Promise<readonly [number, string]> {
  writeFileSync(join(folder, 'tests.csv'), [heads, ...rows].join('\n'))
  const { code, out, err } = await run(['fit', 'tests.csv'], folder)
  return [code, `${out}\n${err}`]
}

describe('a sheet of tests that no mix can have', () => {
  it.each([
    ['one point', good.slice(0, 1), /needs at least 3 tests at 3 different ages; there are 1 at 1/],
    [
      'a negative age',
      [...good, 'vane,-5,21,900,Pa'],
      /age of this vane test is -5 min; between 0 min and 400 days/,
    ],
    [
      'kPa in a column of Pa',
      [...good, 'vane,30,21,2.1,Pa'],
      /2\.1 Pa at 30 min, the one beside it .* wrong unit/,
    ],
    ['two units for one number', [...good, 'vane,90 s,21,900,Pa'], /carries another unit than its column/],
    [
      'contradicting densities',
      [...good, 'density,2,21,2140,kg/m³', 'density,2,21,1840,kg/m³'],
      /1840 kg\/m³ and 2140 kg\/m³ differ/,
    ],
    [
      'a mix that never sets',
      [5, 20, 40, 60].map(age => `vane,${age},21,950,Pa`),
      /does not grow, from 950 Pa at .* does not stiffen/,
    ],
    [
      'a stiffness of nothing',
      [...good, 'compression,30,21,,,4.2,0'],
      /stiffness of this compression test is 0 Pa; between 100 Pa and 60 GPa/,
    ],
    [
      'a stiffness that is no number',
      [...good, 'compression,30,21,,,4.2,NaN'],
      /“NaN” does not start with a number/,
    ],
    [
      'a stiffness a thousandfold off',
      [...good, 'compression,30,21,,,4.2,340000'],
      /340 MPa is 81000 times the strength of 4\.2 kPa/,
    ],
    [
      'a temperature in °F',
      [...good, 'vane,30,90,2000,Pa'],
      /temperature of this vane test is 90 °C; between -10 °C and 80 °C/,
    ],
    ['a stress without end', [...good, 'vane,30,21,inf,Pa'], /“inf” does not start with a number/],
  ] as const)('%s ends with 2, says which line and what to do', async (_, rows, words) => {
    const [code, said] = await fitted(...rows)
    expect(code).toBe(2)
    expect(said).toMatch(words)
    expect(said).toMatch(/tests\.csv:\d/)
    expect(said).not.toMatch(/undefined|Infinity|mistake of Dawnlift/)
  })

  it('is none where the sheet is sound', async () => {
    const [code, said] = await fitted(...good)
    expect(code).toBe(0)
    expect(said).toContain('lower band')
  })
})
