export type Verdict = 'pass' | 'warn' | 'fail' | 'outside-range'

/** What the engineering says. A verdict is a result, with its evidence. */
export interface Finding {
  /** Name of the check, e.g. `overhang`, `reach`, `thin-place`. */
  readonly check: string
  /** Where: wall, embed, section or lift id, and a point if there is one. */
  readonly at: string
  readonly point?: readonly [number, number]
  readonly demand: number
  readonly capacity: number
  readonly unit: string
  /** Reference key of `docs/references.md`, or `common practice, no source`, or `the job`. */
  readonly source: string
  readonly verdict: Verdict
  /** One plain sentence with the numbers in it and what to do. */
  readonly say: string
}
