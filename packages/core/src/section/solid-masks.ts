import type { LayerRange } from '../wall/index.js'

/**
 * Where blocks have something to print, as bits: one to each run of layers on which nothing changes, the lowest first. A
 * search joins blocks tens of thousands of times.
 */
export interface SolidMasks {
  /** Layers of each run. */
  readonly layers: readonly number[]
  /** Words of 31 bits to a block. */
  readonly words: number
  readonly bits: Int32Array
}

const WORD = 31

export function solidMasks(solid: readonly (readonly LayerRange[])[]): SolidMasks {
  const ends = solid.flat().flatMap(({ fromLayer, toLayer }) => [fromLayer - 1, toLayer])
  const levels = [...new Set([0, ...ends])].sort((a, b) => a - b)
  const layers = levels.slice(1).map((level, i) => level - levels[i]!)
  const words = Math.max(1, Math.ceil(layers.length / WORD))
  const bits = new Int32Array(solid.length * words)
  solid.forEach((ranges, block) => {
    for (const { fromLayer, toLayer } of ranges)
      for (let i = levels.indexOf(fromLayer - 1); levels[i]! < toLayer; i++)
        bits[block * words + Math.floor(i / WORD)]! |= 1 << (i % WORD)
  })
  return { layers, words, bits }
}

/** Layers without material below the top of each part, summed; all layers of a part that has none. */
export function emptyLayers(
  { layers, words, bits }: SolidMasks,
  partition: readonly number[],
  parts: number,
): number {
  const joined = new Int32Array(parts * words)
  for (let block = 0; block < partition.length; block++)
    for (let word = 0; word < words; word++)
      joined[partition[block]! * words + word]! |= bits[block * words + word]!
  let empty = 0
  for (let part = 0; part < parts; part++) {
    const only = joined[part]!
    // Ones from the lowest bit up, and nothing above them.
    if (words === 1 && only !== 0 && (only & (only + 1)) === 0) continue
    empty += emptyIn(layers, joined.subarray(part * words, (part + 1) * words))
  }
  return empty
}

function emptyIn(layers: readonly number[], mask: Int32Array): number {
  let [empty, below] = [0, 0]
  let hasAny = false
  for (let i = 0; i < layers.length; i++) {
    if ((mask[Math.floor(i / WORD)]! >> (i % WORD)) & 1) {
      hasAny = true
      empty = below
    } else below += layers[i]!
  }
  return hasAny ? empty : below
}
