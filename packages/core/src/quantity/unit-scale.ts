import type { Unit } from './dimension.js'

// Inch, pound and US gallon are exact by definition (international yard and pound, 1959; 231 cubic inches).
export const INCH = 0.0254
export const FOOT = 0.3048
export const MILE = 1609.344
export const POUND = 0.45359237
export const GALLON = 231 * INCH ** 3
export const GRAVITY = 9.80665
export const POUND_FORCE = POUND * GRAVITY
export const PSI = POUND_FORCE / INCH ** 2
export const DEGREE = Math.PI / 180

export const unit = (scale: number, ...names: readonly [string, ...string[]]): Unit => ({ names, scale })
/** Units that may stand together, larger first: `8 ft 1 in`. */
export const inFamily = (family: string, scale: number, ...names: readonly [string, ...string[]]): Unit => ({
  names,
  scale,
  family,
})
