import type { PrintHour } from '@dawnlift/core/weather'
import { type Fill, line, type Mark, type PaperPoint, type Pen } from '../paper/index.js'
import type { DayClockParts } from './day-clock-list.js'

export interface Dial {
  readonly centre: PaperPoint
  readonly radius: number
  /** Turn of a moment: noon up, midnight down, clockwise. */
  readonly angle: (moment: number) => number
  readonly point: (moment: number, radius: number) => PaperPoint
}

/** Rings from the rim inwards, as shares of the dial's radius. */
export const rings = {
  hours: 1,
  open: [0.86, 0.93],
  prints: [0.66, 0.84],
  calls: [0.52, 0.64],
  wet: [0.44, 0.5],
} as const

/** Outline of a piece of ring: out along the rim, back along the inside. */
function sector(
  dial: Dial,
  from: number,
  to: number,
  [inner, outer]: readonly [number, number],
): PaperPoint[] {
  const steps = Math.max(1, Math.ceil((to - from) / 600))
  const moments = Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)
  return [...moments.map(m => dial.point(m, outer)), ...moments.reverse().map(m => dial.point(m, inner))]
}

export const band = (
  dial: Dial,
  from: number,
  to: number,
  ring: readonly [number, number],
  pen: Pen,
  fill: Fill,
  ref?: string,
  title?: string,
): Mark =>
  line(sector(dial, from, to, ring), pen, {
    closed: true,
    fill,
    ...(ref ? { ref } : {}),
    ...(title ? { title } : {}),
  })

export const hoursOf = ({ campaign }: DayClockParts, midnight: number) =>
  campaign.hours.filter(hour => hour.start >= midnight && hour.start < midnight + 86_400)

/** Those of the day and an hour on either side, whose crossings still reach into it. */
export const hoursNear = ({ campaign }: DayClockParts, midnight: number): readonly PrintHour[] =>
  campaign.hours.filter(hour => hour.start >= midnight - 3600 && hour.start < midnight + 90_000)
