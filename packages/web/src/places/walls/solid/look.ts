/** What the solid view is told to show; plain data, sent to the worker that draws. */
export interface Look {
  readonly width: number
  readonly height: number
  readonly ratio: number
  readonly eye: readonly [number, number, number]
  readonly middle: readonly [number, number, number]
  /** Everything on the near side of this line across the house is cut away [m]; none: nothing is. */
  readonly cutAt?: number
}

/** How much of each section stands, and the place of each of its layers along the ramp of colours, 0–1. */
export type Standing = Readonly<
  Record<string, { readonly layers: number; readonly shares: readonly number[] }>
>

/** What does not change while a job is looked at. */
export interface Ground {
  readonly least: readonly [number, number]
  readonly most: readonly [number, number]
  readonly colour: string
}
