/** A number as people write it, or why it cannot be one. */
export type NumberReading =
  | { readonly kind: 'number'; readonly value: number }
  | { readonly kind: 'ambiguous'; readonly asDecimal: string; readonly asThousands: string }
  | { readonly kind: 'none' }

/** Matches a number with decimal point or comma, a fraction (`1/2`) or a whole number and a fraction (`8 1/2`). */
export const numberPattern =
  /[-−+]?(?:\d+[ \-–]\d+\/\d+|\d+\/\d+|(?:\d{1,3}(?:[\u00a0\u2009\u202f]\d{3})+|\d+)(?:[.,]\d+)?(?:[eE][-+−]?\d+)?|[.,]\d+)/y

/**
 * Reads one number. `2,5` is two and a half; `1,500` could be either and is refused as ambiguous.
 * Digits may be grouped by no-break or thin spaces only.
 */
export function readNumber(text: string): NumberReading {
  const plain = text
    .trim()
    .replace(/−/g, '-')
    .replace(/[\u00a0\u2009\u202f]/g, '')
  const sign = plain.startsWith('-') ? -1 : 1
  const unsigned = plain.replace(/^[-+]/, '')
  const mixed = /^(?:(\d+)[ \-–])?(\d+)\/(\d+)$/.exec(unsigned)
  if (mixed) return fraction(sign, mixed)
  if (/^[1-9]\d{0,2},\d{3}$/.test(unsigned))
    return {
      kind: 'ambiguous',
      asDecimal: unsigned.replace(',', '.'),
      asThousands: unsigned.replace(',', ''),
    }
  if (!/^(\d+([.,]\d*)?|[.,]\d+)([eE][-+]?\d+)?$/.test(unsigned)) return { kind: 'none' }
  const value = Number(unsigned.replace(',', '.'))
  return Number.isFinite(value) ? { kind: 'number', value: sign * value } : { kind: 'none' }
}

function fraction(sign: number, parts: RegExpExecArray): NumberReading {
  const below = Number(parts[3])
  if (below === 0) return { kind: 'none' }
  return { kind: 'number', value: sign * (Number(parts[1] ?? 0) + Number(parts[2]) / below) }
}
