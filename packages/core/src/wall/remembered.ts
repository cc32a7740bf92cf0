import type { PrintRules } from '../job/index.js'

/**
 * A function of a thing and the print rules that is worked out once for each, and forgotten with the thing. Bands of one
 * section share most of their material, so most of what it takes is asked for again in the next band.
 */
export function remembered<Thing extends object, Result>(
  work: (thing: Thing, print: PrintRules) => Result,
): (thing: Thing, print: PrintRules) => Result {
  const known = new WeakMap<Thing, Map<string, { readonly result: Result }>>()
  return (thing, print) => {
    const byPrint = known.get(thing) ?? new Map<string, { readonly result: Result }>()
    known.set(thing, byPrint)
    const key = printKey(print)
    const made = byPrint.get(key) ?? { result: work(thing, print) }
    byPrint.set(key, made)
    return made.result
  }
}

/** What of the print rules beads depend on. */
export const printKey = ({ beadWidth, layerHeight, cornerRadius }: PrintRules): string =>
  `${beadWidth} ${layerHeight} ${cornerRadius}`
