/** One file that a plan gives: made only when somebody asks for it. */
export interface Output {
  /** Path within the output folder, e.g. `sheets/day-2026-07-14.pdf`. */
  readonly name: string
  readonly title: string
  readonly mediaType: string
  readonly make: () => Promise<Uint8Array | string>
}
