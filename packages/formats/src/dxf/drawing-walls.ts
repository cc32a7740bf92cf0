import { type Path, type Point, selfCrossings } from '@dawnlift/core/geometry'
import type { Wall } from '@dawnlift/core/job'
import type { Problem, Result } from '@dawnlift/core/result'
import { failure, success } from '@dawnlift/core/result'
import type { DrawingMapping, DrawingWalls } from '@dawnlift/document/job'
import { chainLines } from './chain-lines.js'
import type { Drawing } from './drawing.js'
import { drawnColumns, drawnEmbeds, drawnOpenings } from './drawn-parts.js'
import { joinEnds } from './join-ends.js'
import { layerProblems, unmappedNotes } from './layer-use.js'
import { nameLines } from './name-lines.js'
import { overlapNotes } from './overlap-notes.js'
import { sayPlace } from './say-place.js'
import { type WallLine, wallLines } from './wall-line.js'

/** What a drawing gives a job: walls and what stands in them; or every problem with its place. */
export function drawingWalls(sheet: Drawing, mapping: DrawingMapping): Result<DrawingWalls> {
  const drawing = atOrigin(sheet, mapping.origin)
  const problems: Problem[] = [...layerProblems(drawing, mapping)]
  const picked = wallLines(drawing, mapping)
  const joined = joinEnds(picked.lines, mapping.joinWithin)
  const named = nameLines(joined.lines, drawing, mapping)
  const walls = asWalls(chainLines(named.lines), problems)
  if (walls.length === 0 && problems.length === 0)
    problems.push({
      code: 'dxf/no-walls',
      at: mapping.file,
      say: 'No line of the drawing is a wall: map the layer with the centrelines to walls in the job.',
    })
  const context = { walls, mapping, used: new Set(walls.map(wall => wall.id)), problems }
  const parts = walls.length === 0 ? nothing : partsOf(drawing, context)
  if (problems.length > 0) return failure(problems)
  const leftOut = Object.entries(drawing.leftOut).map(([kind, count]) => ({
    code: 'dxf/left-out',
    point: drawing.least,
    say: `${count} ${kind} ${count === 1 ? 'is' : 'are'} not read. Redraw as lines and arcs what is meant to be built.`,
  }))
  const notes = [
    ...drawing.notes,
    ...picked.notes,
    ...joined.notes,
    ...named.notes,
    ...overlapNotes(walls),
    ...unmappedNotes(drawing, mapping),
    ...leftOut,
  ]
  return success({ walls, ...parts, notes })
}

const nothing = { openings: [], embeds: [], columns: [] }

/** Marks first, so that no number given to an unmarked block takes a mark of a later one. */
function partsOf(drawing: Drawing, context: Parameters<typeof drawnOpenings>[1]) {
  for (const { attributes } of drawing.blocks) if (attributes.MARK) context.used.add(attributes.MARK.trim())
  return {
    openings: drawnOpenings(drawing, context),
    embeds: drawnEmbeds(drawing, context),
    columns: drawnColumns(drawing, context),
  }
}

function asWalls(lines: readonly WallLine[], problems: Problem[]): readonly Wall[] {
  const used = new Set(lines.flatMap(line => (line.name === undefined ? [] : markAndName(line.name)[0])))
  let number = 0
  const nextId = (): string => {
    do number += 1
    while (used.has(`W${number}`))
    return `W${number}`
  }
  return [...lines].sort(byPlace).map(({ path, type, name }) => {
    const [id, words] = name === undefined ? [nextId(), undefined] : markAndName(name)
    for (const point of selfCrossings(path))
      problems.push({
        code: 'dxf/self-crossing',
        at: sayPlace(point),
        say: `Wall ${id} crosses itself at ${sayPlace(point)}; draw it as two walls or correct it.`,
      })
    const { makeUp, thickness, base, top, relief } = type
    return {
      id,
      name: words ?? id,
      centreline: path,
      makeUp,
      thickness,
      base,
      top,
      ...(relief ? { relief } : {}),
      joints: [],
    }
  })
}

/** `S: south` is wall S, called south; a multi-line text may put the two on two lines. */
function markAndName(text: string): readonly [string, string | undefined] {
  const [mark = '', ...rest] = text.split(/\n|:\s+/)
  return [mark.trim(), rest.join(' ').trim() || undefined]
}

/** From the bottom left upwards, so that numbers do not depend on the order of drawing. */
function byPlace(a: WallLine, b: WallLine): number {
  const [p, q] = [lowest(a.path), lowest(b.path)]
  return p[1] - q[1] || p[0] - q[0] || a.path.points.length - b.path.points.length
}

const lowest = (path: Path): Point =>
  path.points.reduce((best, point) =>
    point[1] < best[1] || (point[1] === best[1] && point[0] < best[0]) ? point : best,
  )

function atOrigin(drawing: Drawing, origin: Point): Drawing {
  if (origin[0] === 0 && origin[1] === 0) return drawing
  const shift = ([x, y]: Point): Point => [x - origin[0], y - origin[1]]
  return {
    ...drawing,
    paths: drawing.paths.map(each => ({
      ...each,
      path: { ...each.path, points: each.path.points.map(shift) },
    })),
    texts: drawing.texts.map(each => ({ ...each, point: shift(each.point) })),
    blocks: drawing.blocks.map(each => ({
      ...each,
      point: shift(each.point),
      least: shift(each.least),
      most: shift(each.most),
    })),
    notes: drawing.notes.map(each => ({ ...each, point: shift(each.point) })),
    least: shift(drawing.least),
    most: shift(drawing.most),
  }
}
