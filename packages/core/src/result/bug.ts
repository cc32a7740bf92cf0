/** A broken invariant: our mistake, never the user's. Only the outermost layer catches it. */
export class Bug extends Error {
  override readonly name = 'Bug'
}

export function assert(condition: unknown, invariant: string): asserts condition {
  if (!condition) throw new Bug(invariant)
}
