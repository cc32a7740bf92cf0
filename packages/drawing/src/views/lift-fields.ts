import {
  box,
  dayText,
  line,
  type Mark,
  type PaperPoint,
  type TextMark,
  text,
  textWidth,
} from '../paper/index.js'
import { block, type ElevationView } from './elevation-view.js'
import { fillOf } from './wall-shapes.js'

/** Each lift as a field over its section's stretches, with its name, date and layers in or beside it. */
export function liftFields(view: ElevationView): {
  readonly fields: readonly Mark[]
  readonly names: readonly Mark[]
} {
  const { parts, wall } = view
  const h = parts.job.print.layerHeight
  const right = block(view, view.along, [wall.base, wall.top])[1][0]
  let free = Number.NEGATIVE_INFINITY
  const fields: Mark[] = []
  const names: Mark[] = []
  const taken = new Map<number, number>()
  for (const { lift, date } of parts.campaign.days.flatMap(day =>
    day.lifts.map(lift => ({ lift, date: day.date })),
  )) {
    const up = [(lift.firstLayer - 1) * h, Math.min(wall.top, lift.lastLayer * h)] as const
    for (const stretch of parts.sections.find(section => section.id === lift.section)?.stretches ?? []) {
      if (stretch.wall !== wall.id || stretch.to <= view.along[0] || stretch.from >= view.along[1]) continue
      if (up[0] >= wall.top) continue
      const [low, high] = block(view, [stretch.from, stretch.to], up)
      const told = { ref: lift.id, title: `lift ${lift.id}, ${dayText(date)}` }
      fields.push(box(low, high, 'none', fillOf(parts.sections, lift.section), told))
      fields.push(
        line(
          [
            [low[0], high[1]],
            [high[0], high[1]],
          ],
          'outline',
        ),
      )
      const words = { id: lift.id, day: dayText(date), layers: `layers ${lift.firstLayer}–${lift.lastLayer}` }
      if (high[0] < right - 0.01) {
        const name = inside(low, high, words)
        if (name && low[1] >= (taken.get(low[0]) ?? 0)) {
          names.push(name)
          taken.set(low[0], name.at[1] + 2)
        }
      } else {
        const named = besideWall(low, high, words, free)
        names.push(...named.marks)
        free = named.free
      }
    }
  }
  return { fields, names }
}

interface LiftWords {
  readonly id: string
  readonly day: string
  readonly layers: string
}

/** Sections that do not reach the drawing's right edge carry their names in their fields, where there is room. */
function inside(low: PaperPoint, high: PaperPoint, { id, day }: LiftWords): TextMark | undefined {
  const words = `${id} ${day}`
  const [wide, tall] = [high[0] - low[0], high[1] - low[1]]
  if (tall < 2.2 || wide < textWidth(words, 'tiny') + 2.4) return undefined
  return text([low[0] + 1.2, low[1] + Math.min(1.2, tall / 2 - 0.6)], words, 'tiny', 'start', { halo: true })
}

/** The others beside the wall, upwards, each clear of the one below. */
function besideWall(low: PaperPoint, high: PaperPoint, { id, day, layers }: LiftWords, free: number) {
  const middle = (low[1] + high[1]) / 2
  const x = high[0] + 3
  if (high[1] - low[1] > 9 && middle - 4.6 >= free)
    return {
      marks: [
        text([x, middle + 2.2], id, 'large'),
        text([x, middle - 1.2], day, 'small'),
        text([x, middle - 4.2], layers, 'tiny', 'start', { fill: 'soft' }),
      ],
      free: middle + 6.6,
    }
  const y = Math.max(middle - 0.8, free)
  return { marks: [text([x, y], `${id} ${day}`, 'small')], free: y + 2.7 }
}
