import { localTime } from '@dawnlift/core/clock'
import { pathLength } from '@dawnlift/core/geometry'
import type { Wall } from '@dawnlift/core/job'
import type { Plan } from '@dawnlift/core/plan'
import {
  dayText,
  drawingRoom,
  fitTo,
  type PaperMap,
  type PaperPoint,
  paperSheet,
  type Room,
  type Sheet,
  type SheetWords,
} from '../paper/index.js'

export type ElevationParts = Pick<Plan, 'job' | 'sections' | 'campaign' | 'calls'>

export interface ElevationOptions {
  /**
   * From which side the wall is looked at. Standing before its right face one has its start at the left hand;
   * before its left face at the right hand, so that drawing is turned over.
   */
  readonly seenFrom?: 'left' | 'right'
  /** Draw only between these stations. */
  readonly along?: readonly [number, number]
  /** Label only these calls; without it all calls of the wall. */
  readonly calls?: ReadonlySet<string>
}

export interface ElevationView {
  readonly parts: ElevationParts
  readonly wall: Wall
  readonly side: 'left' | 'right'
  readonly along: readonly [number, number]
  readonly paper: PaperMap
  readonly room: Room
  readonly calls: ElevationParts['calls']
  readonly zone: string
}

export function viewOf(
  parts: ElevationParts,
  wall: Wall,
  sheet: Sheet,
  side: 'left' | 'right',
  options: ElevationOptions,
): ElevationView {
  const length = pathLength(wall.centreline)
  const along = options.along
    ? ([Math.max(0, options.along[0]), Math.min(length, options.along[1])] as const)
    : ([0, length] as const)
  const room = drawingRoom(sheet)
  const calls = parts.calls.filter(
    call => call.wall === wall.id && (!options.calls || options.calls.has(call.id)),
  )
  // Layer numbers left, lift names right, labels above, dimensions below.
  const tall = sheet.frame
  const inner = {
    x: room.x + (tall ? 16 : 12),
    y: room.y + (tall ? 16 : 12),
    width: room.width - (tall ? 52 : 40),
    height: room.height - (tall ? 46 : 34),
  }
  const paper = fitTo({ x: along, y: [wall.base, wall.top] }, inner, parts.job.units, {
    mirror: side === 'left',
    loose: !sheet.frame,
  })
  return { parts, wall, side, along, paper, room, calls, zone: parts.job.site.timeZone }
}

/**
 * The sheet a whole wall is drawn on: an A3 or, for a long low wall, a strip of it, as long as the wall keeps its scale
 * and its calls keep their list.
 */
export function elevationSheet(parts: ElevationParts, id: string, words: SheetWords): Sheet {
  const whole = paperSheet('A3', 'landscape', words)
  const wall = parts.job.walls.find(candidate => candidate.id === id)
  if (!wall) return whole
  const scale = viewOf(parts, wall, whole, 'right', {}).paper.scale
  const calls = parts.calls.filter(call => call.wall === id).length
  const list = 6 + 2.3 * Math.ceil(calls / 6)
  const fits = (height: number) => {
    const { paper, room } = viewOf(parts, wall, { ...whole, height }, 'right', {})
    const above = room.y + room.height - paper.toPaper([0, wall.top])[1]
    return paper.scale === scale && above >= list
  }
  return { ...whole, height: [148.5, 210].find(fits) ?? whole.height }
}

export const within = (view: ElevationView, at: number, width: number): boolean =>
  at + width / 2 > view.along[0] && at - width / 2 < view.along[1]

/** Paper corners of a block of the wall, cut to the part that is drawn. */
export function block(
  view: ElevationView,
  along: readonly [number, number],
  up: readonly [number, number],
): readonly [PaperPoint, PaperPoint] {
  const clip = (s: number) => Math.min(view.along[1], Math.max(view.along[0], s))
  const a = view.paper.toPaper([clip(along[0]), up[0]])
  const b = view.paper.toPaper([clip(along[1]), up[1]])
  return [
    [Math.min(a[0], b[0]), Math.min(a[1], b[1])],
    [Math.max(a[0], b[0]), Math.max(a[1], b[1])],
  ]
}

/** `Tue 14 Jul` of a moment in the site's zone. */
export const dayOfCall = (at: number, zone: string): string => dayText(localTime(at, zone).date)
