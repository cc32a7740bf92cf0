import { type Point, pathLength } from '@dawnlift/core/geometry'
import type { Wall } from '@dawnlift/core/job'
import { LengthField } from '../../../parts/index.js'
import { words } from '../../../words/index.js'
import type { Draft } from '../draft.js'
import { applyEdits } from '../edits/apply-edits.js'
import { lengthText, type Units } from '../edits/length-text.js'
import { endForLength, movedWallEdits, moveEnd } from '../edits/move-end.js'

const { facts } = words.walls

/** Where an open wall starts and ends, and how long it is; a closed one only says its length. */
export function WallEnds({
  wall,
  units,
  draft,
}: {
  readonly wall: Wall
  readonly units: Units
  readonly draft: Draft
}) {
  const { points, closed } = wall.centreline
  const text = (value: number) => lengthText(Number(value.toFixed(6)), units)
  const length = text(pathLength(wall.centreline))
  const move = (end: 'start' | 'end', to: Point) =>
    applyEdits(raw => movedWallEdits(raw, draft, moveEnd(draft, wall.id, end, to)))
  const ends = closed
    ? []
    : ([
        ['start', points[0]!],
        ['end', points.at(-1)!],
      ] as const)
  const stretched = (metres: number) => endForLength(wall.centreline, metres)
  return (
    <>
      {closed ? (
        <div className="fact">
          <span className="fact-name">{facts.length}</span>
          <output>{length}</output>
        </div>
      ) : (
        <LengthField
          label={facts.length}
          value={length}
          commit={async (_text, metres) => {
            const to = stretched(metres)
            return to
              ? move('end', to)
              : [{ code: 'edit/no-length', at: wall.id, say: words.walls.noSuchLength }]
          }}
        />
      )}
      {ends.flatMap(([end, [x, y]]) => [
        <LengthField
          key={`${end} x`}
          label={facts.endX[end]}
          value={text(x)}
          commit={(_text, metres) => move(end, [metres, y])}
        />,
        <LengthField
          key={`${end} y`}
          label={facts.endY[end]}
          value={text(y)}
          commit={(_text, metres) => move(end, [x, metres])}
        />,
      ])}
    </>
  )
}
