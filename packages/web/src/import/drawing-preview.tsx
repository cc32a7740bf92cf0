import type { Point } from '@dawnlift/core/geometry'
import type { Drawing } from '@dawnlift/formats/dxf'
import { memo } from 'react'
import { pathData } from '../parts/index.js'
import { words } from '../words/index.js'
import type { LayerChoice } from './mapping-edits.js'
import type { PlacedProblem } from './problem-places.js'

const width = 640
const height = 440
const margin = 24

/** The drawing as it is, each line by what its layer becomes, with problems where they are. */
export function DrawingPreview({
  drawing,
  layers,
  problems,
  active,
  toDrawing,
}: {
  readonly drawing: Drawing
  readonly layers: Readonly<Record<string, LayerChoice>>
  readonly problems: readonly PlacedProblem[]
  /** Number of the problem pointed at. */
  readonly active: number | undefined
  /** From the metres a problem speaks in to those of the drawing as read. */
  readonly toDrawing: (point: Point) => Point
}) {
  const { least, most } = drawing
  const wide = Math.max(1e-6, most[0] - least[0])
  const high = Math.max(1e-6, most[1] - least[1])
  const scale = Math.min((width - 2 * margin) / wide, (height - 2 * margin) / high)
  const place = ([x, y]: Point): Point => [
    width / 2 + (x - (least[0] + most[0]) / 2) * scale,
    height / 2 - (y - (least[1] + most[1]) / 2) * scale,
  ]
  const [left, foot] = place([0, 0])
  return (
    <svg
      className="drawing-preview"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={words.walls.drawing.preview}
    >
      <g transform={`translate(${left} ${foot}) scale(${scale} ${-scale})`}>
        <Lines drawing={drawing} layers={layers} />
      </g>
      {[...problems]
        .sort((a, b) => Number(a.number === active) - Number(b.number === active))
        .flatMap(({ number, problem, point }) => {
          if (!point) return []
          const [x, y] = place(toDrawing(point))
          return (
            <g
              key={number}
              transform={`translate(${x} ${y})`}
              className={number === active ? 'pin active' : 'pin'}
            >
              <circle r={number === active ? 16 : 10} />
              <text>{number}</text>
              <title>{problem.say}</title>
            </g>
          )
        })}
    </svg>
  )
}

const Lines = memo(function Lines({
  drawing,
  layers,
}: {
  readonly drawing: Drawing
  readonly layers: Readonly<Record<string, LayerChoice>>
}) {
  const byUse = new Map<string, string[]>()
  for (const { layer, path } of drawing.paths) {
    const use = layers[layer]?.is ?? 'ignore'
    const list = byUse.get(use) ?? []
    list.push(pathData(path))
    byUse.set(use, list)
  }
  return [...byUse].map(([use, lines]) => <path key={use} className={`use-${use}`} d={lines.join('')} />)
})
