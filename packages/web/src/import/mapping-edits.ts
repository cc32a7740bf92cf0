import type { Point } from '@dawnlift/core/geometry'
import type { DrawingUnit, JobEdit, LayerUse, RawJob } from '@dawnlift/document/job'

/** A make-up that the job does not have yet. */
export interface NewWallType {
  readonly makeUp: 'single' | 'double' | 'solid'
  /** As typed. */
  readonly thickness: string
  readonly height: string
}

export interface LayerChoice {
  readonly is: LayerUse['is']
  /** A type the job has. */
  readonly type?: string
  /** Walls of a make-up to be written into the job. */
  readonly fresh?: NewWallType
}

export interface ImportChoice {
  readonly file: string
  readonly unit: DrawingUnit
  /** The point of the drawing that becomes the building’s origin, in metres. */
  readonly origin?: Point
  readonly layers: Readonly<Record<string, LayerChoice>>
  /** Whether walls and parts that the job has now go. */
  readonly clear: boolean
}

const ownLists = ['walls', 'openings', 'embeds', 'columns', 'sections', 'joints', 'noCutAt'] as const

/** What the job itself has by way of walls and parts: `1 wall, 2 openings`. */
export const ownParts = (raw: RawJob): readonly (readonly [list: string, count: number])[] =>
  ownLists.flatMap(list => {
    const found = raw[list]
    return Array.isArray(found) && found.length > 0 ? [[list, found.length] as const] : []
  })

/** A job whose walls stand in it, not in a drawing: those of the drawing would come on top of them. */
export const standsAlone = (raw: RawJob): boolean =>
  raw.drawing === undefined && ownParts(raw).some(([list]) => list === 'walls')

/** Everything the document must say for the drawing to be in it. */
export function mappingEdits(raw: RawJob, choice: ImportChoice): readonly JobEdit[] {
  const gone = choice.clear ? ownParts(raw).map(([list]): JobEdit => ({ kind: 'remove', path: [list] })) : []
  const types = Object.entries(choice.layers).flatMap(([layer, { is, fresh }]): readonly JobEdit[] =>
    is === 'walls' && fresh
      ? [{ kind: 'set', path: ['wallTypes', typeName(layer)], value: typeEntry(fresh) }]
      : [],
  )
  const entry = drawingEntry(choice)
  const drawing: readonly JobEdit[] =
    raw.drawing === undefined
      ? [{ kind: 'set', path: ['drawing'], value: entry }]
      : changedDrawing(raw.drawing as OldDrawing, entry)
  return [...gone, ...types, ...drawing]
}

type Entry = ReturnType<typeof drawingEntry>
type OldDrawing = Readonly<Record<string, unknown>> & { readonly layers?: Readonly<Record<string, unknown>> }

/** Only what differs, so that the block keeps its place, its comments and how the job joins ends. The origin belongs to one drawing. */
function changedDrawing(old: OldDrawing, { layers, ...entry }: Entry): readonly JobEdit[] {
  const differs = (a: unknown, b: unknown) => JSON.stringify(a) !== JSON.stringify(b)
  const before = old.layers ?? {}
  const stale = 'origin' in old && old.file !== entry.file && !('origin' in entry)
  return [
    ...Object.entries(entry)
      .filter(([key, value]) => differs(value, old[key]))
      .map(([key, value]): JobEdit => ({ kind: 'set', path: ['drawing', key], value })),
    ...(stale ? [{ kind: 'remove' as const, path: ['drawing', 'origin'] }] : []),
    ...Object.entries(layers)
      .filter(([layer, use]) => differs(use, before[layer]))
      .map(([layer, value]): JobEdit => ({ kind: 'set', path: ['drawing', 'layers', layer], value })),
    ...Object.keys(before)
      .filter(layer => !(layer in layers))
      .map((layer): JobEdit => ({ kind: 'remove', path: ['drawing', 'layers', layer] })),
  ]
}

const typeEntry = ({ makeUp, thickness, height }: NewWallType) =>
  makeUp === 'single' ? { makeUp, height } : { makeUp, thickness, height }

function drawingEntry({ file, unit, origin, layers }: ImportChoice) {
  return {
    file,
    unit,
    ...(origin ? { origin: origin.map(each => `${Number(each.toFixed(4))} m`) } : {}),
    layers: Object.fromEntries(Object.entries(layers).map(([layer, use]) => [layer, layerEntry(layer, use)])),
  }
}

function layerEntry(layer: string, { is, type, fresh }: LayerChoice) {
  if (is === 'walls' && fresh) return { is, type: typeName(layer) }
  return is === 'names' || is === 'ignore' || !type ? { is } : { is, type }
}

/** `WALLS OUT` → `walls-out`. */
export const typeName = (layer: string): string =>
  layer
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-|-$/g, '')
    .slice(0, 60) || 'walls'

/** Drawings laid out far away come home: their lower left corner becomes the origin. */
export const originFor = (least: Point, most: Point): Point | undefined =>
  Math.hypot((least[0] + most[0]) / 2, (least[1] + most[1]) / 2) > 100 ? least : undefined
