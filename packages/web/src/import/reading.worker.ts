import type { Job } from '@dawnlift/core/job'
import { failure, type Result, success } from '@dawnlift/core/result'
import { checkBuildable } from '@dawnlift/core/section'
import {
  type DrawingMapping,
  type DrawingNote,
  type DrawingUnit,
  type DrawingWalls,
  editJob,
  type JobEdit,
  parseJob,
  type RawJob,
  rawJob,
  readJobFiles,
} from '@dawnlift/document/job'
import { type Drawing, drawingWalls, readDrawing } from '@dawnlift/formats/dxf'
import { expose } from 'comlink'
import type { JobFiles } from '../state/index.js'
import { locatedProblems } from './located-problems.js'

/** A job without its plan, and what was joined or left out of its drawing. */
export interface ReadJob {
  readonly job: Job
  readonly notes: readonly DrawingNote[]
  /** Ids that the drawing gives, whatever the document says of them. */
  readonly drawn: readonly string[]
}

let last:
  | { readonly key: string; readonly content: Uint8Array; readonly walls: Result<DrawingWalls> }
  | undefined

/** Reads drawings and documents off the main thread, without planning them. */
const reader = {
  drawing: (content: Uint8Array, name: string, unit?: DrawingUnit): Result<Drawing> =>
    readDrawing(content, { name, ...(unit ? { unit } : {}) }),

  walls(content: Uint8Array, mapping: DrawingMapping): Result<DrawingWalls> {
    const key = JSON.stringify(mapping)
    if (last?.key === key && sameBytes(last.content, content)) return last.walls
    const drawing = readDrawing(content, {
      name: mapping.file,
      curveWithin: mapping.curveWithin,
      ...(mapping.unit ? { unit: mapping.unit } : {}),
    })
    const walls = drawing.ok ? drawingWalls(drawing.value, mapping) : drawing
    last = { key, content, walls }
    return walls
  },

  raw: (document: string): Result<RawJob> => rawJob(document),

  /**
   * The document with edits in it, if the job can still be built with them. Problems it had before do not stand in the
   * way: mending goes step by step.
   */
  edited(files: JobFiles, edits: readonly JobEdit[]): Result<string> {
    const next = editJob(files.document, edits)
    if (!next.ok) return next
    const after = reader.job({ ...files, document: next.value })
    if (after.ok) return next
    const before = reader.job(files)
    const known = new Set(before.ok ? [] : before.problems.map(each => each.say))
    const fresh = after.problems.filter(each => !known.has(each.say))
    return fresh.length > 0 ? failure(fresh) : next
  },

  /** The job a document describes, checked as the planner checks it before it plans. */
  job({ document, beside }: JobFiles): Result<ReadJob> {
    const files = readJobFiles(document)
    if (!files.ok) return files
    const mapping = files.value.drawing
    const content = mapping && beside[mapping.file]
    const walls = mapping && content ? reader.walls(content, mapping) : undefined
    if (walls && !walls.ok) return walls
    const parsed = parseJob(document, walls ? { drawing: walls.value } : {})
    if (!parsed.ok) return parsed
    const { job, notes } = parsed.value
    const problems = checkBuildable(job)
    return problems.length > 0
      ? failure(locatedProblems(problems, job))
      : success({ job, notes, drawn: walls?.ok ? idsOf(walls.value) : [] })
  },
}

export type Reader = typeof reader
expose(reader)

const idsOf = ({ walls, openings, embeds, columns }: DrawingWalls): readonly string[] =>
  [...walls, ...openings, ...embeds, ...columns].map(each => each.id)

const sameBytes = (a: Uint8Array, b: Uint8Array): boolean =>
  a.length === b.length && a.every((byte, index) => byte === b[index])
