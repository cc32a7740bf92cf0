import type { Job, Wall } from '@dawnlift/core/job'
import type { Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import type { Assumed } from './assumed.js'
import { buildMachine } from './build-machine.js'
import { buildMix } from './build-mix.js'
import { buildPins } from './build-pins.js'
import { buildBatching, buildCalendar, buildRules, buildWeather, type JobWeather } from './build-site.js'
import { given } from './build-types.js'
import { buildColumns, buildEmbeds, buildOpenings, buildWalls } from './build-walls.js'
import { checkInspections } from './check-inspections.js'
import { checkJob, type JobParts } from './check-job.js'
import { type DefaultPath, defaultTable } from './default-table.js'
import type { DrawingNote, DrawingWalls } from './drawing-walls.js'
import type { JobDocument } from './job-schema.js'
import { type Ledger, openLedger } from './ledger.js'
import { checkLeftOut, withoutLeftOut } from './left-out.js'
import { nameList } from './name-list.js'
import { type ReadDocument, readDocument } from './read-document.js'

export interface ParsedJob {
  readonly job: Job
  readonly weather: JobWeather
  /** Every value the job did not give. */
  readonly assumed: readonly Assumed[]
  /** What was joined, straightened or left out of the drawing. */
  readonly notes: readonly DrawingNote[]
  /** The site's tests of the mix, a file beside the job. */
  readonly testsFile?: string
  /** What migrations changed. */
  readonly migrated: readonly string[]
}

export interface ParseOptions {
  /** What the drawing named in the document gives, from `drawingWalls`. */
  readonly drawing?: DrawingWalls
  /** For messages. */
  readonly fileName?: string
}

/** `job.yaml` → the job in SI with everything it assumes; or all its problems. */
export function parseJob(text: string, options: ParseOptions = {}): Result<ParsedJob> {
  const read = readDocument(text, options.fileName ?? 'job.yaml')
  if (!read.ok) return read
  const { document, source, migrated } = read.value
  const ledger = openLedger(document.units, source.place)
  noteDefaults(read.value, ledger)
  const drawn = options.drawing && withoutLeftOut(options.drawing, document.drawing?.leaveOut ?? [])
  const parts = buildParts(document, drawn, ledger)
  const weather = buildWeather(document, ledger)
  const machine = buildMachine(document.machine, document.units, ledger)
  const mix = buildMix(document.mix, document.units, ledger)
  const calendar = buildCalendar(document, ledger)
  const batching = buildBatching(document, ledger)
  const pins = buildPins(document, ledger)
  checkDocument(document, parts, options.drawing, ledger)
  if (options.drawing) checkLeftOut(document, options.drawing, ledger)
  if (ledger.problems.length > 0 || !weather || !machine) return failure(ledger.problems)
  const [x, y, z] = document.machine.origin
  const rules = buildRules(document.rules, blockOf(read.value.raw.rules))
  const { name, revision, units, site, print, crew, costs } = document
  const job: Job = {
    name,
    revision,
    units,
    site,
    print,
    crew,
    costs,
    machine,
    mix,
    calendar,
    rules,
    ...parts,
    batching,
    inspections: document.inspections,
    ...(pins.length > 0 ? { pins } : {}),
    ...given({ aim: document.aim }),
    machineOrigin: { x, y, z, turn: document.machine.turn },
  }
  const testsFile = document.mix === 'default' ? undefined : document.mix.tests
  return success({
    job,
    weather,
    assumed: ledger.assumed,
    notes: options.drawing?.notes ?? [],
    migrated,
    ...given({ testsFile }),
  })
}

function buildParts(document: JobDocument, drawing: DrawingWalls | undefined, ledger: Ledger): JobParts {
  return {
    walls: jointed(overlaid(drawing?.walls ?? [], buildWalls(document, ledger)), document, ledger),
    openings: overlaid(drawing?.openings ?? [], buildOpenings(document, ledger)),
    embeds: overlaid(drawing?.embeds ?? [], buildEmbeds(document, ledger)),
    columns: overlaid(drawing?.columns ?? [], buildColumns(document, ledger)),
    sections: document.sections,
    noCutAt: document.noCutAt,
  }
}

/** What the document itself gives under an id of the drawing stands in for the drawn thing: so a lead moves a drawn window. */
function overlaid<T extends { readonly id: string }>(drawn: readonly T[], own: readonly T[]): readonly T[] {
  const byId = new Map(own.map(each => [each.id, each]))
  const drawnIds = new Set(drawn.map(each => each.id))
  const added = own.filter(each => !drawnIds.has(each.id) || byId.get(each.id) !== each)
  return [...drawn.map(each => byId.get(each.id) ?? each), ...added]
}

/** Walls with the control joints the job puts into them. */
function jointed(walls: readonly Wall[], document: JobDocument, ledger: Ledger): readonly Wall[] {
  for (const [index, { wall }] of document.joints.entries())
    if (!walls.some(each => each.id === wall))
      ledger.wrong(
        'job/unknown-wall',
        ['joints', index, 'wall'],
        `The joint names wall “${wall}”, which is not there; walls are ${nameList(walls.map(each => each.id))}.`,
      )
  return walls.map(wall => {
    const own = document.joints.filter(joint => joint.wall === wall.id).map(joint => joint.at)
    return own.length === 0 ? wall : { ...wall, joints: [...wall.joints, ...own].sort((a, b) => a - b) }
  })
}

type PartList = 'walls' | 'openings' | 'embeds' | 'columns' | 'sections'

function checkDocument(
  document: JobDocument,
  parts: JobParts,
  drawing: DrawingWalls | undefined,
  ledger: Ledger,
): void {
  const where = (list: string, id: string) => {
    const index = document[list as PartList].map(each => each.id).lastIndexOf(id)
    return index >= 0 ? [list, index] : ['drawing', 'file']
  }
  if (document.drawing && !drawing)
    ledger.wrong(
      'job/drawing-missing',
      ['drawing', 'file'],
      `The drawing “${document.drawing.file}” has not been read; put it beside the job.`,
    )
  else if (parts.walls.length === 0 && ledger.problems.length === 0)
    ledger.wrong(
      'job/no-walls',
      ['walls'],
      'There is no wall to print: give walls here or map a layer of the drawing to walls.',
    )
  if (document.crew.dayEnd <= document.crew.dayStart)
    ledger.wrong('job/day', ['crew', 'dayEnd'], 'The day ends before it starts; give dayEnd after dayStart.')
  checkJob(parts, where, ledger)
  checkInspections(document.inspections, parts.walls, ledger)
}

/** Rows of parts that may occur many times are noted where they are used; the others by their path. */
const perPart = /^(walls|openings|columns|embeds)\./

function noteDefaults({ raw }: ReadDocument, ledger: Ledger): void {
  for (const row of Object.keys(defaultTable) as DefaultPath[]) {
    if (perPart.test(row) || (row.startsWith('drawing.') && raw.drawing === undefined)) continue
    const keys = row.split('.')
    const value = keys.reduce<unknown>((inner, key) => blockOf(inner)[key], raw)
    if (value === undefined) ledger.assume(row, keys)
  }
}

const blockOf = (value: unknown): Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {}
