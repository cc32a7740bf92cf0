import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64'
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus'

/** After a small seed the state is nearly all zeros and the first numbers are near 0 or 1: they are left out. */
const RUN_UP = 64

/** Uniform random numbers from 0 up to 1, the same ones for the same seed. */
export function uniformFrom(seed: number): () => number {
  const generator = xoroshiro128plus(seed)
  for (let i = 0; i < RUN_UP; i++) uniformFloat64(generator)
  return () => uniformFloat64(generator)
}
