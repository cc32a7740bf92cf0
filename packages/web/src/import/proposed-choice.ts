import type { LayerUse, RawJob } from '@dawnlift/document/job'
import type { Drawing } from '@dawnlift/formats/dxf'
import { blockTypes, type LayerRow, likelyUse } from './layer-census.js'
import type { LayerChoice, NewWallType } from './mapping-edits.js'

const typeLists: Readonly<Partial<Record<LayerUse['is'], string>>> = {
  walls: 'wallTypes',
  openings: 'openingTypes',
  embeds: 'embedTypes',
  columns: 'columnTypes',
}

/** Types of the job that a layer of such things may have; undefined for uses that have none. */
export function typesFor(raw: RawJob, is: LayerUse['is']): readonly string[] | undefined {
  const list = typeLists[is]
  if (list === undefined) return undefined
  const found = raw[list]
  return typeof found === 'object' && found !== null ? Object.keys(found) : []
}

/** A common wall of each country to begin with. */
export const firstMakeUp = (raw: RawJob): NewWallType =>
  raw.units === 'imperial'
    ? { makeUp: 'double', thickness: '10 in', height: '8 ft' }
    : { makeUp: 'double', thickness: '250 mm', height: '2.6 m' }

/** Walls of the job’s first type, or of a new one; other things as their blocks say. */
export function choiceOf(is: LayerUse['is'], raw: RawJob): LayerChoice {
  if (is !== 'walls') return { is }
  const [type] = typesFor(raw, is) ?? []
  return type ? { is, type } : { is, fresh: firstMakeUp(raw) }
}

/** As the job maps the layer already, else by its name; things of types that the job does not have are left out at first. */
export function proposedChoice(row: LayerRow, drawing: Drawing, raw: RawJob): LayerChoice {
  const old = (raw.drawing as { readonly layers?: Readonly<Record<string, LayerChoice>> } | undefined)?.layers
  const kept = old?.[row.layer]
  if (kept) return kept
  const is = likelyUse(row)
  const known = typesFor(raw, is)
  if (is === 'walls' || known === undefined) return choiceOf(is, raw)
  const named = blockTypes(drawing, row.layer)
  if (named.length > 0) return { is: named.every(type => known.includes(type)) ? is : 'ignore' }
  return known[0] ? { is, type: known[0] } : { is: 'ignore' }
}

/** A use for every layer; where no name tells of walls, the layer with the most lines may be them. */
export function proposedChoices(
  rows: readonly LayerRow[],
  drawing: Drawing,
  raw: RawJob,
): Readonly<Record<string, LayerChoice>> {
  const choices = Object.fromEntries(rows.map(row => [row.layer, proposedChoice(row, drawing, raw)]))
  const fullest = [...rows].sort((a, b) => b.lines - a.lines)[0]
  const noWalls = Object.values(choices).every(({ is }) => is !== 'walls')
  return noWalls && fullest && fullest.lines > 0
    ? { ...choices, [fullest.layer]: choiceOf('walls', raw) }
    : choices
}
