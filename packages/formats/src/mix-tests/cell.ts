import { type Dimension, parseQuantity } from '@dawnlift/core/quantity'
import { failure, type Result } from '@dawnlift/core/result'

/** A cell with its unit in itself, or in its column or row; in both only if it is the same one. */
export function readCell(cell: string, unit: string | undefined, dimension: Dimension): Result<number> {
  const symbol = /^[-−+]?[\d.,]+(?:e[-+]?\d+)?\s*(.*)$/i.exec(cell)?.[1]
  if (symbol && unit && symbol !== unit)
    return failure([
      {
        code: 'mix-tests/mixed-units',
        at: '',
        say: `“${cell}” carries another unit than its column (${unit}); write the unit once.`,
      },
    ])
  return parseQuantity(symbol === '' && unit ? `${cell} ${unit}` : cell, dimension)
}
