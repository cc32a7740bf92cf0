import { formatQuantity } from '@dawnlift/core/quantity'
import { words } from '../../../words/index.js'
import type { Units } from '../edits/length-text.js'

/** On which layer a height falls, and by how much the print will miss it. */
export function layerHint(height: number, layerHeight: number, units: Units): string {
  const layer = Math.max(0, Math.ceil(height / layerHeight - 0.5 - 1e-9))
  const off = layer * layerHeight - height
  const miss =
    Math.abs(off) < 5e-4
      ? ''
      : ` (${off > 0 ? '+' : '−'}${formatQuantity(Math.abs(off), 'length', units, units === 'metric' ? { unit: 'mm', step: 1 } : {})})`
  return words.walls.layerOf(layer, miss)
}
