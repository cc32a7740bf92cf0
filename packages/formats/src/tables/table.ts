/** One value of a table; text is always text, also when it looks like a number or a formula. */
export type TableValue = string | number

/** A table with the unit of every column in its heading, e.g. `volume (m3)`. */
export interface Table {
  readonly name: string
  readonly heads: readonly string[]
  readonly rows: readonly (readonly TableValue[])[]
}
