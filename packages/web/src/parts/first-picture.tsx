import { type Path, type Point, pathBounds, pathLength, pathPoint } from '@dawnlift/core/geometry'
import type { Job } from '@dawnlift/core/job'
import { formatQuantity } from '@dawnlift/core/quantity'
import { useApp } from '../state/index.js'
import { words } from '../words/index.js'
import { pathData } from './path-data.js'

/** Clear paper round the house [m]. */
const margin = 0.8

/** The house as it is drawn, while its print days are still worked out. */
export function FirstPicture({ job }: { readonly job: Job }) {
  const units = useApp(state => state.units)
  const walls = new Map(job.walls.map(wall => [wall.id, wall]))
  const pieces = (className: string, share: number, parts: Job['openings'] | Job['embeds']) =>
    parts.map(({ id, wall: name, at, width }) => {
      const wall = walls.get(name)
      if (!wall) return null
      const d = between(wall.centreline, at - width / 2, at + width / 2)
      return <path key={id} className={className} d={d} strokeWidth={wall.thickness * share} />
    })
  const length = job.walls.reduce((sum, wall) => sum + pathLength(wall.centreline), 0)
  return (
    <section className="sheet first-picture" aria-label={words.asDrawn}>
      <p role="status">
        <strong>{job.name}</strong>{' '}
        {words.asDrawnFacts(
          job.walls.length,
          formatQuantity(length, 'length', units),
          job.openings.length,
          job.embeds.length,
        )}{' '}
        <span className="soft">{words.daysFollow}</span>
      </p>
      <svg viewBox={frameOf(job)} role="img" aria-label={words.asDrawn}>
        {/* The building’s y axis points up the sheet. */}
        <g transform="scale(1 -1)">
          {job.walls.map(({ id, centreline, thickness }) => (
            <path key={id} className="wall" d={pathData(centreline)} strokeWidth={thickness} />
          ))}
          {pieces('hole', 0.8, job.openings)}
          {pieces('embed', 0.5, job.embeds)}
        </g>
      </svg>
    </section>
  )
}

/** A piece of a path as a straight stroke: curved walls are divided finely enough for a first look. */
function between(path: Path, from: number, to: number): string {
  const on = (station: number): Point => pathPoint(path, Math.min(Math.max(0, station), pathLength(path)))
  const text = (point: Point) => point.map(each => each.toFixed(3)).join(' ')
  return `M${text(on(from))}L${text(on((from + to) / 2))}L${text(on(to))}`
}

function frameOf({ walls }: Job): string {
  const boxes = walls.map(wall => pathBounds(wall.centreline))
  const [left, low] = [0, 1].map(axis => Math.min(...boxes.map(box => box.least[axis]!)) - margin) as [
    number,
    number,
  ]
  const [right, high] = [0, 1].map(axis => Math.max(...boxes.map(box => box.most[axis]!)) + margin) as [
    number,
    number,
  ]
  return [left, -high, right - left, high - low].map(each => each.toFixed(3)).join(' ')
}
