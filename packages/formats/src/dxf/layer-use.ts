import type { Point } from '@dawnlift/core/geometry'
import { closestName, type Problem } from '@dawnlift/core/result'
import type { DrawingMapping, DrawingNote, LayerUse } from '@dawnlift/document/job'
import type { Drawing } from './drawing.js'
import { sayPlace } from './say-place.js'

/** The use of a layer; names of layers are compared without regard to capitals, as the format does. */
export function layerUse(mapping: DrawingMapping, layer: string): LayerUse | undefined {
  const folded = layer.toLowerCase()
  const name = Object.keys(mapping.layers).find(each => each.toLowerCase() === folded)
  return name === undefined ? undefined : mapping.layers[name]
}

/** Layers the job names but the drawing lacks, and types that the job does not have. */
export function layerProblems(drawing: Drawing, mapping: DrawingMapping): readonly Problem[] {
  const drawn = [...layersOf(drawing).keys()]
  return Object.entries(mapping.layers).flatMap(([name, use]) => {
    const at = `drawing.layers.${name}`
    const problems: Problem[] = []
    if (use.is !== 'ignore' && !drawn.some(each => each.toLowerCase() === name.toLowerCase())) {
      const near = closestName(name, drawn)
      const hint = near
        ? `did you mean “${near}”?`
        : `layers with something on them: ${drawn.slice(0, 20).join(', ') || 'none'}`
      problems.push({ code: 'dxf/no-such-layer', at, say: `Nothing is drawn on layer “${name}”; ${hint}` })
    }
    return [...problems, ...typeProblems(use, mapping, at)]
  })
}

function typeProblems(use: LayerUse, mapping: DrawingMapping, at: string): readonly Problem[] {
  const lists: Readonly<Partial<Record<LayerUse['is'], Readonly<Record<string, unknown>>>>> = {
    walls: mapping.wallTypes,
    openings: mapping.openingTypes,
    embeds: mapping.embedTypes,
    columns: mapping.columnTypes,
  }
  const types = lists[use.is]
  if (!types) return []
  const known = Object.keys(types)
  if (use.type === undefined)
    return use.is === 'walls'
      ? [
          {
            code: 'dxf/no-type',
            at,
            say: `A layer of walls needs a type; write for example type: ${known[0] ?? 'outer'}`,
          },
        ]
      : []
  if (known.includes(use.type)) return []
  const near = closestName(use.type, known)
  const hint = near ? `did you mean “${near}”?` : `known: ${known.join(', ') || 'none'}`
  return [{ code: 'job/unknown-type', at, say: `There is no type “${use.type}” for ${use.is}; ${hint}` }]
}

/** One note for each layer that has something on it and no use in the job. */
export const unmappedNotes = (drawing: Drawing, mapping: DrawingMapping): readonly DrawingNote[] =>
  [...layersOf(drawing)]
    .filter(([layer]) => layerUse(mapping, layer) === undefined)
    .map(([layer, { count, point }]) => ({
      code: 'dxf/unmapped-layer',
      point,
      say: `Layer “${layer}” holds ${count} thing${count === 1 ? '' : 's'}, the first at ${sayPlace(point)}, and is not used; map it or write { is: ignore }.`,
    }))

function layersOf(drawing: Drawing): ReadonlyMap<string, { readonly count: number; readonly point: Point }> {
  const found = new Map<string, { count: number; point: Point }>()
  const add = (layer: string, point: Point) => {
    const entry = found.get(layer)
    if (entry) entry.count += 1
    else found.set(layer, { count: 1, point })
  }
  for (const { layer, path } of drawing.paths) add(layer, path.points[0] ?? [0, 0])
  for (const { layer, point } of [...drawing.texts, ...drawing.blocks]) add(layer, point)
  return found
}
