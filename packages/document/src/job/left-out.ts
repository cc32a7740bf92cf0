import { closestName } from '@dawnlift/core/result'
import type { DrawingWalls } from './drawing-walls.js'
import type { JobDocument } from './job-schema.js'
import type { Ledger } from './ledger.js'

/** The drawing without what the job does not want of it. A wall takes along what is drawn in it. */
export function withoutLeftOut(drawing: DrawingWalls, leaveOut: readonly string[]): DrawingWalls {
  if (leaveOut.length === 0) return drawing
  const gone = new Set(leaveOut)
  const stays = ({ id, wall }: { readonly id: string; readonly wall: string }) =>
    !gone.has(id) && !gone.has(wall)
  return {
    walls: drawing.walls.filter(wall => !gone.has(wall.id)),
    openings: drawing.openings.filter(stays),
    embeds: drawing.embeds.filter(stays),
    columns: drawing.columns.filter(stays),
    notes: drawing.notes,
  }
}

/** Each name stands for something drawn, once, and not for something the job gives itself. */
export function checkLeftOut(document: JobDocument, drawing: DrawingWalls, ledger: Ledger): void {
  const { walls, openings, embeds, columns } = drawing
  const drawn = [...walls, ...openings, ...embeds, ...columns].map(each => each.id)
  const own = [...document.walls, ...document.openings, ...document.embeds, ...document.columns].map(
    each => each.id,
  )
  const met = new Set<string>()
  for (const [index, id] of (document.drawing?.leaveOut ?? []).entries()) {
    const say = saidAgainst(id, { drawn, own, met, file: document.drawing?.file ?? '' })
    if (say) ledger.wrong('job/leave-out', ['drawing', 'leaveOut', index], say)
    met.add(id)
  }
}

function saidAgainst(
  id: string,
  known: {
    readonly drawn: readonly string[]
    readonly own: readonly string[]
    readonly met: ReadonlySet<string>
    readonly file: string
  },
): string | undefined {
  if (known.met.has(id)) return `“${id}” is left out twice; once is enough.`
  if (known.own.includes(id))
    return `“${id}” is left out of the drawing and given in the job: take it out of one of the two.`
  if (known.drawn.includes(id)) return undefined
  const near = closestName(id, known.drawn)
  const hint = near ? `did you mean “${near}”?` : 'take it out of the list.'
  return `There is no “${id}” in ${known.file} to leave out; ${hint}`
}
