/** Unbranded aliases: they document signatures. Inside the code there is one unit per quantity. */
export type Metres = number
export type SquareMetres = number
export type CubicMetres = number
export type Seconds = number
export type MetresPerSecond = number
export type CubicMetresPerSecond = number
export type Kilograms = number
export type KilogramsPerCubicMetre = number
export type Pascals = number
export type Radians = number
/** Temperature in degrees Celsius. */
export type Celsius = number
/** A share between 0 and 1. */
export type Share = number
/** A moment: seconds since 1970-01-01T00:00:00Z. */
export type Instant = number
