import type { Lift } from '@dawnlift/core/campaign'
import type { Job } from '@dawnlift/core/job'
import type { SectionBuckling } from '@dawnlift/core/stand'
import {
  boundsOf,
  box,
  type Drawing,
  drawingRoom,
  fitTo,
  layer,
  lengthText,
  line,
  type Mark,
  type PaperMap,
  type PaperPoint,
  type Room,
  type Sheet,
  scaleBar,
  text,
  titleBlock,
} from '../paper/index.js'

export interface ModeParts {
  readonly job: Pick<Job, 'name' | 'units'>
  readonly lift: Pick<Lift, 'id'>
  readonly buckling: Pick<SectionBuckling, 'factor' | 'quick' | 'mode'>
}

interface View extends ModeParts {
  readonly plan: PaperMap
  readonly room: Room
  /** Millimetres on paper for the largest movement. */
  readonly reach: number
  readonly side: Room
}

/** How a whole section would lean over: its beads in plan as laid and as they would move, and the worst place over its height. */
export function drawModeShape(parts: ModeParts, sheet: Sheet): Drawing {
  const view = viewOf(parts, sheet)
  const factor = parts.buckling.factor.toFixed(1)
  return {
    title: `${parts.job.name}, how lift ${parts.lift.id} would lean over`,
    says: `The section of lift ${parts.lift.id} buckles at ${factor} times its weight; ${placeWords(parts)}.`,
    width: sheet.width,
    height: sheet.height,
    layers: [
      layer(
        'laid',
        edges(view, () => [0, 0], 'hidden'),
      ),
      layer(
        'moved',
        edges(view, position => movedBy(view, position), 'outline'),
      ),
      layer('largest', largestMarks(view)),
      layer('height', heightMarks(view)),
      layer('frame', [
        ...(sheet.frame ? scaleBar(view.plan, [view.room.x + 2, view.room.y], parts.job.units) : []),
        ...titleBlock(sheet, {
          title: `How lift ${parts.lift.id} would lean over`,
          subtitle: `At ${factor} × its weight as shells, ${parts.buckling.quick.factor.toFixed(1)} × by strips (${parts.buckling.quick.place}). Perfect walls, no factors taken off. Shape only, not its size; a licensed engineer decides.`,
          scaleText: `plan ${view.plan.scaleText}`,
        }),
      ]),
    ],
  }
}

function viewOf(parts: ModeParts, sheet: Sheet): View {
  const outer = drawingRoom(sheet)
  const reach = 8
  const side = { x: outer.x + outer.width - 46, y: outer.y + 12, width: 40, height: outer.height - 24 }
  const room = { x: outer.x + 2, y: outer.y + 2, width: outer.width - 56, height: outer.height - 4 }
  const inner = {
    x: room.x + reach,
    y: room.y + reach + 4,
    width: room.width - 2 * reach,
    height: room.height - 2 * reach - 8,
  }
  const plan = fitTo(boundsOf(parts.buckling.mode.positions), inner, parts.job.units, { loose: !sheet.frame })
  return { ...parts, plan, room, reach, side }
}

/** Movement in plan at the level that moves most, on paper. */
function movedBy({ buckling: { mode }, reach }: View, position: number): PaperPoint {
  const move = mode.moves[position]?.[mode.largest.level]
  return move ? [move[0] * reach, move[1] * reach] : [0, 0]
}

const edges = (
  { buckling: { mode }, plan }: View,
  by: (position: number) => PaperPoint,
  pen: 'hidden' | 'outline',
): Mark[] =>
  mode.edges.map(([from, to]) =>
    line([shifted(plan, mode.positions[from]!, by(from)), shifted(plan, mode.positions[to]!, by(to))], pen),
  )

const shifted = (plan: PaperMap, place: readonly [number, number], [dx, dy]: PaperPoint): PaperPoint => {
  const [x, y] = plan.toPaper(place)
  return [x + dx, y + dy]
}

const placeWords = ({ job, buckling: { mode } }: ModeParts): string =>
  `moves most ${lengthText(mode.heights[mode.largest.level] ?? 0, job.units)} over the foot of the lift`

function largestMarks(view: View): Mark[] {
  const { mode } = view.buckling
  const at = shifted(view.plan, mode.positions[mode.largest.position]!, movedBy(view, mode.largest.position))
  const right = at[0] > view.room.x + view.room.width / 2
  return [
    { kind: 'circle', at, radius: 1.6, pen: 'warnThick' },
    text([at[0] + (right ? -3 : 3), at[1] + 2.4], placeWords(view), 'small', right ? 'end' : 'start', {
      halo: true,
      fill: 'warn',
    }),
  ]
}

/** The worst place from the foot up: how far it moves at each height, the largest being 1. */
function heightMarks({ buckling: { mode }, side, job }: View): Mark[] {
  const top = Math.max(...mode.heights, 0.01)
  const middle = side.x + side.width / 2
  const moves = mode.moves[mode.largest.position] ?? []
  const [lx, ly] = moves[mode.largest.level] ?? [1, 0]
  const size = Math.hypot(lx, ly) || 1
  const points = mode.heights.map((height, level): PaperPoint => {
    const [x, y] = moves[level] ?? [0, 0]
    return [
      middle + ((x * lx + y * ly) / size ** 2) * (side.width / 2 - 4),
      side.y + (height / top) * side.height,
    ]
  })
  return [
    box([side.x, side.y], [side.x + side.width, side.y + side.height], 'hair'),
    line(
      [
        [middle, side.y],
        [middle, side.y + side.height],
      ],
      'hidden',
    ),
    line(points, 'outline'),
    {
      kind: 'circle',
      at: points[mode.largest.level] ?? [middle, side.y],
      radius: 1,
      pen: 'warn',
      fill: 'paper',
    },
    text([middle, side.y + side.height + 2], 'worst place over its height', 'small', 'middle'),
    text([side.x - 1.5, side.y - 0.7], lengthText(0, job.units), 'small', 'end'),
    text([side.x - 1.5, side.y + side.height - 0.7], lengthText(top, job.units), 'small', 'end'),
  ]
}
