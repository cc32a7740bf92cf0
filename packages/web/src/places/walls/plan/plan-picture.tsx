import type { Point } from '@dawnlift/core/geometry'
import { pathData, ringData } from '../../../parts/index.js'
import type { Draft } from '../draft.js'
import type { Units } from '../edits/length-text.js'
import type { PinnedFinding } from '../findings.js'
import { type Found, findThing, inOrder, sameThing, type Thing } from '../thing.js'
import { sayThing } from '../thing-text.js'
import { beside, columnPiece, embedPiece, lintelPiece, openingPiece } from './shapes.js'
import { toScreen, type View, type WindowSize } from './view.js'

export const optionId = ({ kind, id }: Thing): string => `plan-${kind}-${id}`

/** Walls and what stands in them, in the building’s metres; a list to choose from for those who hear it. */
export function PlanThings({
  draft,
  chosen,
  layer,
  units,
  choose,
}: {
  readonly draft: Draft
  readonly chosen: Thing | undefined
  readonly layer: number
  readonly units: Units
  readonly choose: (thing: Thing) => void
}) {
  const middle = (layer - 0.5) * draft.print.layerHeight
  return inOrder(draft).map(thing => {
    const found = findThing(draft, thing)
    if (!found) return null
    const mine = sameThing(thing, chosen)
    const [low, high] = heightsOf(found)
    const here = low < middle && middle < high
    const ring = ringOf(found)
    return (
      <g
        key={optionId(thing)}
        id={optionId(thing)}
        role="option"
        aria-selected={mine}
        aria-label={sayThing(draft, thing, units)}
        className={`${thing.kind}${mine ? ' chosen' : ''}${here ? '' : ' elsewhere'}`}
        onClick={() => choose(thing)}
      >
        <path d={ring ? ringData(ring) : pathData(found.wall.centreline)} />
        {found.kind === 'opening' && here && ring && <path className="crossed" d={crossOf(ring)} />}
      </g>
    )
  })
}

function heightsOf({ kind, part, wall }: Found): readonly [low: number, high: number] {
  switch (kind) {
    case 'opening':
      return [part.sill, part.head]
    case 'lintel':
      return [part.head, part.head + (part.lintel?.height ?? 0)]
    case 'embed':
      return [part.bottom, part.bottom + part.height]
    case 'column':
    case 'wall':
      return [wall.base, wall.top]
  }
}

function ringOf({ kind, part, wall }: Found): readonly Point[] | undefined {
  switch (kind) {
    case 'opening':
      return openingPiece(wall, part)
    case 'lintel':
      return lintelPiece(wall, part)
    case 'embed':
      return embedPiece(wall, part)
    case 'column':
      return columnPiece(wall, part)
    case 'wall':
      return undefined
  }
}

/** A hole is crossed out, as on any plan. */
function crossOf(ring: readonly Point[]): string {
  const half = ring.length / 2
  const [a, b, c, d] = [ring[0]!, ring[half - 1]!, ring[half]!, ring.at(-1)!]
  return `M${a.join(' ')}L${c.join(' ')}M${b.join(' ')}L${d.join(' ')}`
}

/** Names, at one size however far one is away; embeds only say theirs from near. */
export function PlanNames({
  draft,
  chosen,
  view,
  size,
}: {
  readonly draft: Draft
  readonly chosen: Thing | undefined
  readonly view: View
  readonly size: WindowSize
}) {
  const walls = new Map(draft.walls.map(wall => [wall.id, wall]))
  const at = (wallId: string, station: number, out: number): Point | undefined => {
    const wall = walls.get(wallId)
    return wall && toScreen(view, size, beside(wall.centreline, station, out))
  }
  const away = 15 / view.scale
  const name = (thing: Thing, place: Point | undefined) =>
    place && (
      <text
        key={optionId(thing)}
        x={place[0]}
        y={place[1]}
        className={sameThing(thing, chosen) ? 'chosen' : thing.kind}
      >
        {thing.id}
      </text>
    )
  return (
    <g className="names">
      {draft.openings.map(({ id, wall, at: station }) =>
        name({ kind: 'opening', id }, at(wall, station, (walls.get(wall)?.thickness ?? 0) / 2 + away)),
      )}
      {draft.columns.map(({ id, wall, at: station, thickness }) =>
        name({ kind: 'column', id }, at(wall, station, -(thickness / 2 + away))),
      )}
      {draft.embeds
        .filter(({ id }) => view.scale > 110 || (chosen?.kind === 'embed' && chosen.id === id))
        .map(({ id, wall, at: station, face }) =>
          name(
            { kind: 'embed', id },
            at(wall, station, (face === 'right' ? -1 : 1) * ((walls.get(wall)?.thickness ?? 0) / 2 + away)),
          ),
        )}
      {chosen?.kind === 'wall' && name(chosen, wallNamePlace())}
    </g>
  )

  function wallNamePlace(): Point | undefined {
    const wall = chosen && walls.get(chosen.id)
    return wall && at(wall.id, 0.4, -(wall.thickness / 2 + away))
  }
}

/** Where the plan found something wrong: numbered, and told in words in the list under the plan. */
export function PlanPins({
  pins,
  view,
  size,
  choose,
}: {
  readonly pins: readonly PinnedFinding[]
  readonly view: View
  readonly size: WindowSize
  readonly choose: (pin: PinnedFinding) => void
}) {
  return (
    <g className="pins">
      {pins.flatMap(pin => {
        if (!pin.point) return []
        const [x, y] = toScreen(view, size, pin.point)
        return (
          <g
            key={pin.number}
            transform={`translate(${x} ${y})`}
            className={pin.finding.verdict}
            onPointerDown={event => {
              event.stopPropagation()
              choose(pin)
            }}
          >
            <circle r={22} className="reach" />
            <path d="M0 0L-9 -13A10.5 10.5 0 1 1 9 -13Z" />
            <text y={-13}>{pin.number}</text>
            <title>{pin.finding.say}</title>
          </g>
        )
      })}
    </g>
  )
}
