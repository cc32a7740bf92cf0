import { formatQuantity, parseQuantity, writeQuantity } from '@dawnlift/core/quantity'

export type Units = 'metric' | 'imperial'

/** A length as the job's author would write it: `900 mm`, `2.46 m`, `8' 1 1/2"`; with every digit where rounding would move it. */
export function lengthText(value: number, units: Units): string {
  const short = Math.abs(value) < 1
  const text =
    units === 'imperial'
      ? formatQuantity(value, 'length', 'imperial', { denominator: 32 })
      : formatQuantity(
          value,
          'length',
          'metric',
          short ? { unit: 'mm', step: 0.1 } : { unit: 'm', step: 0.001 },
        )
  const read = parseQuantity(text, 'length')
  if (read.ok && Math.abs(read.value - value) < 1e-6) return text
  return writeQuantity(Number(value.toFixed(9)), 'length', units === 'imperial' ? 'in' : 'mm')
}
