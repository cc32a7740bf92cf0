import { type Machine, pumpFlow } from '@dawnlift/core/machine'
import type { FeedMove, MachineRun, RunStep } from './machine-run.js'
import { type Overfill, overfillOf } from './overfill.js'
import { stepTimes } from './planned-time.js'

/** What may be known besides the file. */
export interface InspectOptions {
  /** Gives planned times, the flow an S word stands for, and how long concrete comes after the pump stops. */
  readonly machine?: Machine
  /** Area of the bead [m²], for files whose S words say nothing about flow. */
  readonly beadArea?: number
}

/** Extents in metres: smallest and greatest. */
export interface Extents {
  readonly x: readonly [number, number]
  readonly y: readonly [number, number]
  readonly z: readonly [number, number]
}

export interface LayerSummary {
  readonly z: number
  readonly length: number
  readonly volume: number | undefined
  /** Under the feed words alone; rapid moves left out. */
  readonly feedTime: number
  /** With the machine's accelerations and rapid moves. */
  readonly plannedTime: number | undefined
  readonly starts: number
}

/** A machine file in numbers. Laid: run with the pump on, or within its stop lag after it went off. */
export interface RunSummary {
  readonly units: 'mm' | 'in'
  readonly lines: number
  /** Of what is laid; none when nothing is. */
  readonly extents: Extents | undefined
  readonly length: number
  readonly volume: number | undefined
  readonly feedTime: number
  readonly plannedTime: number | undefined
  /** What corners get too much; known only with the machine. */
  readonly overfill: Overfill | undefined
  readonly starts: number
  readonly stops: readonly { readonly line: number; readonly message: string | undefined }[]
  readonly layers: readonly LayerSummary[]
  readonly pumpOn: readonly { readonly fromLine: number; readonly toLine: number; readonly length: number }[]
  /** Fastest the heading axis is asked to turn on the way [rad/s], and how far it winds [rad]. */
  readonly headingRateMost: number
  readonly headingRange: readonly [number, number] | undefined
  readonly notes: MachineRun['notes']
}

/** Two heights nearer than this are one layer [m]; no bead is thinner. */
const sameLayer = 1e-3

/** Sums up what a file does: where, how much, how long, layer by layer. */
export function inspectRun(run: MachineRun, options: InspectOptions = {}): RunSummary {
  const laid = laidSteps(run.steps, options.machine?.pump.stopLag ?? 0)
  const times = options.machine ? stepTimes(run, options.machine) : undefined
  const layers = layersOf(run.steps, laid, times, options)
  const total = (of: (layer: LayerSummary) => number) => layers.reduce((sum, layer) => sum + of(layer), 0)
  const moves = run.steps.filter((step, i): step is FeedMove => laid[i] === true && isFeed(step))
  const known = layers.every(layer => layer.volume !== undefined)
  return {
    units: run.units,
    lines: run.lines,
    extents: extentsOf(moves),
    length: total(layer => layer.length),
    volume: known ? total(layer => layer.volume ?? 0) : undefined,
    feedTime: run.steps.reduce((sum, step) => sum + feedTime(step), 0),
    plannedTime: times?.reduce((sum, time) => sum + time, 0),
    overfill: times && options.machine ? overfillOf(run, times, options.machine) : undefined,
    starts: run.steps.filter(step => step.kind === 'pump' && step.on).length,
    stops: run.steps.flatMap(step =>
      step.kind === 'stop' ? [{ line: step.line, message: step.message }] : [],
    ),
    layers,
    pumpOn: pumpIntervals(run.steps),
    headingRateMost: run.steps.reduce(
      (most, step) => Math.max(most, isFeed(step) ? headingRate(step) : 0),
      0,
    ),
    headingRange: headingRange(run.steps),
    notes: run.notes,
  }
}

const isFeed = (step: RunStep): step is FeedMove => step.kind === 'line' || step.kind === 'arc'

const feedTime = (step: RunStep): number =>
  isFeed(step) ? step.time : step.kind === 'dwell' ? step.seconds : 0

const headingRate = (step: FeedMove): number => (step.time > 0 ? Math.abs(step.turn) / step.time : 0)

/** Which steps lay concrete: the pump runs, or stopped no longer ago than its lag with the nozzle still going. */
function laidSteps(steps: readonly RunStep[], stopLag: number): boolean[] {
  let left = 0
  return steps.map(step => {
    if (step.kind === 'pump') left = step.on ? 0 : stopLag
    else if (!isFeed(step) || step.directions === undefined) left = 0
    if (!isFeed(step) || step.directions === undefined) return false
    if (step.pump) return true
    // the lag is run under the feed word here and while braking in the plan, which is shorter; a slow feed loses up to a
    // thousandth by being written
    const within = left > 0 && step.time <= left * 1.001
    left -= step.time
    return within
  })
}

function volumeOf(step: FeedMove, { machine, beadArea }: InspectOptions): number | undefined {
  if (beadArea !== undefined) return beadArea * step.length
  if (!machine || step.setting === undefined) return undefined
  return pumpFlow(machine, step.setting) * step.time
}

/** Layers by the height of what is laid; the way to a layer counts to it, what follows the last to the last. */
function layersOf(
  steps: readonly RunStep[],
  laid: readonly boolean[],
  times: readonly number[] | undefined,
  options: InspectOptions,
): LayerSummary[] {
  const layers: { z: number; steps: number[] }[] = []
  let pending: number[] = []
  steps.forEach((step, i) => {
    pending.push(i)
    if (!laid[i] || !isFeed(step)) return
    const z = step.to.z ?? 0
    const layer = layers.at(-1)
    if (layer && Math.abs(layer.z - z) < sameLayer) layer.steps.push(...pending)
    else layers.push({ z, steps: pending })
    pending = []
  })
  layers.at(-1)?.steps.push(...pending)
  return layers.map(layer => summaryOf(layer, steps, laid, times, options))
}

function summaryOf(
  layer: { readonly z: number; readonly steps: readonly number[] },
  steps: readonly RunStep[],
  laid: readonly boolean[],
  times: readonly number[] | undefined,
  options: InspectOptions,
): LayerSummary {
  let [length, time, planned, starts] = [0, 0, 0, 0]
  let volume: number | undefined = 0
  for (const i of layer.steps) {
    const step = steps[i]!
    time += feedTime(step)
    planned += times?.[i] ?? 0
    if (step.kind === 'pump' && step.on) starts++
    if (!laid[i] || !isFeed(step)) continue
    length += step.length
    const more = volumeOf(step, options)
    volume = volume === undefined || more === undefined ? undefined : volume + more
  }
  return { z: layer.z, length, volume, feedTime: time, plannedTime: times ? planned : undefined, starts }
}

function extentsOf(moves: readonly FeedMove[]): Extents | undefined {
  if (moves.length === 0) return undefined
  const box = [0, 1, 2, 3, 4, 5].map(k =>
    moves.reduce(
      (so, move) => (k % 2 === 0 ? Math.min(so, move.box[k]!) : Math.max(so, move.box[k]!)),
      k % 2 === 0 ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY,
    ),
  )
  return { x: [box[0]!, box[1]!], y: [box[2]!, box[3]!], z: [box[4]!, box[5]!] }
}

function pumpIntervals(steps: readonly RunStep[]) {
  const intervals: { fromLine: number; toLine: number; length: number }[] = []
  let pumping = false
  for (const step of steps) {
    if (step.kind === 'pump') pumping = step.on
    if (step.kind === 'pump' && step.on) intervals.push({ fromLine: step.line, toLine: step.line, length: 0 })
    const open = intervals.at(-1)
    if (!open || (!pumping && step.kind !== 'pump')) continue
    open.toLine = step.line
    if (isFeed(step)) open.length += step.length
  }
  return intervals
}

function headingRange(steps: readonly RunStep[]): readonly [number, number] | undefined {
  let range: [number, number] | undefined
  for (const step of steps)
    if ((step.kind === 'rapid' || isFeed(step)) && step.heading !== undefined)
      range = range
        ? [Math.min(range[0], step.heading), Math.max(range[1], step.heading)]
        : [step.heading, step.heading]
  return range
}
