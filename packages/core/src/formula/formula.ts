/** One input of a formula: name, unit symbol as shown to people, and the range the source allows. */
export interface FormulaInput {
  readonly name: string
  readonly unit: string
  /** Dimension and scale: what one shown unit is in SI (°C is its own unit inside). */
  readonly meaning: string
  readonly least?: number
  readonly most?: number
  readonly example: number
}

/** Where a value that a formula is checked against comes from. */
export interface Formula {
  /** Kebab-case, as typed: `dawnlift calc evaporation-uno`. */
  readonly name: string
  readonly says: string
  readonly inputs: readonly FormulaInput[]
  readonly output: { readonly name: string; readonly unit: string }
  /** Reference key of `docs/references.md`, e.g. `[Uno1998]`. */
  readonly source: string
  /** What the formula leaves out and when not to trust it. */
  readonly caution?: string
  /** Takes the inputs in their shown units, answers in the shown output unit. */
  readonly calculate: (inputs: Readonly<Record<string, number>>) => number
}
