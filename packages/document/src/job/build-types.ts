import type { MakeUp, Relief } from '@dawnlift/core/job'
import type { z } from 'zod'
import { defaultText } from './assumed.js'
import type { DefaultPath } from './default-table.js'
import type { ColumnType, EmbedType, OpeningType, WallType } from './drawing-walls.js'
import type { Ledger } from './ledger.js'
import type { columnTypeSchema, embedTypeSchema, openingTypeSchema, wallTypeSchema } from './wall-schema.js'

type Path = readonly PropertyKey[]
export type WallParts = z.output<typeof wallTypeSchema>
export type OpeningParts = z.output<typeof openingTypeSchema>
export type EmbedParts = z.output<typeof embedTypeSchema>
export type ColumnParts = z.output<typeof columnTypeSchema>

/** Make-up, thickness and heights of a wall; nothing when one of them is missing. */
export function buildWallType(
  parts: WallParts,
  path: Path,
  beadWidth: number,
  ledger: Ledger,
): WallType | undefined {
  const kind = ledger.need(parts.makeUp, [...path, 'makeUp'], '“single”, “double” or “solid”')
  const height = ledger.need(parts.height, [...path, 'height'], 'the height of the wall, like “2.8 m”')
  const thickness =
    kind === 'single'
      ? (parts.thickness ?? beadWidth)
      : ledger.need(
          parts.thickness,
          [...path, 'thickness'],
          'the wall’s thickness face to face, like “250 mm”',
        )
  if (!kind || height === undefined || thickness === undefined) return undefined
  checkThickness(kind, thickness, path, beadWidth, ledger)
  const base = ledger.orNumber(parts.base, 'walls.base', [...path, 'base'])
  const relief = parts.relief ? { relief: reliefOf(parts.relief) } : {}
  return { makeUp: makeUpOf(kind, parts, path, ledger), thickness, base, top: base + height, ...relief }
}

function checkThickness(
  kind: MakeUp['kind'],
  thickness: number,
  path: Path,
  beadWidth: number,
  ledger: Ledger,
): void {
  const at = [...path, 'thickness']
  if (kind === 'single' && Math.abs(thickness - beadWidth) > 1e-6)
    ledger.wrong(
      'job/single-thickness',
      at,
      `A single wall is one bead thick: ${ledger.said(beadWidth)}, not ${ledger.said(thickness)}. Leave thickness out or change print.beadWidth.`,
    )
  if (kind === 'solid' && thickness < beadWidth - 1e-9)
    ledger.wrong(
      'job/thin-wall',
      at,
      `A solid wall of ${ledger.said(thickness)} is thinner than one bead of ${ledger.said(beadWidth)}; make it at least that, or lower print.beadWidth.`,
    )
  if (kind === 'double' && thickness < 3 * beadWidth)
    ledger.wrong(
      'job/thin-wall',
      at,
      `A double wall of ${ledger.said(thickness)} leaves no cavity for its web; with beads of ${ledger.said(beadWidth)} it needs at least ${ledger.said(3 * beadWidth)}.`,
    )
}

function makeUpOf(kind: MakeUp['kind'], parts: WallParts, path: Path, ledger: Ledger): MakeUp {
  if (kind !== 'double') return { kind }
  if (!parts.web) ledger.assume('walls.web', [...path, 'web'])
  const webPitch = ledger.orNumber(parts.webPitch, 'walls.webPitch', [...path, 'webPitch'])
  return { kind, web: parts.web ?? 'zigzag', webPitch }
}

const reliefOf = ({ ramp, ...rest }: NonNullable<WallParts['relief']>): Relief =>
  ramp ? { ...rest, ramp } : rest

/** Kind, heights and lintel of an opening; a door or passage without a sill starts at the slab. */
export function buildOpeningType(parts: OpeningParts, path: Path, ledger: Ledger): OpeningType | undefined {
  const kind = ledger.need(parts.kind, [...path, 'kind'], '“door”, “window” or “passage”')
  const sill =
    parts.sill ??
    (kind === 'window'
      ? ledger.need(undefined, [...path, 'sill'], 'the height of the sill, like “900 mm”')
      : 0)
  if (!kind || sill === undefined) return undefined
  return {
    kind,
    sill,
    ...(parts.width === undefined ? {} : { width: parts.width }),
    ...(parts.head === undefined ? {} : { head: parts.head }),
    ...(parts.lintel ? { lintel: lintelOf(parts.lintel, [...path, 'lintel'], ledger) } : {}),
  }
}

function lintelOf(
  lintel: NonNullable<OpeningParts['lintel']>,
  path: Path,
  ledger: Ledger,
): NonNullable<OpeningType['lintel']> {
  if (!lintel.kind) ledger.assume('openings.lintel.kind', [...path, 'kind'])
  return {
    kind: lintel.kind ?? 'precast',
    height: ledger.orNumber(lintel.height, 'openings.lintel.height', [...path, 'height']),
    bearing: ledger.orNumber(lintel.bearing, 'openings.lintel.bearing', [...path, 'bearing']),
  }
}

export function buildEmbedType(parts: EmbedParts, path: Path, ledger: Ledger): EmbedType | undefined {
  const kind = ledger.need(parts.kind, [...path, 'kind'], 'what it is, like “box”, “sleeve” or “niche”')
  const trade = ledger.need(parts.trade, [...path, 'trade'], 'whose it is, like “electrical” or “plumbing”')
  if (!kind || !trade) return undefined
  const row: DefaultPath = `embeds.method.${kind}`
  if (!parts.method) ledger.assume(row, [...path, 'method'])
  const { face, bottom, width, height, depth } = parts
  const usual = defaultText(row)
  const method = parts.method ?? (usual === 'cut' || usual === 'set' ? usual : 'gap')
  return {
    kind,
    trade,
    method,
    ...given({ bottom, width, height, depth }),
    ...(face ? { face } : {}),
    ...(parts.head === 'corbelled' ? { head: parts.head } : {}),
  }
}

export function buildColumnType(parts: ColumnParts, path: Path, ledger: Ledger): ColumnType {
  const { length, thickness } = parts
  const cover = ledger.orNumber(parts.cover, 'columns.cover', [...path, 'cover'])
  return { cover, ...given({ length, thickness }) }
}

type Given<T> = { readonly [K in keyof T]?: Exclude<T[K], undefined> }

/** Only the keys that have a value. */
export const given = <T extends Record<string, unknown>>(values: T): Given<T> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Given<T>
