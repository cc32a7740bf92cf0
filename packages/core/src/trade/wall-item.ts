import type { EmbedKind, Job, Trade, Wall } from '../job/index.js'
import type { Metres } from '../quantity/index.js'
import { bearings, hasLintel } from './lintel-calls.js'

/** Something in a wall as a block on its unrolled face: along, up and through, depth 0 at the left face. */
export interface WallItem {
  readonly id: string
  readonly what: EmbedKind | 'opening' | 'lintel' | 'bearing' | 'column'
  readonly trade?: Trade
  readonly face: 'left' | 'right' | 'middle' | 'through'
  readonly along: readonly [Metres, Metres]
  readonly up: readonly [Metres, Metres]
  readonly through: readonly [Metres, Metres]
}

/** Everything in a wall, each as a block; a lintel as its body over the opening and its two bearings. */
export function itemsOf(job: Job, wall: Wall): readonly WallItem[] {
  return [...embedItems(job, wall), ...openingItems(job, wall), ...columnItems(job, wall)]
}

function embedItems(job: Job, wall: Wall): WallItem[] {
  const { thickness } = wall
  return job.embeds
    .filter(embed => embed.wall === wall.id)
    .map(embed => {
      const through: Readonly<Record<typeof embed.face, readonly [Metres, Metres]>> = {
        left: [0, embed.depth],
        right: [thickness - embed.depth, thickness],
        middle: [(thickness - embed.depth) / 2, (thickness + embed.depth) / 2],
        through: [0, thickness],
      }
      return {
        id: embed.id,
        what: embed.kind,
        trade: embed.trade,
        face: embed.face,
        along: about(embed.at, embed.width),
        up: [embed.bottom, embed.bottom + embed.height] as const,
        through: through[embed.face],
      }
    })
}

function openingItems(job: Job, wall: Wall): WallItem[] {
  const through = [0, wall.thickness] as const
  const whole = { face: 'through' as const, through }
  return job.openings
    .filter(opening => opening.wall === wall.id)
    .flatMap(opening => {
      const hole: WallItem = {
        id: opening.id,
        what: 'opening',
        ...whole,
        along: about(opening.at, opening.width),
        up: [opening.sill, opening.head],
      }
      if (!hasLintel(opening)) return [hole]
      const up = [opening.head, opening.head + opening.lintel.height] as const
      const body: WallItem = { ...hole, what: 'lintel', up }
      const seats = bearings(opening).map(seat => ({
        ...hole,
        what: 'bearing' as const,
        along: about(seat.at, opening.lintel.bearing),
        up,
      }))
      return [hole, body, ...seats]
    })
}

const columnItems = (job: Job, wall: Wall): WallItem[] =>
  job.columns
    .filter(column => column.wall === wall.id)
    .map(column => ({
      id: column.id,
      what: 'column',
      face: 'middle',
      along: about(column.at, column.length),
      up: [wall.base, wall.top],
      // The cage and its cover fill everything between the two outer beads.
      through: [job.print.beadWidth, wall.thickness - job.print.beadWidth],
    }))

const about = (middle: Metres, size: Metres): readonly [Metres, Metres] => [
  middle - size / 2,
  middle + size / 2,
]

/** Shortest distance between two blocks' ranges: negative is how far they run into each other. */
export const gapBetween = (a: readonly [Metres, Metres], b: readonly [Metres, Metres]): Metres =>
  Math.max(a[0], b[0]) - Math.min(a[1], b[1])
