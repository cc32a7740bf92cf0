import { cpSync, readFileSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { emptyFolder, gardenWall, run } from './collecting-screen.js'

const { folder, remove } = emptyFolder()
afterAll(remove)
writeFileSync(join(folder, 'secret.dxf'), 'not for this job')

const whole = readFileSync(join(gardenWall, 'job.yaml'), 'utf8')
const drawn = (file: string) =>
  whole.replace(
    /^walls:\n.*\n.*\n/m,
    `drawing: { file: '${file}', unit: m, layers: { W: { is: walls, type: garden } } }\n`,
  )
const weatherFrom = (file: string) =>
  whole.replace(
    /^weather:\n(?: {2,}.*\n)+/m,
    `weather: { file: ${file}, columns: { time: when, air: t °C, humidity: rh %, wind: w m/s } }\n`,
  )
const line = (from: string, to: string) => {
  if (!whole.includes(from)) throw new Error(`the garden wall has no “${from}”`)
  return whole.replace(from, to)
}

const dxf = (blocks: string, entities: string) =>
  `0\nSECTION\n2\nBLOCKS\n${blocks}0\nENDSEC\n0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`
const block = (name: string, inside: string) =>
  `0\nBLOCK\n8\nW\n2\n${name}\n10\n0\n20\n0\n${inside}0\nENDBLK\n8\nW\n`
const insert = (name: string, more = '') => `0\nINSERT\n8\nW\n2\n${name}\n10\n0\n20\n0\n${more}`
/** Blocks that each hold the next ten times over: ten to the twelfth walls from two kilobytes. */
const fan = Array.from({ length: 12 }, (_, i) => block(`B${i}`, insert(`B${i + 1}`).repeat(10))).join('')

let count = 0
/** Writes a job with these files into a folder of its own; numbers are sizes of files that hold nothing. */
function job(
  document: string | Uint8Array,
  beside: Readonly<Record<string, string | Uint8Array | number>> = {},
): string {
  const name = `job${++count}`
  cpSync(gardenWall, join(folder, name), { recursive: true })
  const put = (file: string, content: string | Uint8Array | number) => {
    writeFileSync(join(folder, name, file), typeof content === 'number' ? '' : content)
    if (typeof content === 'number') truncateSync(join(folder, name, file), content)
  }
  put('job.yaml', document)
  for (const [file, content] of Object.entries(beside)) put(file, content)
  return name
}

/** Words that tell what to do, or what is allowed. */
const deeds =
  /\b(write|give|put|save|choose|name|check|draw|map|move|make|remove|correct|swap|leave|close|update|use|begin|take|raise|lower|did you mean|must|at least|at most|allowed|known|walls are|walls:|layers with|needs|needed|is it)\b/i

/** The problems a job gives, all of them fit to be read by whoever wrote it. */
async function problemsOf(name: string): Promise<readonly { code: string; at: string; say: string }[]> {
  const { code, out, err } = await run(['check', name, '--json'], folder)
  const { problems } = JSON.parse(out) as { problems: { code: string; at: string; say: string }[] }
  expect([code, err]).toEqual([2, ''])
  for (const { at, say } of problems) {
    expect(at).not.toBe('')
    expect(say.length).toBeGreaterThan(20)
    expect(say).toMatch(deeds)
    expect(say).not.toMatch(/undefined|\[object|\n\s+at |node_modules/)
  }
  return problems
}

const junk = Uint8Array.from({ length: 4096 }, (_, i) => (i * 167 + 13) % 256)
const bomb = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'].map(
  (key, i, keys) =>
    `${key}: &${key} [${Array(9)
      .fill(i === 0 ? 'x' : `*${keys[i - 1]}`)
      .join(', ')}]`,
)
const hours = (air: number, humidity: number) =>
  [
    'when,t,rh,w',
    ...Array.from(
      { length: 48 },
      (_, i) => `2026-06-${i < 24 ? '01' : '02'} ${String(i % 24).padStart(2, '0')}:00,${air},${humidity},3`,
    ),
  ].join('\n')

describe('a job that cannot be planned ends with 2 and says where and what', () => {
  it.each<[string, () => string, RegExp]>([
    ['an empty document', () => job(''), /^job\/not-a-job job\.yaml/],
    [
      'a document cut off in the middle',
      () => job(whole.slice(0, whole.indexOf('openings') - 12)),
      /^job\/yaml job\.yaml:\d+/,
    ],
    ['a document that is no text', () => job(junk), /^job\/\S+ job\.yaml/],
    ['a document of 200 MB', () => job('', { 'job.yaml': 200e6 }), /^job\/too-large/],
    ['a document that unfolds without end', () => job(`${whole}\n${bomb.join('\n')}\n`), /^job\/yaml-alias/],
    ['a June of 80 °C', () => job(line('high: 22 °C', 'high: 80 °C')), /weather\.normals\[5\]/],
    [
      'a length that is not a number',
      () => job(line('height: 600 mm', 'height: .nan')),
      /^quantity\/no-unit .*height/,
    ],
    [
      'a length of 1e300 m',
      () => job(line('height: 600 mm', 'height: 1e300 m')),
      /^job\/out-of-range .*height/,
    ],
    ['a wall of zero height', () => job(line('height: 600 mm', 'height: 0 m')), /height/],
    [
      'a wall of zero length',
      () => job(line('[[1 m, 0 m], [1 m, 1.2 m]]', '[[1 m, 0 m], [1 m, 0 m]]')),
      /walls\[1\]/,
    ],
    ['an opening wider than its wall', () => job(line('width: 600 mm', 'width: 9 m')), /F1/],
    [
      'an embed above its wall',
      () => job(line('at: 500 mm, bottom: 200 mm', 'at: 500 mm, bottom: 5 m')),
      /E1/,
    ],
    ['two things of one id', () => job(line('id: E2', 'id: E1')), /^job\/double-id/],
    ['a day that is none', () => job(line('2026-06-01', '2026-02-30')), /^job\/date/],
    [
      'a moment the spring clock leaves out',
      () => job(line('firstDay: 2026-06-01', 'firstDay: 2026-03-29\n  now: 2026-03-29 02:30')),
      /^job\/clock-gap/,
    ],
    ['a drawing that is not there', () => job(drawn('plan.dxf')), /^job\/no-file plan\.dxf/],
    ['a drawing above the folder', () => job(drawn('../secret.dxf')), /^job\/path-leaves-folder/],
    ['a drawing by its full path', () => job(drawn('/etc/plan.dxf')), /^job\/path-leaves-folder/],
    [
      'a drawing behind a link that leaves the folder',
      () => {
        const name = job(drawn('plan.dxf'))
        symlinkSync(join(folder, 'secret.dxf'), join(folder, name, 'plan.dxf'))
        return name
      },
      /^job\/no-file plan\.dxf/,
    ],
    ['an empty drawing', () => job(drawn('plan.dxf'), { 'plan.dxf': '' }), /plan\.dxf/],
    ['a drawing that is no drawing', () => job(drawn('plan.dxf'), { 'plan.dxf': junk }), /plan\.dxf/],
    [
      'a drawing cut off',
      () =>
        job(drawn('plan.dxf'), { 'plan.dxf': dxf('', '0\nLINE\n8\nW\n10\n0\n20\n0\n11\n3\n').slice(0, -30) }),
      /plan\.dxf/,
    ],
    [
      'a drawing of 200 MB',
      () => job(drawn('plan.dxf'), { 'plan.dxf': 200e6 }),
      /^job\/no-file plan\.dxf .*100 MB/,
    ],
    [
      'blocks that hold themselves',
      () =>
        job(drawn('plan.dxf'), {
          'plan.dxf': dxf(block('A', insert('B')) + block('B', insert('A')), insert('A')),
        }),
      /plan\.dxf/,
    ],
    [
      'blocks that multiply without end',
      () =>
        job(drawn('plan.dxf'), {
          'plan.dxf': dxf(fan + block('B12', '0\nLINE\n8\nW\n10\n0\n20\n0\n11\n3\n21\n0\n'), insert('B0')),
        }),
      /plan\.dxf/,
    ],
    [
      'a layer the drawing does not have',
      () =>
        job(drawn('plan.dxf'), { 'plan.dxf': dxf('', '0\nLINE\n8\nOTHER\n10\n0\n20\n0\n11\n3\n21\n0\n') }),
      /“?W”?/,
    ],
    ['a weather file that is not there', () => job(weatherFrom('hours.csv')), /^job\/no-file hours\.csv/],
    [
      'a weather file that is no weather',
      () => job(weatherFrom('hours.csv'), { 'hours.csv': junk }),
      /hours\.csv/,
    ],
    [
      'a weather file of another year’s two days',
      () => job(weatherFrom('hours.csv'), { 'hours.csv': hours(15, 60).replaceAll('2026', '2019') }),
      /^weather\/no-cover hours\.csv/,
    ],
    [
      'tests of the mix that are not there',
      () => job(line('mix: default', 'mix: { tests: tests.csv }')),
      /^job\/no-file tests\.csv/,
    ],
    [
      'tests of the mix that are none',
      () => job(line('mix: default', 'mix: { tests: tests.csv }'), { 'tests.csv': junk }),
      /tests\.csv/,
    ],
  ])('%s', async (_, make, expected) => {
    const problems = await problemsOf(make())
    expect(problems.map(({ code, at, say }) => `${code} ${at} ${say}`)).toContainEqual(
      expect.stringMatching(expected),
    )
  })

  it('tells everything at once: walls, tests and weather', async () => {
    const document = weatherFrom('hours.csv').replace('mix: default', 'mix: { tests: tests.csv }')
    const problems = await problemsOf(job(document))
    expect(problems.map(({ at }) => at)).toEqual(['tests.csv', 'hours.csv'])
  })
  it('reads as text, too, with place, words and code', async () => {
    const { code, out, err } = await run(['check', job(line('width: 600 mm', 'width: 9 m'))], folder)
    expect([code, out]).toEqual([2, ''])
    expect(err).toMatch(/^\d+ problems?:\n {2}job\.yaml:\d+:\d+ openings\[0\].*\n {4}.*\[job\//)
  })
})

describe('strange but possible', () => {
  it('names in any script go through plan, sheets, calendars and machine files', async () => {
    const document = line('name: Garden wall', 'name: "Gartenmauer „Süd“ 庭 — גן"').replace(
      'along the path',
      'שביל الممر',
    )
    const { code, out } = await run(['plan', job(document), '--out', 'scripts'], folder)
    expect([code, out]).toEqual([0, expect.stringContaining('庭 — גן')])
    expect(
      readFileSync(join(folder, 'scripts/calendars/electrical.ics'), 'utf8').replace(/\r\n /g, ''),
    ).toContain('שביל الممر')
    expect(readFileSync(join(folder, 'scripts/machine/2026-06-01-A1.ngc'), 'utf8')).toMatch(/^[ -~\n]*$/)
  })
  it('weather nobody could print in is planned as days without work, not refused', async () => {
    const cold = whole.replace(
      /high: -?\d+ °C, low: -?\d+ °C, dewPoint: -?\d+ °C/g,
      'high: -20 °C, low: -30 °C, dewPoint: -32 °C',
    )
    const { code, out } = await run(['check', job(cold), '--json'], folder)
    const { findings } = JSON.parse(out) as { findings: { verdict: string; say: string }[] }
    expect(code).toBe(1)
    expect(findings.filter(finding => finding.verdict === 'fail').map(finding => finding.say)).toContainEqual(
      expect.stringMatching(/open for a layer of section A\. The least change, together: .* on 20/),
    )
  })
})
