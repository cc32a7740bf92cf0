import { spawnSync } from 'node:child_process'
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseJob } from '@dawnlift/document/job'
import { afterAll, describe, expect, it } from 'vitest'
import { emptyFolder, gardenWall, root, run } from './collecting-screen.js'

const { folder, remove } = emptyFolder()
afterAll(remove)

const guide = readFileSync(join(root, 'docs/guide/machine-trials.md'), 'utf8')
const sheet = /```csv\n(.*?)```/s.exec(guide)![1]!
writeFileSync(join(folder, 'trials.csv'), sheet)

describe('dawnlift trials', () => {
  it('tells pump, bead, lags and corners of the guide’s sheet, and which trials are worth running', async () => {
    const { code, out } = await run(['trials', 'trials.csv'], folder)
    expect(code).toBe(0)
    // hand: 21.3 kg in 60 s at 2150 kg/m³ are 9.91 L/min at S 100: about S 10.1 for each L/min
    expect(out).toMatch(/pump +S 10\.1 for each L\/min/)
    expect(out).toMatch(/trials\.csv:3 +9\.91/)
    // hand: (88 + 95) mm / 2 at 150 mm/s
    expect(out).toContain('Start lag 0.61 s')
    expect(out).toMatch(/^stop +250 mm\/s/m)
  })
  it('writes a line for the job that the job reads as what was measured', async () => {
    const { out } = await run(['trials', 'trials.csv', '--job', gardenWall], folder)
    const line = /^ {2}machine: (\{.*\})$/m.exec(out)![1]!
    const told = JSON.parse(
      (await run(['trials', 'trials.csv', '--job', gardenWall, '--json'], folder)).out,
    ) as {
      machine: { setting_per_m3_per_s: number; startLag_s: number }
    }
    const text = readFileSync(join(gardenWall, 'job.yaml'), 'utf8')
    const job = parseJob(text.replace(/^machine:\n( +.*\n)+/m, `machine: ${line}\n`))
    if (!job.ok) throw new Error(job.problems[0]?.say)
    // the setting is written to four digits, the lag to a hundredth of a second
    expect(job.value.job.machine.pump.settingPerFlow / told.machine.setting_per_m3_per_s).toBeCloseTo(1, 3)
    expect(job.value.job.machine.pump.startLag).toBeCloseTo(told.machine.startLag_s, 2)
  })
  it('writes what to try next: a ladder of speeds, corners, a wall whose end is foretold, and the sheet', async () => {
    const { code } = await run(['trials', 'trials.csv', '--job', gardenWall, '--out', 'next'], folder)
    expect(code).toBe(0)
    const names = readdirSync(join(folder, 'next'))
    expect(names.filter(name => name.startsWith('ladder-'))).toHaveLength(4)
    expect(names).toEqual(expect.arrayContaining(['corner-sampler.ngc', 'trial-wall.ngc', 'trials.csv']))
    const foretold = readFileSync(join(folder, 'next/foretold.txt'), 'utf8')
    expect(foretold).toMatch(
      /trial-wall\.ngc\n.*\n {2}predicted before the trial: (fails at layer|stands all) \d+/,
    )
    expect(readFileSync(join(folder, 'next/trials.csv'), 'utf8')).toMatch(/^stop,,,,,\d+,/m)
  })
  it('leaves a folder alone that holds something', async () => {
    const { code, err } = await run(['trials', 'trials.csv', '--out', '.'], folder)
    expect([code, err]).toEqual([2, expect.stringContaining('not an empty folder')])
  })
  it('names a kind that has too few trials yet, and goes on', async () => {
    writeFileSync(join(folder, 'few.csv'), sheet.split('\n').slice(0, 3).join('\n'))
    const { code, out } = await run(['trials', 'few.csv'], folder)
    expect([code, out]).toEqual([0, expect.stringContaining('A pump curve needs three weighed buckets')])
  })
  it('ends with 2 on trials that cannot be, each with its line', async () => {
    writeFileSync(
      join(folder, 'bad.csv'),
      'kind,setting,caught_kg,during_s\npump,10,0,60\npump,20,-1,60\npump,30,1,60',
    )
    const { code, err } = await run(['trials', 'bad.csv', '--job', 'nowhere'], folder)
    expect(code).toBe(2)
    expect(err).toContain('There is no job at nowhere')
    const alone = await run(['trials', 'bad.csv', '--json'], folder)
    const { problems } = JSON.parse(alone.out) as { problems: { at: string }[] }
    expect([alone.code, problems.map(each => each.at)]).toEqual([2, ['bad.csv:2', 'bad.csv:3']])
  })
})

describe('dawnlift risk', () => {
  it('tells by which dates the walls are up, the same ones each time', async () => {
    const words = ['risk', gardenWall, '--years', '15']
    const first = await run(words, folder)
    expect(first.code).toBe(0)
    expect(first.out).toContain('15 courses of weather drawn from invented, an upland at 48° north')
    expect(first.out).toMatch(/^95 % +2026-06-\d\d/m)
    expect(first.err).toContain('meeting other weather')
    expect((await run(words, folder)).out).toBe(first.out)
  })
  it('finishes later the more the machine breaks down', async () => {
    const finish = async (every: string) => {
      const { out } = await run(
        ['risk', gardenWall, '--years', '15', '--breakdown-every', every, '--repair', '30 h', '--json'],
        folder,
      )
      const { upBy } = JSON.parse(out) as { upBy: { date: string | null }[] }
      return upBy[2]?.date ?? '9999'
    }
    expect((await finish('30 min')) > (await finish('2000 h'))).toBe(true)
  })
  it('gives the chance of a date asked for, and the days that make the plan surer', async () => {
    const { out } = await run(['risk', gardenWall, '--years', '15', '--by', '2026-12-24', '--json'], folder)
    const told = JSON.parse(out) as {
      planned: string
      asked: { chance: number; chanceFrom: number }
      upBy: { share: number; date: string }[]
      contingency: { share: number; days_d: number }[]
    }
    // Wilson's interval of 15 in 15: 15/(15 + 1.96²) = 0.796.
    expect(told.asked.chance).toBe(1)
    expect(told.asked.chanceFrom).toBeCloseTo(0.796, 3)
    const days = (to: string) => (Date.parse(to) - Date.parse(told.planned)) / 86_400_000
    expect(told.contingency.map(each => each.days_d)).toEqual(told.upBy.map(each => days(each.date)))
  })
  it('comes out the same in the workers of the built program', async () => {
    const words = ['risk', gardenWall, '--years', '90', '--breakdown-every', '20 h', '--json']
    const built = spawnSync(process.execPath, [join(root, 'packages/cli/dist/main.js'), ...words], {
      encoding: 'utf8',
    })
    expect(built.status).toBe(0)
    expect(JSON.parse(built.stdout)).toEqual(JSON.parse((await run(words, folder)).out))
  })
  it('ends with 130 when somebody has had enough', async () => {
    const { code, out, err } = await run(['risk', gardenWall, '--years', '30'], folder, (text, stop) => {
      if (text.includes('replaying')) stop()
    })
    expect([code, out]).toEqual([130, ''])
    expect(err).toContain('Stopped before all replays were run')
  })
  it('says all that is wrong with its options at once', async () => {
    const { code, err } = await run(
      ['risk', gardenWall, '--years', 'many', '--late', '120 %', '--repair', '3', '--by', '2026-02-30'],
      folder,
    )
    expect(code).toBe(2)
    for (const flag of ['--years', '--late', '--repair', '--by']) expect(err).toContain(`  ${flag}\n`)
    expect(err).not.toContain('laying beads')
  })
})

describe('dawnlift weigh', () => {
  it('plans the soonest, the cheapest and the calmest days, and draws them', async () => {
    const { code, out } = await run(['weigh', gardenWall, '--json', '--out', 'waiting.svg'], folder)
    expect(code).toBe(0)
    const { ways } = JSON.parse(out) as {
      ways: { ledToBy: string[]; finishDate: string; cost: number; isPlanned: boolean }[]
    }
    const led = (aim: string) => ways.find(way => way.ledToBy.includes(aim))!
    expect(ways.filter(way => way.isPlanned)).toEqual([led('soonest')])
    expect(led('cheapest').cost).toBeLessThanOrEqual(led('soonest').cost)
    expect(ways.map(way => way.finishDate)).toEqual(ways.map(way => way.finishDate).sort())
    const drawn = readFileSync(join(folder, 'waiting.svg'), 'utf8')
    expect(drawn).toMatch(/^<svg[\s\S]*<\/svg>\s*$/)
  })
  it('shows the table, and leaves an existing picture alone before it plans', async () => {
    const { out } = await run(['weigh', gardenWall], folder)
    expect(out).toMatch(/^soonest.* +2026-06-\d\d +\d+/m)
    expect(out).toContain('a screening value')
    writeFileSync(join(folder, 'mine.svg'), 'mine')
    const again = await run(['weigh', gardenWall, '--out', 'mine.svg'], folder)
    expect([again.code, readFileSync(join(folder, 'mine.svg'), 'utf8')]).toEqual([2, 'mine'])
    expect(again.err).not.toContain('laying beads')
  })
})

describe('dawnlift levers', () => {
  it('plans each lever, the best pair, their cost and how sure they are', async () => {
    const words = ['levers', gardenWall, '--sets', '2', '--years', '4', '--without', 'night-start']
    const priced = [...words, '--price', 'wider-bead=900', '--json']
    const { code, out, err } = await run(priced, folder)
    expect(code).toBe(0)
    const told = JSON.parse(out) as {
      asPlanned: { cost: number; printDays: number; upBy: unknown[] }
      rows: {
        levers: { lever: string }[]
        cost: number
        costMore: number
        unpriced: string[]
        printDays: number
      }[]
      pairs: { possible: number; planned: number; best: { levers: unknown[] } }
    }
    const kinds = told.rows.map(row => row.levers[0]!.lever)
    expect(kinds).not.toContain('night-start')
    for (const row of told.rows) expect(row.cost - told.asPlanned.cost).toBeCloseTo(row.costMore, 6)
    expect(
      told.rows.filter(row => row.levers[0]!.lever === 'wider-bead').flatMap(row => row.unpriced),
    ).toEqual([])
    expect(told.asPlanned.upBy).toHaveLength(3)
    expect(told.pairs.best.levers).toHaveLength(2)
    expect(err).toContain('pulling them in pairs')
  })
  it('shows the table, and what each lever takes for granted', async () => {
    const { out } = await run(['levers', gardenWall, '--sets', '1', '--years', '0'], folder)
    expect(out).toMatch(/^as planned +\d+ +2026-06-\d\d/m)
    expect(out).toContain('accelerator: the mix stiffens faster')
    expect(out).toContain('a screening value')
  })
  it('says all that is wrong with its options at once', async () => {
    const { code, err } = await run(
      ['levers', gardenWall, '--sets', '4', '--years', '-1', '--without', 'magic', '--price', 'ice=dear'],
      folder,
    )
    expect(code).toBe(2)
    for (const flag of ['--sets', '--years', '--without', '--price']) expect(err).toContain(`  ${flag}\n`)
  })
})

describe('dawnlift estimate', () => {
  const figures = ['--walls', '5.4 m', '--height', '600 mm', '--openings', '5 %', '--like', gardenWall]
  it('holds the plan that is then made of the same walls', async () => {
    const { out } = await run(['estimate', ...figures, '--lintels', '1', '--embeds', '2', '--json'], folder)
    const told = JSON.parse(out) as Record<string, { low: number; likely: number; high: number }>
    const plan = JSON.parse((await run(['plan', gardenWall, '--json'], folder)).out) as {
      printDays: unknown[]
      tally: { volume_m3: number }
    }
    const { printDays, volume } = told
    expect(plan.printDays.length).toBeGreaterThanOrEqual(printDays!.low)
    expect(plan.printDays.length).toBeLessThanOrEqual(printDays!.high)
    // Jambs and corners are bead that no wall length knows: within a quarter.
    expect(Math.abs(plan.tally.volume_m3 / volume!.likely - 1)).toBeLessThan(0.25)
  })
  it('shows ranges, what drives them, where climate and rates come from, and what is assumed', async () => {
    const { code, out } = await run(['estimate', '--floor', '120 m²'], folder)
    expect(code).toBe(0)
    expect(out).toMatch(/^walls, m +42\.0 +54\.0 +72\.0/m)
    expect(out).toContain('length of the walls')
    expect(out).toContain('as in the job that `dawnlift new` writes')
    expect(out).toContain('common practice, no source')
  })
  it('says all that is wrong with its figures at once', async () => {
    const { code, err } = await run(
      ['estimate', '--height', '3', '--openings', '95 %', '--lintels', 'many'],
      folder,
    )
    expect(code).toBe(2)
    for (const flag of ['--walls', '--height', '--openings', '--lintels'])
      expect(err).toContain(`  ${flag}\n`)
  })
  it('says when no hour of the season may be printed in', async () => {
    const hot = readFileSync(join(gardenWall, 'job.yaml'), 'utf8').replace(
      'liftHeight: 400 mm',
      'mixTemperatureMost: 8 °C',
    )
    writeFileSync(join(folder, 'job.yaml'), hot)
    const { code, err } = await run(['estimate', '--walls', '9 m', '--like', '.'], folder)
    expect([code, err]).toEqual([2, expect.stringContaining('no hour of the crew’s day may be printed in')])
  })
})

describe('dawnlift trials of a pump that begins late', () => {
  const sheet = [
    'kind,setting,caught_kg,during_s',
    ...[2, 6, 12, 18].map(litres => `pump,${15 + 10 * litres},${(litres * 2.15).toFixed(3)},60`),
  ].join('\n')
  it('tells where it begins, sets the trial files by it and asks for settings beyond it', async () => {
    writeFileSync(join(folder, 'late.csv'), sheet)
    const { code, out } = await run(['trials', 'late.csv', '--out', 'late'], folder)
    expect(code).toBe(0)
    expect(out).toContain('S 10.0 for each L/min, beginning at S 15')
    // hand: 22 L/min at the most need S 15 + 220; the least, 2 L/min, S 15 + 20
    expect(out).toContain('settingAtMost: 235, settingIdle: 15')
    expect(out).toMatch(/^pump +S 235/m)
    expect(readFileSync(join(folder, 'late/corner-sampler.ngc'), 'utf8')).toContain(
      'S 15 and 10 for each L/min',
    )
  })
})
