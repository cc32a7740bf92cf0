import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { initGeometry } from '@dawnlift/core/geometry'
import { type Plan, planJob } from '@dawnlift/core/plan'
import type { Problem } from '@dawnlift/core/result'
import { openJob } from '@dawnlift/formats/job-folder'
import { beforeAll, describe, expect, it } from 'vitest'
import { noRealInputs, realFolder, root } from './sources.js'

const folder = realFolder('dxf')
const absent = !existsSync(folder)
const skipped = absent ? ` (skipped: ${noRealInputs})` : ''

/** What a print lead would write of a drawing, and why it cannot be printed as it is. */
interface Mapping {
  readonly unit: string
  readonly layers: readonly string[]
  readonly thickness: string
  readonly height?: string
  readonly joinWithin?: string
  /** Problems by code, each once; none when it goes through. */
  readonly problems?: readonly string[]
}

const drawings: Readonly<Record<string, Mapping>> = {
  // Its loop crosses itself, though its name says otherwise.
  'ezdxf_6_closed_loop_with_arcs.dxf': {
    unit: 'in',
    layers: ['0'],
    thickness: '200 mm',
    problems: ['dxf/self-crossing'],
  },
  // Only a hatch stands in its model space.
  'ezdxf_clockwise_arcs_hatch.dxf': {
    unit: 'm',
    layers: ['0'],
    thickness: '200 mm',
    problems: ['dxf/nothing-drawn'],
  },
  // Its header says inch; its size says millimetre.
  'ezdxf_wipeout_door.dxf': { unit: 'mm', layers: ['A.Wall_Internal'], thickness: '200 mm' },
  'fzk-eg-ifcaxis.dxf': { unit: 'm', layers: ['WALL-EXT', 'WALL-INT'], thickness: '300 mm' },
  'fzk-eg-midline.dxf': { unit: 'm', layers: ['WALL-EXT', 'WALL-INT'], thickness: '300 mm' },
  // A site plan: outlines of plot and house touch along their length.
  'house-by-programmer-siteplan.dxf': {
    unit: 'm',
    layers: ['s001-#def-active-grp'],
    thickness: '200 mm',
    problems: ['wall/alongside'],
  },
  // A storey of a real block of flats; its lines end at faces, a wall's thickness past each other.
  'mlstruct302-centreline.dxf': {
    unit: 'm',
    layers: ['WALL-CL'],
    thickness: '160 mm',
    height: '400 mm',
    joinWithin: '170 mm',
  },
  'mlstruct302-double.dxf': {
    unit: 'm',
    layers: ['WALL'],
    thickness: '160 mm',
    height: '400 mm',
    joinWithin: '170 mm',
  },
}

/** Site, weather, crew and rules of the garden wall, around a drawing by other hands and a machine that reaches all of it. */
const around = readFileSync(join(root, 'fixtures/jobs/garden-wall/job.yaml'), 'utf8')
  .replace(/^(walls|wallTypes|openings|embedTypes|embeds|machine|print):\n(?:( .*)?\n)+?(?=\S)/gm, '')
  .concat(`
print: { beadWidth: 50 mm, layerHeight: 20 mm, speed: 200 mm/s }
machine:
  profile: gantry-28
  origin: [30 m, 30 m, 0 m]
  reach: { x: [0 m, 90 m], y: [0 m, 60 m] }
`)

const jobFrom = (file: string, { unit, layers, thickness, height, joinWithin }: Mapping): string => `${around}
wallTypes:
  wall: { makeUp: double, thickness: ${thickness}, height: ${height ?? '1.2 m'} }
drawing:
  file: ${file}
  unit: ${unit}
  joinWithin: ${joinWithin ?? '5 mm'}
  layers:
${layers.map(layer => `    '${layer}': { is: walls, type: wall }`).join('\n')}
`

interface Way {
  readonly problems: readonly Problem[]
  readonly plan?: Plan
}

/** Each drawing is planned once. */
const ways = new Map<string, Promise<Way>>()
function wholeWay(file: string): Promise<Way> {
  const way = ways.get(file) ?? walk(file)
  ways.set(file, way)
  return way
}

async function walk(file: string): Promise<Way> {
  const document = jobFrom(file, drawings[file]!)
  const opened = openJob({
    document,
    read: name => (name === file ? readFileSync(join(folder, name)) : undefined),
  })
  if (!opened.ok) return opened
  const plan = await planJob(opened.value)
  return plan ? { problems: [], plan } : { problems: [] }
}

describe.skipIf(absent)(`drawings by other hands, from file to print days${skipped}`, () => {
  beforeAll(() => initGeometry())
  const names = Object.keys(drawings)
  const printable = names.filter(name => !drawings[name]?.problems)

  it('are all tried', () =>
    expect(names).toEqual(
      readdirSync(folder)
        .filter(name => name.endsWith('.dxf'))
        .sort(),
    ))

  it.each(names.filter(name => drawings[name]?.problems))(
    '%s is refused, every problem with its place',
    async file => {
      const { problems } = await wholeWay(file)
      expect([...new Set(problems.map(({ code }) => code))]).toEqual(drawings[file]!.problems)
      for (const { at } of problems) expect(at).toMatch(/\.dxf|\(-?\d+\.\d+, -?\d+\.\d+\) m/)
    },
  )

  it.each(printable)('%s is planned to its top, every layer of every section once', async file => {
    const { problems, plan } = await wholeWay(file)
    expect(problems).toEqual([])
    expect(plan?.findings.filter(({ verdict }) => verdict === 'fail')).toEqual([])
    expect(plan?.campaign.finished).toBe(true)
    for (const { section, layers } of plan?.bands ?? []) {
      const lifts = plan!.campaign.days.flatMap(day => day.lifts).filter(lift => lift.section === section)
      const printed = lifts.flatMap(({ firstLayer, lastLayer }) => range(firstLayer, lastLayer))
      expect(printed).toEqual(range(1, layers))
    }
  })

  // independent: the storey was drawn once as centrelines and once as face outlines; each is the answer sheet of the other.
  it('one storey from centrelines and from faces is the same work to a hundredth of a per cent', async () => {
    const [lines, faces] = await Promise.all(
      ['centreline', 'double'].map(kind => wholeWay(`mlstruct302-${kind}.dxf`)),
    )
    expect(lines!.plan!.job.walls.length).toBeGreaterThan(50)
    expect(faces!.plan!.tally.total.volume / lines!.plan!.tally.total.volume).toBeCloseTo(1, 4)
    expect(faces!.plan!.campaign.days.length).toBe(lines!.plan!.campaign.days.length)
  })
})

const range = (from: number, to: number): number[] =>
  Array.from({ length: to - from + 1 }, (_, i) => from + i)
