import { type Path, pathBounds } from '@dawnlift/core/geometry'
import { pathData } from '../../parts/index.js'
import { words } from '../../words/index.js'

/** Clear paper round the beads [m]. */
const margin = 0.4

interface Drawn {
  readonly bead: string
  readonly path: Path
  readonly width: number
}

/** The passes of a layer: those that are down, and those still to be laid, from a place where the nozzle begins. */
export function PassPicture({
  passes,
  first,
  choose,
}: {
  readonly passes: readonly Drawn[]
  /** The first pass to be laid, from 1. */
  readonly first: number
  readonly choose: (pass: number) => void
}) {
  const [x, y] = passes[first - 1]!.path.points[0]!
  return (
    <svg className="passes" viewBox={frameOf(passes)} role="img" aria-label={words.restart.picture}>
      {/* The building’s y axis points up the sheet. */}
      <g transform="scale(1 -1)">
        {passes.map(({ bead, path, width }, index) => (
          // biome-ignore lint/a11y/noStaticElementInteractions: a short cut for the finger; the buttons above do the same
          <path
            key={bead}
            className={index + 1 < first ? 'laid' : 'left'}
            d={pathData(path)}
            strokeWidth={width}
            onClick={() => choose(index + 1)}
          />
        ))}
        <circle cx={x} cy={y} r={0.16} />
      </g>
    </svg>
  )
}

function frameOf(passes: readonly Drawn[]): string {
  const boxes = passes.map(({ path }) => pathBounds(path))
  const edge = (side: 'least' | 'most', axis: 0 | 1) => boxes.map(box => box[side][axis]!)
  const [left, low] = [Math.min(...edge('least', 0)) - margin, Math.min(...edge('least', 1)) - margin]
  const [right, high] = [Math.max(...edge('most', 0)) + margin, Math.max(...edge('most', 1)) + margin]
  return [left, -high, right - left, high - low].map(each => each.toFixed(3)).join(' ')
}
