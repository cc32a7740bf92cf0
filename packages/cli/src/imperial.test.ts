import { cpSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { smallPlan } from '@dawnlift/drawing/examples'
import { afterAll, describe, expect, it } from 'vitest'
import { foreignUnits } from '../../../tests/foreign-units.js'
import { emptyFolder, root, run } from './collecting-screen.js'
import { printDays } from './command/plan.js'

const plan = smallPlan()
const imperial = { ...plan, job: { ...plan.job, units: 'imperial' as const } }

describe('the print days on the screen', () => {
  it('count an imperial job in cubic yards, feet and pounds', () => {
    const { volume, beadLength, water } = plan.tally.total
    const said = printDays(imperial)
    // hand: 1 yd³ is 0.764555 m³, 1 ft 0.3048 m, 1 lb 0.453592 kg; bead and water to ten
    const [yards, feet, pounds] = [volume / 0.764555, beadLength / 0.3048, water / 0.453592]
    const ten = (value: number) => Math.round(value / 10) * 10
    expect(said).toContain(`${yards.toFixed(2)} yd³ in ${ten(feet)} ft of bead, ${ten(pounds)} lb of water`)
    expect(said).not.toMatch(/\d (m³|km|m|t)\b/)
  })
  it('count a metric job in cubic metres, kilometres and tonnes', () =>
    expect(printDays(plan)).toMatch(/m³ in [\d.]+ km of bead, [\d.]+ t of water/))
})

describe('a bid', () => {
  const { folder, remove } = emptyFolder()
  afterAll(remove)

  it('counts in the units of the job it is like', async () => {
    const like = join(root, 'examples/tern-cottage')
    const { code, out } = await run(['estimate', '--walls', '100 ft', '--like', like], folder)
    expect(code).toBe(0)
    expect(out).toMatch(/^walls, ft +100\.0 +100\.0 +100\.0$/m)
    expect(out).toMatch(/^mix, yd³ /m)
    expect(out).not.toMatch(/, (m|m²|km|m³) /)
    const fromFloor = await run(['estimate', '--floor', '1000 ft2', '--like', like], folder)
    // Hand: 0.35 m of wall per m² of floor is 0.35 × 0.3048 = 0.107 ft per ft².
    expect(fromFloor.out).toContain('0.11 to 0.18 ft of wall per ft² of floor')
  })
})

describe.each([
  ['tern-cottage', 'imperial'],
  ['torrenubia', 'metric'],
] as const)('on the screen %s is told in %s units alone', (name, house) => {
  const { folder, remove } = emptyFolder()
  for (const each of ['job', 'other'])
    cpSync(join(root, 'examples', name), join(folder, each), { recursive: true })
  const buildings = ['job', 'other'].map(each => `  - { name: ${each}, job: ${each} }\n`).join('')
  writeFileSync(
    join(folder, 'site.yaml'),
    `dawnliftSite: 1\nname: Lane\nbuildings:\n${buildings}move: 45 min\n`,
  )
  // A bead of ten inches at five inches a second.
  const laid = ['G20 G90 G17 G94', 'G0 X0 Y0 Z1', 'M3 S50', 'G1 X10 F300', 'M5', 'M2']
  writeFileSync(join(folder, 'one.ngc'), laid.join('\n'))
  afterAll(remove)
  const words = [
    ['plan', 'job'],
    ['explain', 'job'],
    ['check', 'job'],
    ['stand', 'job', '--lift', 'A1'],
    ['weather', 'job'],
    ['levers', 'job', '--sets', '1', '--years', '0'],
    ['risk', 'job', '--years', '2'],
    ['share', 'site.yaml'],
    ['log', 'other', '--layer', 'A:3', '--at', '2026-07-13 07:13'],
    ['inspect', 'one.ngc', '--job', 'job'],
    ['estimate', '--floor', '100 m2', '--like', 'job'],
  ]
  // What is slow says the same sentences in both houses; the one that once spoke metric is enough.
  const slow = ['stand', 'levers', 'share']
  const tried = words.filter(([command]) => house === 'imperial' || !slow.includes(command!))
  it.each(tried)('by %s', async (...command) => {
    const { code, out, err } = await run(command, folder)
    expect(`${code} ${err}`).not.toMatch(/^2/)
    expect(out.length).toBeGreaterThan(20)
    expect(foreignUnits(out + err, house)).toEqual([])
  })
})
