/** The largest eigenvalue of a symmetric operator, with its vector and how far the iteration was from rest. */
export interface LargestEigenvalue {
  readonly value: number
  readonly vector: Float64Array
  /** ‖Av − θv‖ / θ: an eigenvalue lies within this share. */
  readonly residual: number
  readonly steps: number
}

interface Iteration {
  /** Near the wanted vector. */
  readonly start?: Float64Array
  readonly tolerance?: number
  readonly most?: number
}

/**
 * Lanczos iteration with full reorthogonalisation; none when `goOn` answers false.
 *
 * Source   [Lanczos1950], from memory.
 * Range    the wanted eigenvalue is the largest one; multiples come out as one of their vectors.
 * Assumes  the start vector is not orthogonal to the wanted one: it is a fixed sequence without symmetry, or a tenth of it
 *          added to the start given, which may miss what is wanted.
 */
export function largestEigenvalue(
  size: number,
  apply: (x: Float64Array) => Float64Array,
  goOn: (share: number) => boolean,
  { start, tolerance = 1e-7, most = 120 }: Iteration = {},
): LargestEigenvalue | undefined {
  const basis: Float64Array[] = [startVector(size, start)]
  const [alphas, betas]: [number[], number[]] = [[], []]
  for (let step = 0; step < most; step++) {
    if (!goOn(step / 40)) return undefined
    const pushed = apply(basis[step]!)
    alphas.push(dot(pushed, basis[step]!))
    subtract(pushed, basis[step]!, alphas[step]!)
    if (step > 0) subtract(pushed, basis[step - 1]!, betas[step - 1]!)
    for (const known of basis) subtract(pushed, known, dot(pushed, known))
    const beta = Math.sqrt(dot(pushed, pushed))
    const { value, vector } = largestOfTridiagonal(alphas, betas)
    const residual = Math.abs((beta * vector[step]!) / value)
    if (residual < tolerance || beta < 1e-14 * Math.abs(value) || step === most - 1)
      return { value, vector: combined(basis, vector), residual, steps: step + 1 }
    betas.push(beta)
    basis.push(normalised(pushed))
  }
  return undefined
}

/** Largest eigenpair of a symmetric tridiagonal matrix: Sturm bisection, then inverse iteration. */
export function largestOfTridiagonal(alphas: readonly number[], betas: readonly number[]) {
  const size = alphas.length
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (let i = 0; i < size; i++) {
    const reach = Math.abs(betas[i - 1] ?? 0) + Math.abs(i < size - 1 ? betas[i]! : 0)
    low = Math.min(low, alphas[i]! - reach)
    high = Math.max(high, alphas[i]! + reach)
  }
  for (let i = 0; i < 200 && high - low > 1e-15 * Math.max(Math.abs(high), Math.abs(low)); i++) {
    const middle = (low + high) / 2
    if (below(alphas, betas, middle) < size) low = middle
    else high = middle
  }
  const value = (low + high) / 2
  return { value, vector: tridiagonalVector(alphas, betas, high + 1e-13 * Math.abs(high)) }
}

/** How many eigenvalues lie below x. */
function below(alphas: readonly number[], betas: readonly number[], x: number): number {
  let [count, pivot] = [0, 1]
  for (let i = 0; i < alphas.length; i++) {
    pivot = alphas[i]! - x - (i > 0 ? betas[i - 1]! ** 2 / pivot : 0)
    if (pivot === 0) pivot = 1e-300
    if (pivot < 0) count++
  }
  return count
}

/** Two inverse iterations with a shift just above the eigenvalue, where the shifted matrix is definite. */
function tridiagonalVector(alphas: readonly number[], betas: readonly number[], shift: number): Float64Array {
  let vector: Float64Array = new Float64Array(alphas.length).fill(1)
  for (let pass = 0; pass < 3; pass++) vector = normalised(solveTridiagonal(alphas, betas, shift, vector))
  return vector
}

function solveTridiagonal(
  alphas: readonly number[],
  betas: readonly number[],
  shift: number,
  right: Float64Array,
): Float64Array {
  const size = alphas.length
  const [pivots, x] = [new Float64Array(size), right.slice()]
  for (let i = 0; i < size; i++) {
    const factor = i > 0 ? betas[i - 1]! / pivots[i - 1]! : 0
    pivots[i] = alphas[i]! - shift - (i > 0 ? factor * betas[i - 1]! : 0)
    if (pivots[i] === 0) pivots[i] = 1e-300
    if (i > 0) x[i]! -= factor * x[i - 1]!
  }
  for (let i = size - 1; i >= 0; i--) x[i] = (x[i]! - (i < size - 1 ? betas[i]! * x[i + 1]! : 0)) / pivots[i]!
  return x
}

function startVector(size: number, near?: Float64Array): Float64Array {
  const scattered = normalised(
    new Float64Array(size).map((_, i) => Math.sin(1 + i * 1.618) + 0.3 * Math.cos(i * 0.7321)),
  )
  if (!near) return scattered
  normalised(near)
  return normalised(near.map((entry, i) => entry + 0.1 * scattered[i]!))
}

function combined(basis: readonly Float64Array[], shares: Float64Array): Float64Array {
  const sum = new Float64Array(basis[0]!.length)
  for (let i = 0; i < shares.length; i++) subtract(sum, basis[i]!, -shares[i]!)
  return sum
}

function normalised(x: Float64Array): Float64Array {
  const length = Math.sqrt(dot(x, x))
  if (length > 0) for (let i = 0; i < x.length; i++) x[i]! /= length
  return x
}

function subtract(from: Float64Array, x: Float64Array, amount: number): void {
  for (let i = 0; i < from.length; i++) from[i]! -= amount * x[i]!
}

/** Four sums: one by itself waits for every addition. */
function dot(a: Float64Array, b: Float64Array): number {
  let s0 = 0
  let s1 = 0
  let s2 = 0
  let s3 = 0
  const whole = a.length - (a.length % 4)
  for (let i = 0; i < whole; i += 4) {
    s0 += a[i]! * b[i]!
    s1 += a[i + 1]! * b[i + 1]!
    s2 += a[i + 2]! * b[i + 2]!
    s3 += a[i + 3]! * b[i + 3]!
  }
  for (let i = whole; i < a.length; i++) s0 += a[i]! * b[i]!
  return s0 + s1 + (s2 + s3)
}
