import { formatQuantity, parseQuantity, unitTable } from '@dawnlift/core/quantity'
import { assert } from '@dawnlift/core/result'
import { type Default, type DefaultPath, defaultTable } from './default-table.js'

/** One value that the job did not give. */
export interface Assumed {
  /** Path in the document where the job may say otherwise, e.g. `rules.liftHeight`. */
  readonly at: string
  /** The value in the job's own units. */
  readonly value: string
  readonly source: string
  readonly why: string
}

/** The default as a number in the unit used inside. */
export function defaultNumber(path: DefaultPath): number {
  const { dimension, text }: Default = defaultTable[path]
  if (!dimension) return Number(text)
  const read = parseQuantity(text, dimension)
  assert(read.ok, `the default of ${path} reads as a ${dimension}`)
  return read.value
}

export const defaultText = (path: DefaultPath): string => defaultTable[path].text

/** The row of a default that was used at this place of the document. */
export function assumedAt(path: DefaultPath, units: 'metric' | 'imperial', at: string = path): Assumed {
  const { source, why }: Default = defaultTable[path]
  return { at, value: shown(path, units), source, why }
}

function shown(path: DefaultPath, units: 'metric' | 'imperial'): string {
  const { dimension, text }: Default = defaultTable[path]
  if (!dimension || units === 'metric') return text
  const { metric, imperial } = unitTable[dimension].shown
  return metric === imperial ? text : formatQuantity(defaultNumber(path), dimension, units)
}

/** Every default there is, as `dawnlift check --assumed` and the guide list them. */
export const assumedTable = (units: 'metric' | 'imperial'): readonly Assumed[] =>
  (Object.keys(defaultTable) as DefaultPath[]).map(path => assumedAt(path, units))
