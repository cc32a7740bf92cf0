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
export function emptyLayers(masks: SolidMasks, partition: readonly number[], parts: number): number {
  const joined = joinedMasks(masks, partition, parts)
  let empty = 0
  for (let part = 0; part < parts; part++) empty += emptyOf(masks, joined, part)
  return empty
}

/** The same, part by part, and of parts joined with others or with a block. */
export interface EmptyParts {
  readonly each: readonly number[]
  readonly merged: (a: number, b: number) => number
  readonly withBlock: (part: number, block: number) => number
  readonly ofBlock: (block: number) => number
}

export function emptyByPart(masks: SolidMasks, partition: readonly number[], parts: number): EmptyParts {
  const { bits, words } = masks
  const joined = joinedMasks(masks, partition, parts)
  const both = new Int32Array(words)
  const either = (a: number, other: Int32Array, b: number): number => {
    for (let word = 0; word < words; word++) both[word] = joined[a * words + word]! | other[b * words + word]!
    return emptyOf(masks, both, 0)
  }
  return {
    each: Array.from({ length: parts }, (_, part) => emptyOf(masks, joined, part)),
    merged: (a, b) => either(a, joined, b),
    withBlock: (part, block) => either(part, bits, block),
    ofBlock: block => emptyOf(masks, bits.subarray(block * words, (block + 1) * words), 0),
  }
}

function joinedMasks({ words, bits }: SolidMasks, partition: readonly number[], parts: number): Int32Array {
  const joined = new Int32Array(parts * words)
  for (let block = 0; block < partition.length; block++)
    for (let word = 0; word < words; word++)
      joined[partition[block]! * words + word]! |= bits[block * words + word]!
  return joined
}

function emptyOf({ layers, words }: SolidMasks, joined: Int32Array, part: number): number {
  const only = joined[part]!
  // Ones from the lowest bit up, and nothing above them.
  if (words === 1 && only !== 0 && (only & (only + 1)) === 0) return 0
  return emptyIn(layers, joined.subarray(part * words, (part + 1) * words))
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
