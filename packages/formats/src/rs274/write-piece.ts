import { type Machine, type MachineFrame, type MachineOrigin, pumpSetting } from '@dawnlift/core/machine'
import { centreOf, type Segment } from '@dawnlift/core/route'
import type { ByteText } from './byte-text.js'
import {
  degreesOf,
  feedOnGrid,
  feedPlaces,
  headingOnGrid,
  headingPlaces,
  onGrid,
  perMinuteOf,
  putPlace,
  type WrittenUnits,
} from './written-number.js'

/** What the lines of a chain depend on besides its passes. */
export interface ChainRules {
  readonly machine: Machine
  readonly origin: MachineOrigin
  readonly runOut: boolean
}

/** What chains are written by and to. */
export interface ChainText {
  readonly rules: ChainRules
  readonly text: ByteText
  readonly settingText: (setting: number) => string
  readonly frame: MachineFrame
}

/** Where the file has got to, in written steps: words that do not change are left out. */
export interface Cursor extends ChainText {
  readonly units: WrittenUnits
  x: number
  y: number
  heading: number
  feed: number
  /** Cross-section of the bead it is on [m²]. */
  section: number
  /** Pace and cross-section the last words were made from: most pieces keep both. */
  pace: number
  paceSection: number
  setting: string
  pumping: boolean
}

/**
 * A piece at a speed, to the heading at its end [rad]. One shorter than the grid leaves no line.
 *
 * Tens of thousands of them make a plan: nothing is made here that would have to be cleared away.
 */
export function writePiece(cursor: Cursor, segment: Segment, speed: number, target: number): void {
  const { units, rules, text, frame } = cursor
  const x = onGrid(frame.x(segment.to), units)
  const y = onGrid(frame.y(segment.to), units)
  const heading = rules.machine.headingRate > 0 ? headingOnGrid(target) : cursor.heading
  if (x === cursor.x && y === cursor.y && heading === cursor.heading) return
  putMotion(cursor, segment, x, y)
  const turned = heading === cursor.heading ? 0 : Math.abs(degreesOf(heading) - degreesOf(cursor.heading))
  if (turned > 0) text.words(' ').words(rules.machine.words.rotary).decimal(heading, headingPlaces)
  putPace(cursor, segment, speed, turned)
  text.words('\n')
  cursor.x = x
  cursor.y = y
  cursor.heading = heading
}

/** Arcs flatter than the written grid are lines; an arc that would close on itself is too short to matter. */
function putMotion(cursor: Cursor, segment: Segment, x: number, y: number): void {
  const { text, units, frame } = cursor
  const sagitta = segment.sweep === 0 ? 0 : segment.radius * (1 - Math.cos(segment.sweep / 2))
  const closed = x === cursor.x && y === cursor.y
  if (closed || sagitta * units.perMetre * units.stepsPerUnit < 1) {
    putPlace(text.words('G1 '), x, y, units)
    return
  }
  const centre = centreOf(segment)
  putPlace(text.words(segment.sweep > 0 ? 'G3 ' : 'G2 '), x, y, units)
  text.words(' I').decimal(onGrid(frame.x(centre), units) - cursor.x, units.places)
  text.words(' J').decimal(onGrid(frame.y(centre), units) - cursor.y, units.places)
}

/**
 * Feed and pump setting, each only when it changes; feed low enough for the heading to follow. Both ends of a piece lie on
 * the grid, and so does an arc's centre: a piece may be shorter than it was by two steps, and by one more for each radian.
 */
function putPace(cursor: Cursor, { length, sweep }: Segment, speed: number, turned: number): void {
  const { text, units, section } = cursor
  const { machine } = cursor.rules
  const perMinute = units.perMetre * 60
  const grid = (2 + Math.abs(sweep)) / (units.perMetre * units.stepsPerUnit)
  const rate = (machine.headingRate * 180) / Math.PI
  const followed = turned > 0 && length > grid ? ((length - grid) * rate) / turned : Number.POSITIVE_INFINITY
  const pace = Math.min(speed, followed)
  if (pace === cursor.pace && section === cursor.paceSection) return
  const feed = feedOnGrid(pace * perMinute)
  const setting = cursor.settingText(pumpSetting(machine, (section * perMinuteOf(feed)) / perMinute))
  if (feed !== cursor.feed) text.words(' F').decimal(feed, feedPlaces)
  if (setting !== cursor.setting) text.words(' S').words(setting)
  cursor.feed = feed
  cursor.setting = setting
  cursor.pace = pace
  cursor.paceSection = section
}
