import type { LayerUse } from '@dawnlift/document/job'
import type { Drawing } from '@dawnlift/formats/dxf'

/** What lies on one layer of a drawing. */
export interface LayerRow {
  readonly layer: string
  /** Lines and arcs that are not the picture of a block. */
  readonly lines: number
  readonly texts: number
  readonly blocks: number
}

/** Every layer with something on it, by name. */
export function layerCensus({ paths, texts, blocks }: Drawing): readonly LayerRow[] {
  const rows = new Map<string, { lines: number; texts: number; blocks: number }>()
  const count = (layer: string, what: 'lines' | 'texts' | 'blocks') => {
    const row = rows.get(layer) ?? { lines: 0, texts: 0, blocks: 0 }
    row[what] += 1
    rows.set(layer, row)
  }
  for (const { layer, block } of paths) if (block === undefined) count(layer, 'lines')
  for (const { layer } of texts) count(layer, 'texts')
  for (const { layer } of blocks) count(layer, 'blocks')
  return [...rows]
    .map(([layer, counts]) => ({ layer, ...counts }))
    .sort((a, b) => a.layer.localeCompare(b.layer, 'en'))
}

/** Words drafters name layers by, in a few languages; the first that fits is proposed, never taken unasked. */
const hints: readonly (readonly [RegExp, LayerUse['is']])[] = [
  [/room|furnit|note|dim|hatch|grid|axis|title|frame|text/i, 'ignore'],
  [/open|door|window|glaz|fenster|t[uü]r|puerta|ventana|porte|fen[eê]tre/i, 'openings'],
  [/col(umn|s)?\b|pillar|st[uü]tz|pilar|poteau/i, 'columns'],
  [/wall|wand|muro|mur\b|pared/i, 'walls'],
  [/embed|elec|sock|plumb|mep|box/i, 'embeds'],
]

/** What a layer probably holds. Names without lines on a layer of walls are the walls’ names. */
export function likelyUse(row: LayerRow): LayerUse['is'] {
  const is = hints.find(([pattern]) => pattern.test(row.layer))?.[1] ?? 'ignore'
  if (is === 'walls' && row.lines === 0) return row.texts > 0 ? 'names' : 'ignore'
  if (is === 'embeds' && row.blocks === 0) return 'ignore'
  return is
}

/** The types blocks on a layer name themselves. */
export const blockTypes = ({ blocks }: Drawing, layer: string): readonly string[] => [
  ...new Set(blocks.filter(each => each.layer === layer).flatMap(each => each.attributes.TYPE ?? [])),
]
