import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { type ReportedCommand, reportSchemas } from '@dawnlift/formats/reports'
import { afterAll, describe, expect, it } from 'vitest'
import { emptyFolder, gardenWall, run } from './collecting-screen.js'
import { runDawnlift } from './run-dawnlift.js'

const { folder, remove } = emptyFolder()
afterAll(remove)

const tests = `kind,age_min,yield stress_Pa,temperature_°C
yield,10,1200,20
yield,30,1900,20
yield,60,2800,20
`

describe('dawnlift inspect', () => {
  it('reads a machine file back', async () => {
    writeFileSync(
      join(folder, 'line.ngc'),
      'G21 G90 G17 G94\nG0 X0 Y0 Z20\nS100 M3\nG1 X1000 F6000\nM5\nM2\n',
    )
    const { code, out } = await run(['inspect', 'line.ngc'], folder)
    expect(code).toBe(0)
    // hand: 1 m at 6 m/min is 10 s, 0.17 min
    expect(out).toMatch(/^ +20\.0 mm\s+1\.000\s+0\.17\s+1$/m)
    const told = JSON.parse((await run(['inspect', 'line.ngc', '--json'], folder)).out) as { bead_m: number }
    expect(told.bead_m).toBeCloseTo(1, 12)
  })
  it('with the machine of a job tells planned times and what corners get too much', async () => {
    const file = join(folder, 'line.ngc')
    const { out } = await run(['inspect', file, '--job', gardenWall], folder)
    expect(out).toMatch(/^0\.2 min as planned/m)
    expect(out).toMatch(/^\d+\.\d L too much \(\d\.\d %\).* at line 4 \(0, 0 mm\)$/m)
    const told = JSON.parse((await run(['inspect', file, '--job', gardenWall, '--json'], folder)).out) as {
      overfill: { volume_m3: number; worstLine: number }
    }
    expect(told.overfill.worstLine).toBe(4)
    expect(told.overfill.volume_m3).toBeGreaterThan(0)
    expect((await run(['inspect', file, '--job', 'nowhere'], folder)).code).toBe(2)
  })
  it('tells every line it cannot read', async () => {
    writeFileSync(join(folder, 'bad.ngc'), 'G21\nG1 X5\nE5\nM2\n')
    const { code, out } = await run(['inspect', 'bad.ngc', '--json'], folder)
    expect(code).toBe(2)
    expect((JSON.parse(out) as { problems: unknown[] }).problems.length).toBe(2)
  })
})

describe('dawnlift calc and schema', () => {
  it('lists formulas, explains one, and computes it', async () => {
    const list = JSON.parse((await run(['calc', '--json'], folder)).out) as {
      name: string
      inputs: { name: string; example: number; unit: string }[]
    }[]
    expect(list.length).toBeGreaterThan(20)
    for (const { name, inputs } of list) {
      const given = inputs.map(input => `${input.name}=${input.example} ${input.unit}`.trim())
      const { code, out } = await run(['calc', name, ...given], folder)
      expect([name, code, out]).toEqual([name, 0, expect.stringMatching(/ = -?[\d.e+-]+/)])
    }
  })
  it('names the nearest formula, and every input that is wrong', async () => {
    const { code, err } = await run(['calc', 'evaporatoin'], folder)
    expect([code, err]).toEqual([2, expect.stringContaining('evaporation')])
  })
  it('prints the schemas of the job and of every report', async () => {
    for (const of of [[], ['--plan'], ...Object.keys(reportSchemas).map(name => ['--of', name])]) {
      const { code, out } = await run(['schema', ...of], folder)
      expect(code).toBe(0)
      expect((JSON.parse(out) as { type: string }).type).toBe('object')
    }
  })
  it('says which commands print a report', async () => {
    const { code, err } = await run(['schema', '--of', 'new'], folder)
    expect([code, err]).toEqual([2, expect.stringContaining(Object.keys(reportSchemas).join(', '))])
  })
})

describe('dawnlift fit', () => {
  it('fits the demo’s tests, with a band under the best estimate', async () => {
    const sheet = join(gardenWall, '../../../examples/torrenubia/mix-tests.csv')
    const { code, out } = await run(['fit', sheet], folder)
    expect(code).toBe(0)
    expect(out).toContain('one batch in 20')
    const fit = JSON.parse((await run(['fit', sheet, '--json'], folder)).out) as {
      mix: { density_kg_per_m3: number }
    }
    expect(fit.mix.density_kg_per_m3).toBeGreaterThan(1500)
  })
  it('says all that is wrong at once: the file and the chance', async () => {
    const { code, err } = await run(['fit', 'none.csv', '--probability', '2'], folder)
    expect(code).toBe(2)
    expect(err).toContain('2 problems')
    writeFileSync(join(folder, 'few.csv'), tests.slice(0, 60))
    expect((await run(['fit', 'few.csv'], folder)).code).toBe(2)
  })
})

describe('dawnlift serve', () => {
  it('serves one job on loopback until it is told to stop', async () => {
    let answered: Promise<unknown> | undefined
    const { code, err } = await run(['serve', gardenWall, '--port', '0'], folder, (text, stop) => {
      const address = /http:\S+/.exec(text)?.[0]
      if (address)
        answered = fetch(`${address}/api/job`)
          .then(answer => answer.json())
          .finally(stop)
    })
    expect(code).toBe(0)
    expect(err).toContain('127.0.0.1')
    expect(await answered).toMatchObject({ document: expect.stringContaining('Garden wall') })
  })
  it('says when the port is taken, and which to try', async () => {
    const said = await new Promise<string>(done => {
      void run(['serve', gardenWall, '--port', '0'], folder, (text, stop) => {
        const port = /:(\d+) /.exec(text)?.[1]
        if (port)
          void run(['serve', gardenWall, '--port', port], folder).then(second => {
            stop()
            done(`${second.code} ${second.err}`)
          })
      })
    })
    expect(said).toMatch(/^2 .*Port \d+ is taken.*--port \d+/s)
  })
})

const sheetOfTests = join(gardenWall, '../../../examples/torrenubia/mix-tests.csv')
writeFileSync(join(folder, 'one.ngc'), 'G21 G90 G17 G94\nG0 X0 Y0 Z20\nS100 M3\nG1 X1000 F6000\nM5\nM2\n')
writeFileSync(
  join(folder, 'trials.csv'),
  'kind,setting,caught_kg,during_s\npump,30,6.4,60\npump,100,21.3,60\npump,200,42.9,60\n',
)

describe('dawnlift stand', () => {
  it('draws how the section would move, and leaves a file alone that is there', async () => {
    const words = ['stand', gardenWall, '--lift', 'A2', '--out', 'mode.svg']
    expect((await run(words, folder)).code).toBe(0)
    const picture = readFileSync(join(folder, 'mode.svg'), 'utf8')
    expect(picture).toMatch(/^<svg/)
    expect(picture).toContain('A2')
    const again = await run(words, folder)
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('exists already')])
  })
})

describe('--json', () => {
  it.each<[ReportedCommand, ...string[]]>([
    ['check', gardenWall, '--assumed'],
    ['explain', gardenWall],
    ['levers', gardenWall, '--sets', '1', '--years', '2'],
    ['stand', gardenWall, '--lift', 'A2'],
    ['risk', gardenWall, '--years', '2'],
    ['fit', sheetOfTests],
    ['inspect', 'one.ngc'],
    ['trials', 'trials.csv'],
  ])('of %s keeps to the schema that `schema --of` prints', async (command, ...words) => {
    const { code, out } = await run([command, ...words, '--json'], folder)
    expect(code).toBe(0)
    expect(reportSchemas[command].safeParse(JSON.parse(out)).error?.issues).toBeUndefined()
  })

  it.each([
    [['check', gardenWall]],
    [['explain', gardenWall]],
    [['levers', gardenWall, '--sets', '1', '--years', '0']],
    [['stand', gardenWall, '--lift', 'A2']],
    [['check', 'nowhere']],
    [['fit', 'nowhere.csv']],
    [['inspect', 'nowhere.ngc']],
    [['trials', 'nowhere.csv']],
    [['risk', 'nowhere']],
    [['calc', 'nothing']],
  ])('gives one document and nothing else: %j', async words => {
    const { code, out, err } = await run([...words, '--json'], folder)
    const document = JSON.parse(out) as { problems?: unknown }
    expect('problems' in document).toBe(code === 2)
    // Problems stand in the document then, not on both streams.
    if (code === 2) expect(err).toBe('')
  })
})

describe('a mistake of ours', () => {
  it('ends with 3, names its place and shows no stack', async () => {
    const err: string[] = []
    const code = await runDawnlift(['schema'], {
      out: () => {
        throw new Error('a broken promise')
      },
      err: text => void err.push(text),
      live: false,
      folder,
      stopped: async () => {},
    })
    expect(code).toBe(3)
    expect(err.join('\n')).toMatch(
      /^This is a mistake of Dawnlift, not of your job: a broken promise \(cli\/src\/\S+\)/,
    )
    expect(err.join('\n')).not.toMatch(/\n\s+at /)
  })
})

describe('words nobody knows', () => {
  it.each([
    [['plam', 'x']],
    [['plan']],
    [['plan', gardenWall, '--ouut', 'x']],
    [['serve', gardenWall, '--port', 'eight']],
  ])('%j ends with 2 and a hint, not with a stack', async words => {
    const { code, out, err } = await run(words, folder)
    expect([code, out]).toEqual([2, ''])
    expect(err).not.toBe('')
    expect(err).not.toMatch(/\n\s+at /)
  })
  it('help and version end with 0', async () => {
    expect(await run(['--version'], folder)).toMatchObject({ code: 0, out: '0.1.0' })
    const { code, out } = await run(['plan', '--help'], folder)
    expect([code, out]).toEqual([0, expect.stringContaining('--out <folder>')])
  })
})
