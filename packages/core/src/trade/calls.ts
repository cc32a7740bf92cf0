import { localTime } from '../clock/index.js'
import { assert } from '../result/index.js'
import type { Call } from './call.js'
import { type CallParts, embedCalls, layerSpan, placeOf, wallOf } from './embed-calls.js'
import { heldLifts } from './held-lifts.js'
import { inspectionCalls } from './inspection-calls.js'
import { hasLintel, lintelCalls } from './lintel-calls.js'
import { pourWords } from './trade-words.js'

/** Every moment a trade or the crew must be at the wall, in time order. */
export function callsOf(parts: CallParts): readonly Call[] {
  const calls = [
    ...parts.job.embeds.flatMap(embed => embedCalls(parts, embed)),
    ...parts.job.openings.filter(hasLintel).flatMap(opening => lintelCalls(parts, opening)),
    ...pourCalls(parts),
    ...inspectionCalls(parts),
  ]
  for (const call of calls)
    assert(
      Number.isFinite(call.from) && call.until >= call.from,
      `the window of call ${call.id} runs forward`,
    )
  return calls.sort((a, b) => a.from - b.from || (a.id < b.id ? -1 : 1))
}

/** A pour is called where the campaign holds for it. */
function pourCalls({ job, campaign }: CallParts): readonly Call[] {
  return heldLifts(campaign, 'pour').flatMap(({ id, hold, lift, from }) => {
    const column = job.columns.find(candidate => candidate.id === hold.ref)
    if (!column) return []
    const wall = wallOf(job, column.wall)
    const layer = Math.max(1, hold.afterLayer)
    const span = layerSpan(wall.base, layer * job.print.layerHeight, job.print.layerHeight)
    return [
      {
        id,
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
