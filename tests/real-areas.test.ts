import { execFileSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { flattenPath, initGeometry, pathLength, regionArea, stroke } from '@dawnlift/core/geometry'
import type { Job } from '@dawnlift/core/job'
import { proposeSections } from '@dawnlift/core/section'
import { type Bead, layAllBeads, type SectionBands } from '@dawnlift/core/wall'
import { openJob } from '@dawnlift/formats/job-folder'
import { beforeAll, describe, expect, it } from 'vitest'
import { noRealInputs, realFolder, root } from './sources.js'

const folder = realFolder('dxf')
const python = '/usr/bin/python3'

function missing(): string {
  if (!existsSync(folder)) return noRealInputs
  try {
    execFileSync(python, ['-c', 'import ezdxf, shapely'], { stdio: 'ignore' })
    return ''
  } catch {
    return 'no shapely or no ezdxf; install the Debian packages python3-shapely and python3-ezdxf'
  }
}
const reason = missing()

interface Mapping {
  readonly unit: 'm' | 'mm'
  readonly layers: readonly string[]
  /** Thickness and joining in millimetres. */
  readonly thick: number
  readonly join: number
  /** The drawing shows the faces of its walls, not their middles. */
  readonly faces?: true
}

const drawings: Readonly<Record<string, Mapping>> = {
  'ezdxf_wipeout_door.dxf': { unit: 'mm', layers: ['A.Wall_Internal'], thick: 200, join: 5 },
  'fzk-eg-ifcaxis.dxf': { unit: 'm', layers: ['WALL-EXT', 'WALL-INT'], thick: 300, join: 5 },
  'fzk-eg-midline.dxf': { unit: 'm', layers: ['WALL-EXT', 'WALL-INT'], thick: 300, join: 5 },
  'mlstruct302-centreline.dxf': { unit: 'm', layers: ['WALL-CL'], thick: 160, join: 170 },
  'mlstruct302-double.dxf': { unit: 'm', layers: ['WALL'], thick: 160, join: 170, faces: true },
}

/** Site, crew and rules of the garden wall, round a drawing by other hands. */
const around = readFileSync(join(root, 'fixtures/jobs/garden-wall/job.yaml'), 'utf8').replace(
  /^(walls|wallTypes|openings|embedTypes|embeds|machine|print):\n(?:( .*)?\n)+?(?=\S)/gm,
  '',
)

function jobOf(file: string, { unit, layers, thick, join: within }: Mapping): Job {
  const document = `${around}
print: { beadWidth: 50 mm, layerHeight: 20 mm, cornerRadius: 0 mm, speed: 200 mm/s }
machine:
  profile: gantry-28
  origin: [30 m, 30 m, 0 m]
  reach: { x: [0 m, 90 m], y: [0 m, 60 m] }
wallTypes:
  wall: { makeUp: double, thickness: ${thick} mm, height: 400 mm }
drawing:
  file: ${file}
  unit: ${unit}
  joinWithin: ${within} mm
  layers:
${layers.map(layer => `    '${layer}': { is: walls, type: wall }`).join('\n')}
`
  const read = (name: string) => (name === file ? readFileSync(join(folder, name)) : undefined)
  const opened = openJob({ document, read })
  if (!opened.ok) throw new Error(opened.problems[0]?.say)
  return opened.value.job
}

/** What shapely and ezdxf find; areas in m², lengths in m. */
interface Found {
  readonly length: number
  readonly footprint: number
  readonly sections: readonly number[]
  readonly shared: number
  readonly covered: readonly number[]
  readonly proud: readonly number[]
  readonly drawnLines: number
  readonly drawnLength: number
  readonly added: readonly number[]
  readonly lost: readonly number[]
}

function ask(file: string, mapping: Mapping, job: Job, laid: readonly SectionBands[]): Found {
  const input = {
    file: join(folder, file),
    layers: mapping.layers,
    metres: mapping.unit === 'mm' ? 0.001 : 1,
    faces: mapping.faces ?? false,
    within: strays(mapping),
    walls: job.walls.map(({ centreline, thickness }) => ({ ...centreline, thickness })),
    bodies: laid.map(({ bands }) => bands[0]!.body),
    beads: laid.map(({ bands }) => bands[0]!.beads.map(({ path, width }) => ({ ...path, width }))),
  }
  const answer = execFileSync(python, [join(root, 'tests/real-areas.py')], { input: JSON.stringify(input) })
  return JSON.parse(answer.toString()) as Found
}

/** How far a wall may lie from where it is drawn: a line's end is moved to what it is joined with. */
const strays = ({ join: within }: Mapping): number => (within > 5 ? within / 1000 : 1e-6)

function coveredArea(beads: readonly Bead[], tolerance: number): number {
  const lines = beads.map(({ path }) => {
    const line = flattenPath(path, tolerance)
    return path.closed ? [...line, line[0]!] : line
  })
  return regionArea(stroke(lines, beads[0]!.width, 'round', 'round', tolerance))
}

const skipped = reason && ` (skipped: ${reason})`
// independent: shapely 1.8.5 with GEOS 3.11.1 for the plane, ezdxf 0.18.1 for the drawings; real-areas.py.
describe.skipIf(reason)(`areas and lengths of drawings by other hands, by another program${skipped}`, () => {
  beforeAll(() => initGeometry())
  const known = new Map<string, { job: Job; laid: readonly SectionBands[]; found: Found }>()
  const measured = (file: string) => {
    const mapping = drawings[file]!
    const before = known.get(file)
    if (before) return before
    const job = jobOf(file, mapping)
    const laid = layAllBeads(job, proposeSections(job).sections)
    const made = { job, laid, found: ask(file, mapping, job, laid) }
    known.set(file, made)
    return made
  }
  const files = Object.keys(drawings)

  it.each(files)('%s: its sections together are its walls, each once', file => {
    const { job, laid, found } = measured(file)
    const areas = laid.map(({ bands }) => bands[0]!.bodyArea)
    // Strips are drawn out by 1e-7 m at each end; shapely sums the same polygons in another order.
    const lap = 2e-7 * job.walls.reduce((sum, { thickness }) => sum + thickness, 0)
    expect(Math.abs(areas.reduce((sum, area) => sum + area, 0) - found.footprint)).toBeLessThan(lap + 1e-9)
    areas.forEach((area, i) => {
      expect(Math.abs(area - found.sections[i]!)).toBeLessThan(1e-9)
    })
    expect(found.shared).toBeLessThan(lap)
  })

  it.each(files)('%s: beads cover the area they do, and none stands proud of its wall', file => {
    const { laid, found } = measured(file)
    const tolerance = 1e-6
    laid.forEach(({ bands }, i) => {
      const { beads } = bands[0]!
      // Chords leave both sides of a ribbon by the tolerance at most, here and there by as much.
      const most =
        4 * tolerance * beads.reduce((sum, { path, width }) => sum + pathLength(path) + 4 * width, 0)
      expect(Math.abs(coveredArea(beads, tolerance) - found.covered[i]!)).toBeLessThan(most)
      // Half a millimetre is what `validateBand` allows, too.
      expect(found.proud[i]!).toBeLessThan(1e-6)
    })
  })

  it.each(files)('%s: its walls are as long as its lines, but for the ends', file => {
    const { job, found } = measured(file)
    const { thick, join: within, faces } = drawings[file]!
    const length = job.walls.reduce((sum, { centreline }) => sum + pathLength(centreline), 0)
    // Arcs are chords within 1e-6 m there.
    expect(Math.abs(length - found.length)).toBeLessThan(1e-5)
    // Two long faces and two ends to a wall; an end goes to what it is joined with, or back from the far face it was drawn to.
    const drawn = faces ? found.drawnLength / 2 - (found.drawnLines * thick) / 1000 : found.drawnLength
    const perEnd = Math.max(within, thick / 2) / 1000
    expect(Math.abs(length - drawn)).toBeLessThan(2 * found.drawnLines * perEnd)
  })

  it.each(files)('%s: stands where it is drawn; corners add no more than their squares', file => {
    const { found } = measured(file)
    const corner = (drawings[file]!.thick / 2000) ** 2
    expect(found.lost).toEqual([])
    for (const area of found.added) expect(area).toBeLessThan(corner + 1e-6)
  })
})
