import type { Lift } from '@dawnlift/core/campaign'
import { addDays, clockText, instantAt } from '@dawnlift/core/clock'
import {
  type Drawing,
  drawingRoom,
  fullDayText,
  layer,
  line,
  type Mark,
  type PaperPoint,
  type Sheet,
  temperatureText,
  text,
  titleBlock,
} from '../paper/index.js'
import { band, type Dial, hoursOf, rings } from './day-clock-dial.js'
import { callList, callsOn, type DayClockParts } from './day-clock-list.js'
import { openRing } from './day-clock-open.js'
import { fillOf } from './wall-shapes.js'

/** One day round a clock of 24 hours: open hours, prints, calls, wetting, and the temperature of the air. */
export function drawDayClock(parts: DayClockParts, date: string, sheet: Sheet): Drawing {
  const { job } = parts
  const zone = job.site.timeZone
  const room = drawingRoom(sheet)
  const list = room.width > room.height * 1.35
  const radius = Math.min(room.height / 2, (list ? room.width - 70 : room.width) / 2) - 6
  const centre: PaperPoint = [list ? room.x + radius + 8 : room.x + room.width / 2, room.y + room.height / 2]
  const midnight = instantAt(date, 0, zone)
  const angle = (moment: number) => -Math.PI / 2 - ((moment - midnight) / 86_400) * 2 * Math.PI
  const point = (moment: number, r: number): PaperPoint => [
    centre[0] + r * radius * Math.cos(angle(moment)),
    centre[1] + r * radius * Math.sin(angle(moment)),
  ]
  const dial: Dial = { centre, radius, angle, point }
  const day = parts.campaign.days.find(candidate => candidate.date === date)
  return {
    title: `${job.name}, ${fullDayText(date)} round the clock`,
    says: `The day ${fullDayText(date)} on a clock of 24 hours with ${day?.lifts.length ?? 0} lifts.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer('sun', sunRing(parts, dial, midnight)),
      layer('open', openRing(parts, dial, midnight)),
      layer('prints', printRing(parts, dial, date)),
      layer('calls', callRing(parts, dial, date)),
      layer('wetting', wetRing(parts, dial, midnight)),
      layer('dial', dialMarks(dial, midnight)),
      layer('middle', middleWords(parts, dial, date)),
      ...(list
        ? [layer('list', callList(parts, date, [centre[0] + radius + 14, room.y + room.height - 6], room))]
        : []),
      layer(
        'frame',
        titleBlock(sheet, { title: fullDayText(date), subtitle: 'Noon up, midnight down, clockwise.' }),
      ),
    ],
  }
}

function sunRing(parts: DayClockParts, dial: Dial, midnight: number): Mark[] {
  return hoursOf(parts, midnight).flatMap(hour =>
    hour.sunAltitude < 0 ? [band(dial, hour.start, hour.start + 3600, [0.36, 0.95], 'none', 'night')] : [],
  )
}

function printRing(parts: DayClockParts, dial: Dial, date: string): Mark[] {
  const day = parts.campaign.days.find(candidate => candidate.date === date)
  if (!day) return []
  const crew = band(dial, day.start, day.end, rings.prints, 'hidden', 'paper', date, 'set-up to wash-out')
  return [
    crew,
    ...day.lifts.flatMap(lift => {
      const middle = dial.point(nameMoment(lift), (rings.prints[0] + rings.prints[1]) / 2)
      const holds = lift.holds.flatMap(hold => {
        const end = lift.layerEnds[hold.afterLayer - lift.firstLayer]
        return end === undefined ? [] : [band(dial, end, end + hold.duration, rings.prints, 'thin', 'paper')]
      })
      return [
        band(
          dial,
          lift.start,
          lift.end,
          rings.prints,
          'edge',
          fillOf(parts.sections, lift.section),
          lift.id,
          `lift ${lift.id}`,
        ),
        ...holds,
        text([middle[0], middle[1] - 0.9], lift.id, 'normal', 'middle', { halo: true }),
      ]
    }),
  ]
}

/** The middle of the longest stretch between two holds. */
function nameMoment(lift: Lift): number {
  const holds = lift.holds.flatMap(hold => {
    const end = lift.layerEnds[hold.afterLayer - lift.firstLayer]
    return end === undefined ? [] : [{ from: end, to: end + hold.duration }]
  })
  const starts = [lift.start, ...holds.map(hold => hold.to)]
  const ends = [...holds.map(hold => hold.from), lift.end]
  const spans = starts.map((from, index) => ({ from, to: ends[index]! }))
  const longest = spans.reduce((a, b) => (b.to - b.from > a.to - a.from ? b : a))
  return (longest.from + longest.to) / 2
}

/** Calls of one window as one arc with their numbers, in the first of three tracks that is free. */
function callRing(parts: DayClockParts, dial: Dial, date: string): Mark[] {
  const ends = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY]
  const height = (rings.calls[1] - rings.calls[0]) / ends.length
  const zone = parts.job.site.timeZone
  const [midnight, next] = [instantAt(date, 0, zone), instantAt(addDays(date, 1), 0, zone)]
  // A window over night stops at midnight: round the dial it would meet itself.
  const within = (at: number) => Math.max(midnight, Math.min(next, at))
  return windowsOf(callsOn(parts, date)).flatMap(({ first, last, ids, ...window }) => {
    const [from, until] = [within(window.from), within(window.until)]
    const track = Math.max(
      ends.findIndex(end => end <= from),
      0,
    )
    const end = Math.max(until, from + 300)
    ends[track] = end
    const inner = rings.calls[1] - (track + 1) * height
    const [x, y] = dial.point((from + end) / 2, inner + height / 2)
    return [
      band(dial, from, end, [inner + 0.006, inner + height], 'accent', 'paper', ids[0], ids.join(', ')),
      text([x, y - 0.6], first === last ? String(first) : `${first}–${last}`, 'tiny', 'middle', {
        halo: true,
      }),
    ]
  })
}

interface CallWindow {
  readonly from: number
  readonly until: number
  readonly first: number
  readonly last: number
  readonly ids: readonly string[]
}

/** Neighbours in the list whose windows are the same to the minute. */
function windowsOf(calls: DayClockParts['calls']): readonly CallWindow[] {
  const windows: CallWindow[] = []
  calls.forEach((call, index) => {
    const before = windows.at(-1)
    const same = before && Math.abs(before.from - call.from) < 60 && Math.abs(before.until - call.until) < 60
    if (same) windows[windows.length - 1] = { ...before, last: index + 1, ids: [...before.ids, call.id] }
    else
      windows.push({ from: call.from, until: call.until, first: index + 1, last: index + 1, ids: [call.id] })
  })
  return windows
}

const wetRing = ({ cure }: DayClockParts, dial: Dial, midnight: number): Mark[] =>
  cure
    .flatMap(lift => lift.steps)
    .filter(step => step.do === 'wet' && step.at >= midnight && step.at < midnight + 86_400)
    .map(step => ({
      kind: 'circle' as const,
      at: dial.point(step.at, (rings.wet[0] + rings.wet[1]) / 2),
      radius: 0.9,
      pen: 'water' as const,
      fill: 'water' as const,
      ref: step.id,
      title: step.say,
    }))

function dialMarks(dial: Dial, midnight: number): Mark[] {
  const rim = [0.36, rings.calls[0], rings.prints[0], rings.open[0], rings.open[1], 0.95].map(
    (share): Mark => ({
      kind: 'circle',
      at: dial.centre,
      radius: share * dial.radius,
      pen: share === 0.95 ? 'edge' : 'hair',
    }),
  )
  const hours = Array.from({ length: 24 }, (_, hour) => {
    const moment = midnight + hour * 3600
    const [x, y] = dial.point(moment, 1.01)
    return [
      line([dial.point(moment, 0.93), dial.point(moment, hour % 6 === 0 ? 0.975 : 0.96)], 'thin'),
      text([x, y - 0.8], String(hour).padStart(2, '0'), hour % 6 === 0 ? 'normal' : 'tiny', 'middle'),
    ]
  }).flat()
  return [...rim, ...hours]
}

/** Date, and coldest and hottest hour, in the middle. */
function middleWords(parts: DayClockParts, dial: Dial, date: string): Mark[] {
  const zone = parts.job.site.timeZone
  const hours = hoursOf(parts, instantAt(date, 0, zone))
  const sorted = [...hours].sort((a, b) => a.weather.air - b.weather.air)
  const [cold, hot] = [sorted[0], sorted.at(-1)]
  const [x, y] = dial.centre
  const heat = (hour: typeof cold) =>
    hour ? `${temperatureText(hour.weather.air, parts.job.units)} at ${clockText(hour.start, zone)}` : ''
  return [
    text([x, y + 3.4], fullDayText(date).slice(0, -5), 'large', 'middle'),
    ...(hours.length
      ? [
          text([x, y - 0.8], heat(cold), 'tiny', 'middle', { fill: 'soft' }),
          text([x, y - 3.6], heat(hot), 'tiny', 'middle', { fill: 'soft' }),
        ]
      : []),
  ]
}
