/** Someone gave us something we cannot use. Collected, never thrown. */
export interface Problem {
  /** Stable code, `area/what`, e.g. `job/unknown-key`. */
  readonly code: string
  /** Where: a path into the document (`walls[3].thickness`), `file:line`, or coordinates. */
  readonly at: string
  /** What was found, what is allowed and what to do, as one or two plain sentences with the numbers in them. */
  readonly say: string
  readonly values?: Readonly<Record<string, string | number>>
}

export type Result<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] }

export const success = <T>(value: T): Result<T> => ({ ok: true, value })
export const failure = (problems: readonly Problem[]): Result<never> => ({ ok: false, problems })
