import type { Point } from '@dawnlift/core/geometry'
import { pumpOffWord, pumpOnWords, pumpSetting } from '@dawnlift/core/machine'
import {
  beadFlow,
  headingTargets,
  isSharp,
  type Pass,
  partBulge,
  peakAtEnd,
  pointAt,
  type Segment,
  segmentsOf,
} from '@dawnlift/core/route'
import type { ByteText, TextSpan } from './byte-text.js'
import { type ChainRules, type ChainText, type Cursor, writePiece } from './write-piece.js'
import {
  degreesOf,
  feedOnGrid,
  feedPlaces,
  headingOnGrid,
  headingPlaces,
  onGrid,
  plain,
  putPlace,
  writtenUnits,
} from './written-number.js'

/**
 * Lines of passes that follow one another without a stop: pump on, wait for its lag, run, pump off ahead of the end.
 * They hold no height and name no bead, so that all layers and lifts of a plan share them. Pieces of the text they were
 * written to.
 */
export interface ChainLines {
  /** The way over to its first point. */
  readonly over: TextSpan
  /** What is run of each pass. */
  readonly passes: readonly TextSpan[]
}

export function writeChain(passes: readonly Pass[], to: ChainText): ChainLines {
  const cursor = cursorAt(passes[0]!, to)
  const { text, rules } = to
  const over = text.spanOf(() => writeWayOver(cursor))
  const ahead = runOutLength(passes, rules)
  const lines = passes.map((pass, i) =>
    text.spanOf(() => {
      const next = passes[i + 1]
      if (i === 0) pumpOn(cursor, pass)
      writePass(cursor, pass, next, next ? 0 : ahead)
      if (next) turnTo(cursor, next.headings[0]!)
      else pumpOff(cursor)
    }),
  )
  return { over, passes: lines }
}

function cursorAt({ path, headings }: Pass, to: ChainText): Cursor {
  const { rules, frame } = to
  const units = writtenUnits(rules.machine)
  const start = path.points[0]!
  return {
    rules,
    units,
    frame,
    text: to.text,
    settingText: to.settingText,
    x: onGrid(frame.x(start), units),
    y: onGrid(frame.y(start), units),
    heading: headingOnGrid(headings[0]!),
    feed: Number.NaN,
    section: Number.NaN,
    pace: Number.NaN,
    paceSection: Number.NaN,
    setting: '',
    pumping: false,
  }
}

function writeWayOver({ text, x, y, heading, units, rules }: Cursor): void {
  const { headingRate, words } = rules.machine
  putPlace(text.words('G0 '), x, y, units)
  if (headingRate > 0) text.words(` ${words.rotary}`).decimal(heading, headingPlaces)
  text.words('\n')
}

function writePass(cursor: Cursor, pass: Pass, next: Pass | undefined, ahead: number): void {
  const targets = headingTargets(pass.path, pass.headings, next?.headings[0])
  const segments = segmentsOf(pass.path)
  const last = segments.length - 1
  cursor.section = beadFlow(pass, 1)
  for (let i = 0; i <= last; i++) {
    if (i > 0) turnTo(cursor, pass.headings[i]!)
    const [segment, speed, target] = [segments[i]!, pass.speeds[i]!, targets[i]!]
    if (i === last && ahead > 0) writeRunOut(cursor, segment, speed, target, ahead)
    else writePiece(cursor, segment, speed, target)
  }
}

/** The last piece in two: with the pump, and without it while its flow dies away. */
function writeRunOut(cursor: Cursor, segment: Segment, speed: number, target: number, ahead: number): void {
  const share = 1 - ahead / segment.length
  const middle = pointAt(segment, share)
  const part = (from: Point, to: Point, of: number, heading: number): Segment => ({
    ...segment,
    from,
    to,
    heading,
    bulge: partBulge(segment.bulge, of),
    sweep: segment.sweep * of,
    length: segment.length * of,
  })
  const pumped = part(segment.from, middle, share, segment.heading)
  writePiece(cursor, pumped, speed, target - segment.sweep * (1 - share))
  putLine(cursor, pumpOffWord)
  cursor.pumping = false
  writePiece(
    cursor,
    part(middle, segment.to, 1 - share, segment.heading + share * segment.sweep),
    speed,
    target,
  )
}

/** How far before the end the pump stops: what is run in its stop lag while braking, within the last piece. */
function runOutLength(passes: readonly Pass[], { machine, runOut }: ChainRules): number {
  const lag = machine.pump.stopLag
  if (!runOut || lag === 0) return 0
  const peak = peakAtEnd(passes, machine)
  const braking = peak / machine.acceleration
  const length =
    lag <= braking ? (machine.acceleration * lag ** 2) / 2 : peak * (lag - braking) + (peak * braking) / 2
  const last = segmentsOf(passes.at(-1)!.path).at(-1)!.length
  return last < 0.01 ? 0 : Math.min(length, 0.9 * last)
}

/** The pump starts on its own line, and the nozzle waits until the concrete is there. */
function pumpOn(cursor: Cursor, pass: Pass): void {
  const { machine } = cursor.rules
  const flow = beadFlow(pass, 1) * pass.speeds[0]!
  cursor.setting = cursor.settingText(pumpSetting(machine, flow))
  putLine(cursor, pumpOnWords(machine, cursor.setting))
  if (machine.words.extraOn) putLine(cursor, machine.words.extraOn)
  cursor.pumping = true
  awaitFlow(cursor)
}

function awaitFlow(cursor: Cursor): void {
  const { startLag } = cursor.rules.machine.pump
  if (startLag > 0) putLine(cursor, `G4 P${plain(startLag)}`)
}

/** A sharp corner: pump off, turn on the spot, pump on. A small turn was made on the way. */
function turnTo(cursor: Cursor, heading: number): void {
  const { machine } = cursor.rules
  const target = headingOnGrid(heading)
  if (machine.headingRate === 0 || target === cursor.heading) return
  const turn = ((degreesOf(target) - degreesOf(cursor.heading)) * Math.PI) / 180
  if (!isSharp(turn)) return
  cursor.feed = feedOnGrid((machine.headingRate * 180 * 60) / Math.PI)
  cursor.pace = Number.NaN
  putLine(cursor, pumpOffWord)
  cursor.text.words(`G1 ${machine.words.rotary}`).decimal(target, headingPlaces)
  cursor.text.words(' F').decimal(cursor.feed, feedPlaces).words('\n')
  cursor.heading = target
  putLine(cursor, machine.words.pumpOn)
  awaitFlow(cursor)
}

/** After a run-out the pump is off already. */
function pumpOff(cursor: Cursor): void {
  const { extraOff } = cursor.rules.machine.words
  if (cursor.pumping) putLine(cursor, pumpOffWord)
  if (extraOff) putLine(cursor, extraOff)
}

const putLine = ({ text }: Cursor, line: string): ByteText => text.words(line).words('\n')
