import { nearestOnPath, pathLength } from '@dawnlift/core/geometry'
import type { Draft } from '../draft.js'
import { findThing, type Thing } from '../thing.js'

/** A place along a wall, or a height, that something may line up with. */
export interface Guide {
  readonly at: number
  /** Middles line up with middles, edges with edges. */
  readonly for: 'middle' | 'edge'
  readonly say: string
}

export interface Snapped {
  readonly at: number
  /** What it lines up with, if anything. */
  readonly to?: string
}

/** Steps along a wall [m]: 10 mm, or half an inch. */
export const alongStep = (units: 'metric' | 'imperial'): number => (units === 'metric' ? 0.01 : 0.0127)

/** Stations on the thing’s own wall that it may line up with: ends, meeting walls, middles and jambs of the others. */
export function guidesAlong(draft: Draft, thing: Thing): readonly Guide[] {
  const found = findThing(draft, thing)
  if (!found) return []
  const { wall } = found
  const length = pathLength(wall.centreline)
  const meeting = draft.walls
    .filter(other => other.id !== wall.id && !other.centreline.closed)
    .flatMap(other =>
      [other.centreline.points[0]!, other.centreline.points.at(-1)!].map(end => ({
        other,
        ...nearestOnPath(wall.centreline, end),
      })),
    )
    .filter(({ distance }) => distance < wall.thickness)
    .map(({ other, station }) => ({ at: station, for: 'middle' as const, say: `wall ${other.id}` }))
  const columns = draft.columns.map(each => ({ ...each, width: each.length }))
  const parts = [...draft.openings, ...draft.embeds, ...columns]
    .filter(each => each.wall === wall.id && each.id !== thing.id)
    .flatMap(({ id, at, width }) => [
      { at, for: 'middle' as const, say: `middle of ${id}` },
      { at: at - width / 2, for: 'edge' as const, say: `edge of ${id}` },
      { at: at + width / 2, for: 'edge' as const, say: `edge of ${id}` },
    ])
  return [
    { at: 0, for: 'edge', say: `start of ${wall.id}` },
    { at: length / 2, for: 'middle', say: `middle of ${wall.id}` },
    { at: length, for: 'edge', say: `end of ${wall.id}` },
    ...meeting,
    ...parts,
  ]
}

/** The middle of something `width` wide on a wall `length` long: onto a guide within reach by its middle or an edge, else onto a step; never over an end. */
export function snapAlong(
  asked: number,
  width: number,
  length: number,
  guides: readonly Guide[],
  { step, reach }: { readonly step: number; readonly reach: number },
): Snapped {
  const fits = (at: number) => at - width / 2 >= -1e-9 && at + width / 2 <= length + 1e-9
  const best = guides
    .flatMap(guide =>
      (guide.for === 'middle' ? [guide.at] : [guide.at - width / 2, guide.at + width / 2]).map(at => ({
        at,
        to: guide.say,
      })),
    )
    .filter(({ at }) => fits(at) && Math.abs(at - asked) <= reach)
    .sort((a, b) => Math.abs(a.at - asked) - Math.abs(b.at - asked))[0]
  if (best) return best
  return { at: Math.min(Math.max(stepped(asked, step), width / 2), Math.max(width / 2, length - width / 2)) }
}

/** A height onto the nearest boundary between layers, as the print can do no other. */
export function snapHeight(asked: number, layerHeight: number, least: number, most: number): Snapped {
  const layers = Math.round(asked / layerHeight)
  const at = Math.min(Math.max(layers * layerHeight, least), most)
  return { at: Number(at.toFixed(9)), to: `layer ${Math.round(at / layerHeight)}` }
}

const stepped = (value: number, step: number): number => Number((Math.round(value / step) * step).toFixed(9))
