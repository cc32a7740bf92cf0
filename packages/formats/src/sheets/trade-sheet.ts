import type { Plan } from '@dawnlift/core/plan'
import type { Call, CalledTrade } from '@dawnlift/core/trade'
import { figure, fullDayText, toSvg } from '@dawnlift/drawing/paper'
import { drawWallElevation } from '@dawnlift/drawing/views'
import { engineerWords, liftingCaution, pourCaution, standingCautions } from './cautions.js'
import { callRow } from './day-sheet.js'
import type { SheetOptions } from './sheet-options.js'
import { typeset } from './typeset.js'

/** All calls of one trade, day by day, with the piece of each wall where its things go. */
export const tradeSheet = (plan: Plan, trade: CalledTrade, options: SheetOptions): Uint8Array =>
  typeset('trade-sheet', tradeData(plan, trade, options))

export function tradeData(plan: Plan, trade: CalledTrade, options: SheetOptions) {
  const { job } = plan
  const calls = plan.calls.filter(call => call.trade === trade)
  const dates = [...new Set(calls.map(call => call.date))]
  return {
    job: job.name,
    site: job.site.name,
    revision: job.revision,
    made: options.date,
    trade,
    zone: job.site.timeZone,
    days: dates.map(date => ({
      title: fullDayText(date),
      calls: calls.filter(call => call.date === date).map(call => callRow(plan, call)),
    })),
    walls: facesOf(calls).map(face => crop(plan, face, options)),
    cautions: [
      ...standingCautions(job),
      ...(calls.some(call => call.what === 'lintel') ? [liftingCaution] : []),
      ...(calls.some(call => call.what === 'pour') ? [pourCaution] : []),
    ],
    engineer: engineerWords,
  }
}

interface FaceCalls {
  readonly wall: string
  readonly side: 'left' | 'right'
  readonly calls: readonly Call[]
}

/** Calls by wall and by the face one stands before. */
function facesOf(calls: readonly Call[]): readonly FaceCalls[] {
  const faces = new Map<string, FaceCalls>()
  for (const call of calls) {
    const side = call.place.face.startsWith('right face') ? 'right' : 'left'
    const key = `${call.wall}\n${side}`
    const known = faces.get(key)?.calls ?? []
    faces.set(key, { wall: call.wall, side, calls: [...known, call] })
  }
  return [...faces.values()]
}

function crop(plan: Plan, face: FaceCalls, options: SheetOptions) {
  const stations = face.calls.flatMap(call => stationOf(plan, call))
  const along = [Math.min(...stations) - 0.9, Math.max(...stations) + 0.9] as const
  const wall = plan.job.walls.find(candidate => candidate.id === face.wall)
  const sheet = figure(180, 84, { job: plan.job.name, revision: plan.job.revision, date: options.date })
  return {
    wall: wall?.name ?? face.wall,
    side: face.side,
    picture: toSvg(
      drawWallElevation(plan, face.wall, sheet, {
        seenFrom: face.side,
        along,
        calls: new Set(face.calls.map(call => call.id)),
      }),
    ),
  }
}

function stationOf({ job }: Plan, call: Call): number[] {
  const id = call.id.split('/')[0]
  const item = [...job.embeds, ...job.openings, ...job.columns].find(candidate => candidate.id === id)
  return item ? [item.at] : []
}
