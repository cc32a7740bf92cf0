import type { Column, Embed, Opening, Wall } from '@dawnlift/core/job'
import { closestName } from '@dawnlift/core/result'
import { buildPath } from './build-path.js'
import {
  buildColumnType,
  buildEmbedType,
  buildOpeningType,
  buildWallType,
  type WallParts,
} from './build-types.js'
import type { JobDocument } from './job-schema.js'
import type { Ledger } from './ledger.js'

type DocumentPath = readonly PropertyKey[]

/** What an entry says and its type says for it; the entry wins. The path of the type is where defaults are noted. */
function withType<T extends { readonly type?: string | undefined }, P extends object>(
  entry: T,
  list: string,
  types: Readonly<Record<string, P>>,
  path: DocumentPath,
  ledger: Ledger,
): { readonly parts: T & P; readonly path: DocumentPath } {
  if (entry.type === undefined) return { parts: entry as T & P, path }
  const found = Object.hasOwn(types, entry.type) ? types[entry.type] : undefined
  if (!found) {
    const near = closestName(entry.type, Object.keys(types))
    const hint = near ? `did you mean “${near}”?` : `known: ${Object.keys(types).join(', ') || 'none'}`
    ledger.wrong('job/unknown-type', [...path, 'type'], `There is no “${entry.type}” in ${list}; ${hint}`)
    return { parts: entry as T & P, path }
  }
  const own = Object.fromEntries(Object.entries(entry).filter(([, value]) => value !== undefined))
  return { parts: { ...found, ...own } as T & P, path: [list, entry.type] }
}

export const buildWalls = (document: JobDocument, ledger: Ledger): readonly Wall[] =>
  document.walls.flatMap((entry, index) => {
    const at = ['walls', index]
    const { parts, path } = withType<typeof entry, WallParts>(
      entry,
      'wallTypes',
      document.wallTypes,
      at,
      ledger,
    )
    const type = buildWallType(parts, path, document.print.beadWidth, ledger)
    const centreline = buildPath(entry.path, [...at, 'path'], ledger)
    if (!type || !centreline) return []
    return [{ id: entry.id, name: entry.name ?? entry.id, centreline, ...type, joints: entry.joints ?? [] }]
  })

export const buildOpenings = (document: JobDocument, ledger: Ledger): readonly Opening[] =>
  document.openings.flatMap((entry, index) => {
    const at = ['openings', index]
    const { parts, path } = withType(entry, 'openingTypes', document.openingTypes, at, ledger)
    const type = buildOpeningType(parts, path, ledger)
    const width = ledger.need(parts.width, [...at, 'width'], 'the rough width, like “900 mm”')
    const head = ledger.need(parts.head, [...at, 'head'], 'the height of the head, like “2.1 m”')
    if (!type || width === undefined || head === undefined) return []
    return [{ ...type, id: entry.id, wall: entry.wall, at: entry.at, width, head }]
  })

export const buildEmbeds = (document: JobDocument, ledger: Ledger): readonly Embed[] =>
  document.embeds.flatMap((entry, index) => {
    const at = ['embeds', index]
    const { parts, path } = withType(entry, 'embedTypes', document.embedTypes, at, ledger)
    const type = buildEmbedType(parts, path, ledger)
    const face = ledger.need(parts.face, [...at, 'face'], '“left”, “right”, “middle” or “through”')
    const bottom = ledger.need(parts.bottom, [...at, 'bottom'], 'its underside above the slab, like “300 mm”')
    const width = ledger.need(parts.width, [...at, 'width'], 'its width along the wall, like “70 mm”')
    const height = ledger.need(parts.height, [...at, 'height'], 'its height, like “70 mm”')
    const depth = ledger.need(parts.depth, [...at, 'depth'], 'its depth into the wall, like “50 mm”')
    if (
      !type ||
      !face ||
      bottom === undefined ||
      width === undefined ||
      height === undefined ||
      depth === undefined
    )
      return []
    const { kind, trade, method, head } = type
    return [
      {
        id: entry.id,
        wall: entry.wall,
        at: entry.at,
        kind,
        trade,
        method,
        face,
        bottom,
        width,
        height,
        depth,
        ...(head ? { head } : {}),
      },
    ]
  })

export const buildColumns = (document: JobDocument, ledger: Ledger): readonly Column[] =>
  document.columns.flatMap((entry, index) => {
    const at = ['columns', index]
    const { parts, path } = withType(entry, 'columnTypes', document.columnTypes, at, ledger)
    const { cover } = buildColumnType(parts, path, ledger)
    const length = ledger.need(parts.length, [...at, 'length'], 'its length along the wall, like “300 mm”')
    const thickness = ledger.need(
      parts.thickness,
      [...at, 'thickness'],
      'its thickness face to face, like “250 mm”',
    )
    if (length === undefined || thickness === undefined) return []
    return [{ id: entry.id, wall: entry.wall, at: entry.at, length, thickness, cover }]
  })
