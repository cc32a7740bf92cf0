import type { Job } from '@dawnlift/core/job'
import type { SiteLog } from '@dawnlift/core/log'
import type { MixFit } from '@dawnlift/core/mix'
import { formatPlace } from '@dawnlift/core/quantity'
import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import { checkBuildable } from '@dawnlift/core/section'
import { checkStanding } from '@dawnlift/core/stand'
import type { WeatherHour } from '@dawnlift/core/weather'
import {
  type Assumed,
  type DrawingMapping,
  type DrawingNote,
  type DrawingWalls,
  type JobWeather,
  parseJob,
  readJobFiles,
} from '@dawnlift/document/job'
import { drawingWalls, readDrawing } from '../dxf/index.js'
import { jobLog } from './job-log.js'
import { mixFromTests } from './job-mix.js'
import { machineFromTrials } from './job-trials.js'
import { jobHours } from './job-weather.js'
import { keptLast } from './kept-last.js'

/** A job as it lies in a folder: its text, and a way to read the files beside it. */
export interface JobSource {
  readonly document: string
  /** Content of a file beside the job; undefined where there is none. */
  readonly read: (name: string) => Uint8Array | undefined
}

/** A job with everything the pipeline needs. */
export interface OpenedJob {
  readonly job: Job
  /** How the mix was fitted, when the job has tests of its own. */
  readonly mixFit?: MixFit
  readonly weather: JobWeather
  readonly hours: readonly WeatherHour[]
  readonly assumed: readonly Assumed[]
  /** What was joined or left out of the drawing, with places. */
  readonly notes: readonly DrawingNote[]
  /** Oddities of the weather file that do not stop it from being used. */
  readonly weatherNotes: readonly Problem[]
  /** What happened so far, if the site has begun to write it down. */
  readonly log?: SiteLog
}

/** Reads a job, its drawing and its weather; or gives every problem of all of them. The same in browser, server and terminal. */
export function openJob({ document, read }: JobSource): Result<OpenedJob> {
  const files = readJobFiles(document)
  if (!files.ok) return files
  const drawing = files.value.drawing ? readWalls(files.value.drawing, read) : success(undefined)
  const parsed = parseJob(document, drawing.ok && drawing.value ? { drawing: drawing.value } : {})
  if (!parsed.ok || !drawing.ok)
    return failure([
      ...(drawing.ok ? [] : drawing.problems),
      ...(parsed.ok ? [] : besides(drawing, parsed.problems)),
    ])
  const { weather, assumed, notes, testsFile } = parsed.value
  const fit = testsFile
    ? mixFromTests(testsFile, read(testsFile), parsed.value.job.mix, parsed.value.job.units)
    : undefined
  const mix = fit?.ok ? fit.value.mix : parsed.value.job.mix
  const { machine: assumedMachine, units } = parsed.value.job
  const machine = machineFromTrials(files.value.trialsFile, read, assumedMachine, mix.density, units)
  const hours = jobHours(parsed.value.job, weather, read)
  const log = jobLog(read, parsed.value.job.site.timeZone)
  const wallProblems = checkBuildable(parsed.value.job).map(problem =>
    placed(problem, parsed.value.job, files.value.drawing),
  )
  if ((fit && !fit.ok) || !hours.ok || !log.ok || !machine.ok || wallProblems.length > 0)
    return failure([
      ...wallProblems,
      ...(fit && !fit.ok ? fit.problems : []),
      ...(machine.ok ? [] : machine.problems),
      ...(hours.ok ? [] : hours.problems),
      ...(log.ok ? [] : log.problems),
    ])
  const job = { ...parsed.value.job, mix, machine: machine.value }
  const unsound = checkStanding({ ...job, sections: [] })
  if (unsound.length > 0) return failure(unsound)
  return success({
    job,
    ...(fit ? { mixFit: fit.value } : {}),
    weather,
    hours: hours.value.hours,
    assumed,
    notes,
    weatherNotes: hours.value.notes,
    ...(log.value ? { log: log.value } : {}),
  })
}

/** A drawing that has told its own problems is not also missing, and what stands in its walls is not astray. */
const besides = (drawing: Result<unknown>, problems: readonly Problem[]): readonly Problem[] =>
  drawing.ok
    ? problems
    : problems.filter(
        ({ code }) => !['job/drawing-missing', 'job/unknown-wall', 'job/unknown-id'].includes(code),
      )

/** Where a wall of a drawing lies: its number in a list means nothing to whoever drew it. */
function placed(problem: Problem, job: Job, drawing: DrawingMapping | undefined): Problem {
  const index = /^walls\[(\d+)\]/.exec(problem.at)?.[1]
  const wall = index === undefined ? undefined : job.walls[Number(index)]
  const [from, to] = [wall?.centreline.points[0], wall?.centreline.points.at(-1)]
  if (!drawing || !wall || !from || !to) return problem
  const at = (point: readonly [number, number]) => formatPlace(point, job.units)
  return { ...problem, at: `${drawing.file}, wall ${wall.id} from ${at(from)} to ${at(to)}` }
}

function readWalls(mapping: DrawingMapping, read: JobSource['read']): Result<DrawingWalls> {
  const content = read(mapping.file)
  if (!content) {
    return failure([
      {
        code: 'job/no-file',
        at: mapping.file,
        say: `The job names the drawing ${mapping.file}, but there is no such file beside it (or it is larger than 100 MB). Put it there or correct the name.`,
      },
    ])
  }
  return keptWalls({ text: JSON.stringify(mapping), content }, () => {
    const drawing = readDrawing(content, {
      ...(mapping.unit ? { unit: mapping.unit } : {}),
      name: mapping.file,
      curveWithin: mapping.curveWithin,
    })
    return drawing.ok ? drawingWalls(drawing.value, mapping) : drawing
  })
}

const keptWalls = keptLast<Result<DrawingWalls>>()
