import type { Point } from '@dawnlift/core/geometry'
import type { Metres } from '@dawnlift/core/quantity'

/** `(12.340, 5.000) m`: where to look in the drawing's own coordinates, in metres. */
export const sayPlace = ([x, y]: Point): string => `(${x.toFixed(3)}, ${y.toFixed(3)}) m`

/** `160 mm` */
export const sayMillimetres = (length: Metres): string => `${Math.round(length * 10_000) / 10} mm`
