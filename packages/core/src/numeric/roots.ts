import { assert } from '../result/index.js'

/** Where a function crosses zero, with what is left of it there: a caller can see how good the answer is. */
export interface Root {
  readonly at: number
  readonly residual: number
  readonly iterations: number
}

/** Halves a bracket until it is narrower than `tolerance`. The bracket must hold a change of sign. */
export function bisect(f: (x: number) => number, from: number, to: number, tolerance = 1e-12): Root {
  let [low, high, atLow] = [from, to, f(from)]
  assertBracket(atLow, f(to), from, to)
  let iterations = 0
  while (Math.abs(high - low) > tolerance && iterations < 200) {
    const middle = (low + high) / 2
    const value = f(middle)
    if (value === 0) return { at: middle, residual: 0, iterations }
    if (Math.sign(value) === Math.sign(atLow)) [low, atLow] = [middle, value]
    else high = middle
    iterations++
  }
  const at = (low + high) / 2
  return { at, residual: f(at), iterations }
}

/**
 * Root inside a bracket by Brent's method: inverse quadratic steps, halving whenever they do not pay.
 *
 * Source   [Brent1973], chapter 4, from memory.
 * Range    a bracket with a change of sign and finite values at both ends.
 * Assumes  a continuous function; across a jump it answers the place of the jump.
 */
export function brent(f: (x: number) => number, from: number, to: number, tolerance = 1e-12): Root {
  let [a, b] = [from, to]
  let [fa, fb] = [f(a), f(b)]
  assertBracket(fa, fb, from, to)
  let [c, fc] = [a, fa]
  let [step, before] = [b - a, b - a]
  for (let iterations = 0; iterations < 200; iterations++) {
    if (Math.sign(fb) === Math.sign(fc)) {
      ;[c, fc] = [a, fa]
      step = before = b - a
    }
    if (Math.abs(fc) < Math.abs(fb)) [a, b, c, fa, fb, fc] = [b, c, b, fb, fc, fb]
    const least = 2 * Number.EPSILON * Math.abs(b) + tolerance / 2
    const half = (c - b) / 2
    if (Math.abs(half) <= least || fb === 0) return { at: b, residual: fb, iterations }
    const wanted =
      Math.abs(before) >= least && Math.abs(fa) > Math.abs(fb) ? trialStep(a, b, c, fa, fb, fc) : NaN
    const taken =
      Math.abs(2 * wanted) < Math.min(3 * Math.abs(half) - least, Math.abs(before)) && wanted * half > 0
    before = taken ? step : half
    step = taken ? wanted : half
    ;[a, fa] = [b, fb]
    b += Math.abs(step) > least ? step : Math.sign(half) * least
    fb = f(b)
    assert(Number.isFinite(fb), `the function has a value at ${b} inside the bracket`)
  }
  return { at: b, residual: fb, iterations: 200 }
}

/** The first change of sign when marching from `from` to `to` in `steps` equal steps, or none. */
export function firstRoot(
  f: (x: number) => number,
  from: number,
  to: number,
  steps: number,
  tolerance = 1e-12,
): Root | undefined {
  assert(Number.isInteger(steps) && steps > 0 && to > from, 'marching needs whole steps and a span')
  let [x, value] = [from, f(from)]
  if (value === 0) return { at: from, residual: 0, iterations: 0 }
  for (let step = 1; step <= steps; step++) {
    const next = from + ((to - from) * step) / steps
    const atNext = f(next)
    if (Math.sign(atNext) !== Math.sign(value)) return brent(f, x, next, tolerance)
    ;[x, value] = [next, atNext]
  }
  return undefined
}

/** Inverse quadratic step through three points, or the secant where two of them coincide. */
function trialStep(a: number, b: number, c: number, fa: number, fb: number, fc: number): number {
  const s = fb / fa
  if (a === c) return (s * (b - c)) / (1 - s)
  const [q, r] = [fa / fc, fb / fc]
  const p = s * (q * (q - r) * (c - b) - (b - a) * (r - 1))
  return -p / ((q - 1) * (r - 1) * (s - 1))
}

function assertBracket(atFrom: number, atTo: number, from: number, to: number): void {
  assert(Number.isFinite(atFrom) && Number.isFinite(atTo), `the function has values at ${from} and ${to}`)
  assert(Math.sign(atFrom) !== Math.sign(atTo), `the bracket ${from} … ${to} holds a change of sign`)
}
