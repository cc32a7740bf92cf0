import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { emptyFolder, gardenWall, root, run } from './collecting-screen.js'

const { folder, remove } = emptyFolder()
afterAll(remove)

const wall = readFileSync(join(gardenWall, 'job.yaml'), 'utf8')

/** A site of garden walls, the second one changed. */
function site(name: string, change: (text: string) => string, move = '45 min'): string {
  const path = join(folder, name)
  for (const [job, text] of [
    ['front', wall],
    ['back', change(wall)],
  ] as const) {
    mkdirSync(join(path, job), { recursive: true })
    writeFileSync(join(path, job, 'job.yaml'), text)
  }
  const buildings = '[{ name: front, job: front }, { name: back, job: back }]'
  writeFileSync(
    join(path, 'site.yaml'),
    `dawnliftSite: 1\nname: Lane\nmove: ${move}\nbuildings: ${buildings}\n`,
  )
  return name
}

interface Told {
  readonly gained_d: number
  readonly bound: string
  readonly shared: {
    readonly finishDate: string
    readonly moves: number
    readonly visits: readonly { date: string; building: string }[]
  }
  readonly oneAfterOther: { readonly finishDate: string; readonly moves: number }
  readonly findings: readonly unknown[]
}

describe('dawnlift share', () => {
  // The walls take three lifts, one a day; a day holds a lift of each.
  it('prints one building while the other cures, and says what it gains', async () => {
    const same = site('same', text => text)
    const { code, out } = await run(['share', same, '--json'], folder)
    expect(code).toBe(0)
    const told = JSON.parse(out) as Told
    expect(told.findings).toEqual([])
    const days = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / 86_400_000
    expect(told.gained_d).toBe(days(told.shared.finishDate, told.oneAfterOther.finishDate))
    expect(told.gained_d).toBeGreaterThanOrEqual(3)
    expect(told.shared.finishDate >= told.bound).toBe(true)
    const first = told.shared.visits.filter(visit => visit.date === '2026-06-01').map(visit => visit.building)
    expect([...first].sort()).toEqual(['back', 'front'])
    expect(told.oneAfterOther.moves).toBe(1)
  })
  it('shows visits and moves, and draws both ways', async () => {
    const { out } = await run(['share', 'same', '--picture', 'lane.svg'], folder)
    expect(out).toMatch(/^2026-06-01 +(front|back)/m)
    expect(out).toContain('Sharing machine and crew gains')
    expect(readFileSync(join(folder, 'lane.svg'), 'utf8')).toContain('days sooner')
    const again = await run(['share', 'same', '--picture', 'lane.svg'], folder)
    expect([again.code, again.err]).toEqual([2, expect.stringContaining('lane.svg exists')])
  })
  it('tells in what the jobs of a site disagree, all at once', async () => {
    const other = site('other', text =>
      text
        .replace('size: 3', 'size: 4')
        .replace('profile: gantry-12', 'profile: gantry-28')
        .replace('latitude: 48.2°', 'latitude: 49.2°')
        .concat('\nbatching: { silo: { stock: 9 t } }\n'),
    )
    const { code, out } = await run(['share', other, '--json'], folder)
    expect(code).toBe(2)
    const { problems } = JSON.parse(out) as { problems: { code: string; say: string }[] }
    expect(problems.map(each => each.code)).toEqual([
      'site/silo',
      'site/other-crew',
      'site/other-machine',
      'site/far-apart',
    ])
    expect(problems[1]!.say).toContain('size')
  })
  it('tells the problems of every job, with where it lies', async () => {
    const broken = site('broken', text => text.replace('thickness: 200 mm', 'thickness: 200'))
    const { code, err } = await run(['share', broken], folder)
    expect([code, err]).toEqual([2, expect.stringContaining('back: job.yaml:')])
    const nowhere = await run(['share', 'nowhere'], folder)
    expect([nowhere.code, nowhere.err]).toEqual([2, expect.stringContaining('There is no site at nowhere')])
  })
  it('ends with 130 when somebody has had enough', async () => {
    const { code, out } = await run(['share', 'same'], folder, (text, stop) => {
      if (text.includes('sharing')) stop()
    })
    expect([code, out]).toEqual([130, ''])
  })
  it('plans the lane of the examples as the guide says', async () => {
    expect(existsSync(join(root, 'examples/finch-lane/site.yaml'))).toBe(true)
    const { out } = await run(['share', join(root, 'examples/finch-lane')], folder)
    expect(out).toContain('Sharing machine and crew gains')
  })
})
