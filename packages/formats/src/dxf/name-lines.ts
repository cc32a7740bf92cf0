import { nearestOnPath } from '@dawnlift/core/geometry'
import type { DrawingMapping, DrawingNote } from '@dawnlift/document/job'
import type { Drawing } from './drawing.js'
import { layerUse } from './layer-use.js'
import { boxDistance, boxesOf } from './nearest-line.js'
import { sayPlace } from './say-place.js'
import type { WallLine, WallLines } from './wall-line.js'

/** A name further from every wall than this is no wall's name [m]. */
const NAME_REACH = 1

/** Gives each text of the layers of names to the nearest line; every text and every line is used once. */
export function nameLines(lines: readonly WallLine[], drawing: Drawing, mapping: DrawingMapping): WallLines {
  const texts = drawing.texts.filter(text => layerUse(mapping, text.layer)?.is === 'names')
  const boxes = boxesOf(lines.map(line => line.path))
  const pairs = texts.flatMap(({ point }, t) =>
    lines.flatMap(({ path }, l) => {
      if (boxDistance(boxes[l]!, point) > NAME_REACH) return []
      const away = nearestOnPath(path, point).distance
      return away <= NAME_REACH ? [{ t, l, away }] : []
    }),
  )
  const names = new Map<number, string>()
  const used = new Set<number>()
  for (const { t, l } of pairs.sort((a, b) => a.away - b.away)) {
    if (used.has(t) || names.has(l)) continue
    used.add(t)
    names.set(l, texts[t]!.text)
  }
  const notes = texts
    .filter((_, t) => !used.has(t))
    .map(
      (text): DrawingNote => ({
        code: 'dxf/unused-name',
        point: text.point,
        say: `The name “${text.text}” at ${sayPlace(text.point)} stands by no wall within ${NAME_REACH} m that has no name yet; it was left out. Move it to its wall.`,
      }),
    )
  return { lines: lines.map((line, l) => (names.has(l) ? { ...line, name: names.get(l)! } : line)), notes }
}
