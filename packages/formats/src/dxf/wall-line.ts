import { distance, type Path, type Point, pathLength, pathPoint } from '@dawnlift/core/geometry'
import type { Metres } from '@dawnlift/core/quantity'
import type { DrawingMapping, DrawingNote, WallType } from '@dawnlift/document/job'
import type { Drawing } from './drawing.js'
import { layerUse } from './layer-use.js'
import { sayMillimetres, sayPlace } from './say-place.js'

/** One drawn line that stands for a wall, or a part of one. */
export interface WallLine {
  readonly path: Path
  readonly typeName: string
  readonly type: WallType
  /** From the layer of names. */
  readonly name?: string
}

export interface WallLines {
  readonly lines: readonly WallLine[]
  readonly notes: readonly DrawingNote[]
}

/** The lines on the wall layers, without points, doubles and face outlines. */
export function wallLines(drawing: Drawing, mapping: DrawingMapping): WallLines {
  const notes: DrawingNote[] = []
  const lines: WallLine[] = []
  const isDrawn = doublesFinder(mapping.joinWithin)
  for (const { layer, path } of drawing.paths) {
    const use = layerUse(mapping, layer)
    const type = use?.is === 'walls' && use.type !== undefined ? mapping.wallTypes[use.type] : undefined
    if (!type || use?.type === undefined) continue
    const point = path.points[0]!
    const line = {
      path: centreOfOutline(path, type.thickness, notes) ?? withoutDoubledCorners(path),
      typeName: use.type,
      type,
    }
    if (pathLength(line.path) <= Math.max(mapping.joinWithin, 1e-6))
      notes.push({
        code: 'dxf/zero-length',
        point,
        say: `A line of ${sayMillimetres(pathLength(line.path))} at ${sayPlace(point)} was left out: it is no longer than the join tolerance. Lower joinWithin if it is a wall.`,
      })
    else if (isDrawn(line.path, type.thickness / 2))
      notes.push({
        code: 'dxf/double',
        point,
        say: `The wall at ${sayPlace(point)} is drawn twice; one was left out.`,
      })
    else lines.push(line)
  }
  return { lines, notes }
}

/** Corners written twice make segments without direction; one is kept. */
function withoutDoubledCorners(path: Path): Path {
  const kept = path.points.map((point, i) => i === 0 || distance(point, path.points[i - 1]!) > 1e-9)
  if (kept.every(Boolean)) return path
  const points = path.points.filter((_, i) => kept[i])
  // The bulge between two equal corners belongs to nothing; the one after it is kept.
  const bulges = path.bulges.filter((_, i) => kept[i + 1] ?? true)
  return { points, bulges: bulges.slice(0, points.length - (path.closed ? 0 : 1)), closed: path.closed }
}

/** Tells of each path whether one like it came before, no further away; only paths of about the same middle are compared. */
function doublesFinder(within: Metres): (path: Path, most: Metres) => boolean {
  const slack = Math.max(within, 1e-6)
  const cells = new Map<string, Path[]>()
  return (path, most) => {
    const [x, y] = at(path, 0.5).map(value => Math.round(value / (4 * slack))) as [number, number]
    const near = [-1, 0, 1].flatMap(dx => [-1, 0, 1].flatMap(dy => cells.get(`${x + dx},${y + dy}`) ?? []))
    if (near.some(other => isDouble(other, path, Math.min(slack, most)))) return true
    cells.set(`${x},${y}`, [...(cells.get(`${x},${y}`) ?? []), path])
    return false
  }
}

function isDouble(a: Path, b: Path, slack: Metres): boolean {
  if (a.closed !== b.closed || Math.abs(pathLength(a) - pathLength(b)) > 2 * slack) return false
  const samples = [0, 0.25, 0.5, 0.75, 1]
  const apart = (turned: boolean) =>
    samples.every(share => distance(at(a, share), at(b, turned ? 1 - share : share)) <= slack)
  return apart(false) || apart(true)
}

const at = (path: Path, share: number): Point => pathPoint(path, pathLength(path) * share)

/**
 * A wall drawn by its faces: a closed rectangle about as wide as the wall is thick becomes the line through its middle.
 * Rectangles of another width stay closed lines; the lead sees them as odd walls.
 */
function centreOfOutline(path: Path, thickness: Metres, notes: DrawingNote[]): Path | undefined {
  const [a, b, c, d] = path.points
  if (!path.closed || path.points.length !== 4 || !a || !b || !c || !d) return undefined
  if (path.bulges.some(bulge => bulge !== 0)) return undefined
  const sides = [distance(a, b), distance(b, c), distance(c, d), distance(d, a)] as const
  const level =
    Math.abs(sides[0] - sides[2]) + Math.abs(sides[1] - sides[3]) + Math.abs(distance(a, c) - distance(b, d))
  const narrow = Math.min(sides[0], sides[1])
  if (level > 0.01 || Math.abs(narrow - thickness) > 0.1 * thickness) return undefined
  const middle = (p: Point, q: Point): Point => [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2]
  const points = sides[0] < sides[1] ? [middle(a, b), middle(c, d)] : [middle(b, c), middle(d, a)]
  notes.push({
    code: 'dxf/outline',
    point: points[0]!,
    say: `The outline at ${sayPlace(points[0]!)}, ${sayMillimetres(narrow)} wide, was taken as the two faces of a wall; its middle is the centreline.`,
  })
  return { points, bulges: [0], closed: false }
}
