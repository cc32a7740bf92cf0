/** A number in (0, 1) that belongs to one replay, one day and one purpose, whatever else has been drawn. */
export type Draw = (replay: number, day: number, purpose: number) => number

/**
 * Numbers counted out rather than drawn in a row: each has its own place, so that two plans replayed with the same seed
 * meet the same breakdowns on the same days (common random numbers), and a difference between them is theirs alone.
 *
 * A 64-bit counter is mixed by two rounds of xor-shift and multiply, the way of [Steele2014].
 */
export function countedDraws(seed: number): Draw {
  const key = BigInt(Math.trunc(seed)) * 0x9e3779b97f4a7c15n
  return (replay, day, purpose) => {
    const place = (BigInt(replay) << 40n) + (BigInt(day) << 16n) + BigInt(purpose)
    return (Number(mixed(key + place * 0x9e3779b97f4a7c15n) >> 11n) + 0.5) / 2 ** 53
  }
}

function mixed(value: bigint): bigint {
  let z = BigInt.asUintN(64, value)
  z = BigInt.asUintN(64, (z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n)
  z = BigInt.asUintN(64, (z ^ (z >> 27n)) * 0x94d049bb133111ebn)
  return z ^ (z >> 31n)
}
