import { failure, type Problem, type Result, success } from '@dawnlift/core/result'
import { applyModes } from './apply-modes.js'
import { arcWords } from './arc.js'
import { type Block, checkLine } from './check-line.js'
import { followMotion } from './follow-motion.js'
import type { MachineRun, RunStep } from './machine-run.js'
import { type Axis, axes, initialState, type MachineState } from './machine-state.js'
import { type Report, readLine } from './read-line.js'

/** How a file is to be read. */
export interface ReadOptions {
  /** Name shown in problems. */
  readonly name?: string
  /** Rotary word of the heading; C unless told. */
  readonly rotary?: 'A' | 'B' | 'C'
  /** Leave out lines that begin with `/`, as a controller does whose switch is on. */
  readonly skipDeletable?: boolean
}

/** A reader that goes on behind this many problems tells nothing new. */
const mostProblems = 200

/**
 * Reads a machine file by the rules of RS274/NGC [NISTIR6556], whoever wrote it: shares no code with our writer.
 * Parameters, expressions, cutting cycles and cutter compensation are refused, each with its line.
 */
export function readMachineFile(text: string, options: ReadOptions = {}): Result<MachineRun> {
  const reading = startReading(options)
  const lines = text.split('\n')
  const { first, last } = programLines(lines, reading)
  for (let i = first; i < last && !reading.ended; i++) readOne(reading, lines[i]!, i + 1)
  if (!reading.ended && !reading.marked)
    reading.report(
      'rs274/no-end',
      lines.length,
      'The file ends without M2, M30 or a closing %: it may be cut off.',
    )
  if (reading.problems.length > 0) return failure(summed(reading.problems))
  const { steps, comments, notes, state } = reading
  return success({ units: state.units, steps, comments, notes, lines: lines.length })
}

interface Reading {
  readonly options: ReadOptions
  readonly state: MachineState
  readonly problems: Problem[]
  readonly report: Report
  readonly steps: RunStep[]
  readonly comments: { line: number; text: string }[]
  readonly notes: { line: number; say: string }[]
  /** Between two lines of %. */
  marked: boolean
  ended: boolean
}

function startReading(options: ReadOptions): Reading {
  const problems: Problem[] = []
  const name = options.name ?? 'machine file'
  const report: Report = (code, line, say, values) => {
    problems.push({ code, at: `${name}:${line}`, say, ...(values ? { values } : {}) })
  }
  const state = initialState()
  return { options, state, problems, report, steps: [], comments: [], notes: [], marked: false, ended: false }
}

/** What counts: all lines, or those between two lines of % (3.2). */
function programLines(lines: readonly string[], reading: Reading): { first: number; last: number } {
  const isMark = (line: string | undefined) => line !== undefined && /^[ \t]*%[ \t\r]*$/.test(line)
  const first = lines.findIndex(line => line.trim() !== '')
  if (first < 0 || !isMark(lines[first])) return { first: 0, last: lines.length }
  const end = lines.findIndex((line, i) => i > first && isMark(line))
  reading.marked = end >= 0
  return { first: first + 1, last: end >= 0 ? end : lines.length }
}

function readOne(reading: Reading, text: string, line: number): void {
  const { options, report, problems } = reading
  if (problems.length > mostProblems) {
    reading.ended = true
    return
  }
  const read = readLine(text, line, report)
  if (read.deletable && options.skipDeletable) return
  const before = problems.length
  const block = checkLine(read, report)
  if (block.comment !== undefined) takeComment(reading, block.comment, line)
  // a line that cannot be read is not followed either
  if (problems.length === before) execute(reading, block)
}

function takeComment({ comments, state }: Reading, text: string, line: number): void {
  comments.push({ line, text })
  const message = /^\s*MSG,(.*)$/i.exec(text)
  if (message) state.message = message[1]!.trim()
}

/** One line in the order of table 8: modes, pump, dwell, motion, stop. */
function execute(reading: Reading, block: Block): void {
  const { state, steps, report, options } = reading
  const { line, g, m } = block
  applyModes(state, block, report)
  for (const word of [3, 4, 5]) if (m.includes(word)) switchPump(reading, line, word !== 5)
  if (g.includes(4)) dwell(reading, block)
  const motion = chosenMotion(reading, block)
  if (motion && g.some(word => word === 28 || word === 30)) goHome(reading, block)
  else if (motion) {
    const step = followMotion(state, block, options.rotary ?? 'C', report)
    if (step) steps.push(step)
    if (step?.kind === 'rapid' && state.pump && step.length > 0)
      reading.notes.push({ line, say: 'The pump runs during a rapid move.' })
  }
  if (m.includes(0) || m.includes(1) || m.includes(60)) {
    steps.push({ kind: 'stop', line, message: state.message })
    state.message = undefined
  }
  if (m.includes(2) || m.includes(30)) reading.ended = true
}

function switchPump({ state, steps }: Reading, line: number, on: boolean): void {
  if (state.pump !== on) steps.push({ kind: 'pump', line, on })
  state.pump = on
}

function dwell({ steps, report }: Reading, { line, values }: Block): void {
  const seconds = values.P
  if (seconds === undefined) report('rs274/dwell', line, 'G4 has no P: how long to wait.')
  else if (seconds < 0) report('rs274/dwell', line, `G4 P${seconds}: nobody waits a negative time.`)
  else steps.push({ kind: 'dwell', line, seconds })
}

/** Sets the motion in force and tells whether this line moves. */
function chosenMotion({ state, report }: Reading, { line, g, values }: Block): boolean {
  const given = g.find(word => word === 0 || word === 1 || word === 2 || word === 3 || word === 80)
  const named = axes.some((axis: Axis) => values[axis] !== undefined)
  const takesAxes = g.find(word => word === 10 || word === 28 || word === 30 || word === 92)
  if (given !== undefined) state.motion = given as MachineState['motion']
  if (takesAxes !== undefined) {
    if (given !== undefined && given !== 80 && named)
      report(
        'rs274/two-uses',
        line,
        `G${given} and G${takesAxes} both want the axis words of the line. Use two lines.`,
      )
    return takesAxes === 28 || takesAxes === 30
  }
  if (given === 80 && named)
    report('rs274/no-motion', line, 'G80 ends all motion, yet axis words stand on its line.')
  if (given !== undefined && given !== 80 && !named)
    report('rs274/no-axis', line, `G${given} names no axis to move.`)
  else if (!named && arcWords(values))
    report('rs274/no-axis', line, 'I, J, K or R stand on the line without an axis to move.')
  if (g.includes(53) && (state.motion === undefined || state.motion > 1))
    report('rs274/g53', line, 'G53 goes with G0 or G1 only.')
  return named && given !== 80
}

/** G28 and G30 lead to a place only the controller knows. */
function goHome({ state, notes }: Reading, { line, values }: Block): void {
  const named = axes.filter(axis => values[axis] !== undefined)
  for (const axis of named.length > 0 ? named : axes) delete state.at[axis]
  notes.push({ line, say: 'The nozzle goes to the home of the controller, a place this file does not tell.' })
}

function summed(problems: readonly Problem[]): Problem[] {
  if (problems.length <= mostProblems) return [...problems]
  const last = problems[mostProblems]!
  return [
    ...problems.slice(0, mostProblems),
    {
      code: 'rs274/more',
      at: last.at,
      say: `More than ${mostProblems} problems: reading stopped here. Is this a machine file?`,
    },
  ]
}
