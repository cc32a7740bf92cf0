import { localTime } from '../clock/index.js'
import { assert } from '../result/index.js'
import type { Call } from './call.js'
import { type CallParts, embedCalls, layerSpan, placeOf, wallOf } from './embed-calls.js'
import { layerDown } from './lift-time.js'
import { hasLintel, lintelCalls } from './lintel-calls.js'
import { pourWords } from './trade-words.js'

/** Every moment a trade or the crew must be at the wall, in time order. */
export function callsOf(parts: CallParts): readonly Call[] {
  const calls = [
    ...parts.job.embeds.flatMap(embed => embedCalls(parts, embed)),
    ...parts.job.openings.filter(hasLintel).flatMap(opening => lintelCalls(parts, opening)),
    ...pourCalls(parts),
  ]
  for (const call of calls)
    assert(
      Number.isFinite(call.from) && call.until >= call.from,
      `the window of call ${call.id} runs forward`,
    )
  return calls.sort((a, b) => a.from - b.from || (a.id < b.id ? -1 : 1))
}

/** A pour is called where the campaign holds for it. */
function pourCalls(parts: CallParts): readonly Call[] {
  const { job, campaign } = parts
  const held = campaign.days.flatMap(day =>
    day.lifts.flatMap(lift =>
      lift.holds.filter(hold => hold.reason === 'pour').map(hold => ({ lift, hold })),
    ),
  )
  const seen = new Map<string, number>()
  return held.flatMap(({ lift, hold }) => {
    const column = job.columns.find(candidate => candidate.id === hold.ref)
    if (!column) return []
    const wall = wallOf(job, column.wall)
    const from =
      hold.afterLayer < lift.firstLayer ? lift.start - hold.duration : layerDown(lift, hold.afterLayer)
    const count = (seen.get(column.id) ?? 0) + 1
    seen.set(column.id, count)
    const layer = Math.max(1, hold.afterLayer)
    const span = layerSpan(wall.base, layer * job.print.layerHeight, job.print.layerHeight)
    return [
      {
        id: count === 1 ? column.id : `${column.id}/${count}`,
        trade: 'structure' as const,
        what: 'pour' as const,
        wall: column.wall,
        section: lift.section,
        lift: lift.id,
        date: localTime(from, job.site.timeZone).date,
        layerIn: span.first,
        layerOut: span.last,
        from,
        until: from + hold.duration,
        place: placeOf(job, wall, { at: column.at, bottom: wall.base, face: 'middle' }),
        ...pourWords,
      },
    ]
  })
}
