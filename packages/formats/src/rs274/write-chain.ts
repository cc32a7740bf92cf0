import {
  type Machine,
  type MachineOrigin,
  machinePoint,
  pumpOffWord,
  pumpOnWords,
  pumpSetting,
} from '@dawnlift/core/machine'
import {
  beadFlow,
  centreOf,
  headingTargets,
  isSharp,
  movesOf,
  type Pass,
  partBulge,
  pointAt,
  type Segment,
  segmentsOf,
  speedProfile,
} from '@dawnlift/core/route'
import { comment } from './comment.js'
import {
  degreesOnGrid,
  feedText,
  onGrid,
  plain,
  settingText,
  type WrittenUnits,
  writtenUnits,
} from './written-number.js'

/** What the lines of a chain depend on besides its passes. */
export interface ChainRules {
  readonly machine: Machine
  readonly origin: MachineOrigin
  readonly runOut: boolean
}

/** Last values written: words that do not change are left out. */
interface Cursor {
  readonly rules: ChainRules
  readonly units: WrittenUnits
  readonly lines: string[]
  x: number
  y: number
  heading: number
  feed: string
  /** Pace and cross-section the last words were made from: most pieces keep both. */
  pace: number
  section: number
  setting: string
  pumping: boolean
}

/** One piece with what is written about it. */
interface Piece {
  readonly segment: Segment
  readonly speed: number
  readonly target: number
  readonly section: number
}

/**
 * Lines of passes that follow one another without a stop: pump on, wait for its lag, run, pump off ahead of the end.
 * They hold no height, so that layers of one plan share them.
 */
export function writeChain(passes: readonly Pass[], rules: ChainRules): string[] {
  const units = writtenUnits(rules.machine)
  const first = passes[0]!
  const [x, y] = startOf(passes, rules, units)
  const heading = degreesOnGrid(first.headings[0]!)
  const cursor: Cursor = {
    rules,
    units,
    lines: [],
    x,
    y,
    heading,
    feed: '',
    pace: Number.NaN,
    section: Number.NaN,
    setting: '',
    pumping: false,
  }
  for (const i of passes.keys()) {
    if (i > 0) turnTo(cursor, passes[i]!.headings[0]!)
    writePass(cursor, passes, i)
  }
  pumpOff(cursor)
  return cursor.lines
}

/** First point of a chain on the written grid, and the words that lead to it. */
export function startWords(passes: readonly Pass[], rules: ChainRules): string {
  const units = writtenUnits(rules.machine)
  const [x, y] = startOf(passes, rules, units)
  const place = `X${plain(x)} Y${plain(y)}`
  const { headingRate, words } = rules.machine
  return headingRate > 0 ? `${place} ${words.rotary}${plain(degreesOnGrid(passes[0]!.headings[0]!))}` : place
}

function startOf(passes: readonly Pass[], rules: ChainRules, units: WrittenUnits): readonly [number, number] {
  const [x, y] = machinePoint(rules.origin, passes[0]!.path.points[0]!)
  return [onGrid(x, units), onGrid(y, units)]
}

function writePass(cursor: Cursor, passes: readonly Pass[], index: number): void {
  const pass = passes[index]!
  const pieces = piecesOf(pass, passes[index + 1]?.headings[0])
  cursor.lines.push(comment(index === 0 ? `bead ${pass.bead}` : `bead ${pass.bead}, without a stop`))
  if (index === 0) pumpOn(cursor, pieces[0]!)
  const ahead = index === passes.length - 1 ? runOutLength(passes, cursor.rules) : 0
  pieces.forEach((piece, i) => {
    if (i > 0) turnTo(cursor, pass.headings[i]!)
    if (i === pieces.length - 1 && ahead > 0) writeRunOut(cursor, piece, ahead)
    else writePiece(cursor, piece)
  })
}

const piecesOf = (pass: Pass, next: number | undefined): Piece[] => {
  const targets = headingTargets(pass.path, pass.headings, next)
  const section = beadFlow(pass, 1)
  return segmentsOf(pass.path).map((segment, i) => ({
    segment,
    speed: pass.speeds[i]!,
    target: targets[i]!,
    section,
  }))
}

/** The last piece in two: with the pump, and without it while its flow dies away. */
function writeRunOut(cursor: Cursor, piece: Piece, ahead: number): void {
  const { segment } = piece
  const share = 1 - ahead / segment.length
  const middle = pointAt(segment, share)
  const part = (from: Segment['from'], to: Segment['to'], of: number, heading: number): Segment => ({
    ...segment,
    from,
    to,
    heading,
    bulge: partBulge(segment.bulge, of),
    sweep: segment.sweep * of,
    length: segment.length * of,
  })
  const start = piece.target - segment.sweep * (1 - share)
  writePiece(cursor, { ...piece, segment: part(segment.from, middle, share, segment.heading), target: start })
  cursor.lines.push(pumpOffWord)
  cursor.pumping = false
  const rest = part(middle, segment.to, 1 - share, segment.heading + share * segment.sweep)
  writePiece(cursor, { ...piece, segment: rest })
}

/** How far before the end the pump stops: what is run in its stop lag while braking, within the last piece. */
function runOutLength(passes: readonly Pass[], { machine, runOut }: ChainRules): number {
  const lag = machine.pump.stopLag
  if (!runOut || lag === 0) return 0
  const moves = passes.flatMap((pass, i) => movesOf(pass, passes[i + 1], passes[i - 1], machine))
  const peak = speedProfile(moves, machine).peaks.at(-1)!
  const braking = peak / machine.acceleration
  const length =
    lag <= braking ? (machine.acceleration * lag ** 2) / 2 : peak * (lag - braking) + (peak * braking) / 2
  const last = moves.at(-1)!.length
  return last < 0.01 ? 0 : Math.min(length, 0.9 * last)
}

function writePiece(cursor: Cursor, piece: Piece): void {
  const { units, rules } = cursor
  const [mx, my] = machinePoint(rules.origin, piece.segment.to)
  const [x, y] = [onGrid(mx, units), onGrid(my, units)]
  const heading = rules.machine.headingRate > 0 ? degreesOnGrid(piece.target) : cursor.heading
  if (x === cursor.x && y === cursor.y && heading === cursor.heading) return
  const turned = heading === cursor.heading ? '' : ` ${rules.machine.words.rotary}${plain(heading)}`
  const line = `${motionWords(cursor, piece.segment, x, y)}${turned}${paceWords(cursor, piece, Math.abs(heading - cursor.heading))}`
  cursor.x = x
  cursor.y = y
  cursor.heading = heading
  cursor.lines.push(line)
}

/** Arcs flatter than the written grid are lines; an arc that would close on itself is too short to matter. */
function motionWords(cursor: Cursor, segment: Segment, x: number, y: number): string {
  const place = `X${plain(x)} Y${plain(y)}`
  const sagitta = segment.sweep === 0 ? 0 : segment.radius * (1 - Math.cos(segment.sweep / 2))
  const closed = x === cursor.x && y === cursor.y
  if (closed || sagitta * cursor.units.perMetre * cursor.units.stepsPerUnit < 1) return `G1 ${place}`
  const [cx, cy] = machinePoint(cursor.rules.origin, centreOf(segment))
  const [i, j] = [cx, cy].map(value => onGrid(value, cursor.units)) as [number, number]
  const offset = (centre: number, at: number) =>
    plain(Math.round((centre - at) * cursor.units.stepsPerUnit) / cursor.units.stepsPerUnit)
  return `${segment.sweep > 0 ? 'G3' : 'G2'} ${place} I${offset(i, cursor.x)} J${offset(j, cursor.y)}`
}

/** Feed and pump setting, each only when it changes; feed low enough for the heading to follow. */
function paceWords(cursor: Cursor, { segment, speed, section }: Piece, turned: number): string {
  const { machine } = cursor.rules
  const perMinute = cursor.units.perMetre * 60
  const grid = 2 / (cursor.units.perMetre * cursor.units.stepsPerUnit)
  const rate = (machine.headingRate * 180) / Math.PI
  const followed =
    turned > 0 && segment.length > grid ? ((segment.length - grid) * rate) / turned : Number.POSITIVE_INFINITY
  const pace = Math.min(speed, followed)
  if (pace === cursor.pace && section === cursor.section) return ''
  const feed = feedText(pace * perMinute)
  const setting = settingText(pumpSetting(machine, (section * Number(feed)) / perMinute))
  const words = `${feed === cursor.feed ? '' : ` F${feed}`}${setting === cursor.setting ? '' : ` S${setting}`}`
  cursor.feed = feed
  cursor.setting = setting
  cursor.pace = pace
  cursor.section = section
  return words
}

/** The pump starts on its own line, and the nozzle waits until the concrete is there. */
function pumpOn(cursor: Cursor, piece: Piece): void {
  const { machine } = cursor.rules
  const flow = piece.section * piece.speed
  cursor.setting = settingText(pumpSetting(machine, flow))
  cursor.lines.push(pumpOnWords(machine, cursor.setting))
  if (machine.words.extraOn) cursor.lines.push(machine.words.extraOn)
  cursor.pumping = true
  awaitFlow(cursor)
}

function awaitFlow({ lines, rules }: Cursor): void {
  const { startLag } = rules.machine.pump
  if (startLag > 0) lines.push(`G4 P${plain(startLag)}`)
}

/** A sharp corner: pump off, turn on the spot, pump on. A small turn was made on the way. */
function turnTo(cursor: Cursor, heading: number): void {
  const { machine } = cursor.rules
  const target = degreesOnGrid(heading)
  const turn = ((target - cursor.heading) * Math.PI) / 180
  if (machine.headingRate === 0 || !isSharp(turn)) return
  cursor.feed = feedText((machine.headingRate * 180 * 60) / Math.PI)
  cursor.pace = Number.NaN
  cursor.lines.push(pumpOffWord, `G1 ${machine.words.rotary}${plain(target)} F${cursor.feed}`)
  cursor.heading = target
  cursor.lines.push(machine.words.pumpOn)
  awaitFlow(cursor)
}

/** After a run-out the pump is off already. */
function pumpOff({ lines, pumping, rules }: Cursor): void {
  if (pumping) lines.push(pumpOffWord)
  if (rules.machine.words.extraOff) lines.push(rules.machine.words.extraOff)
}
