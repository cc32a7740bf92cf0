export { formatClock, parseClock } from './clock-time.js'
export { convertUnit, dimensionsOf } from './convert-unit.js'
export type { Dimension, DimensionUnits, Unit } from './dimension.js'
export { formatPlace } from './format-place.js'
export type { QuantityFormat } from './format-quantity.js'
export { feetInches, formatQuantity, writeQuantity } from './format-quantity.js'
export { parseQuantity } from './parse-quantity.js'
export type {
  Celsius,
  CubicMetres,
  CubicMetresPerSecond,
  Instant,
  Kilograms,
  KilogramsPerCubicMetre,
  Metres,
  MetresPerSecond,
  Pascals,
  Radians,
  Seconds,
  Share,
  SquareMetres,
} from './unit-aliases.js'
export { dimensionWords, unitNames } from './unit-symbol.js'
export { unitTable } from './unit-table.js'
