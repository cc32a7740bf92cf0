/**
 * Inner loops over dense blocks, row by row in one array. Every size is a multiple of six, the unknowns of a node: tiles of
 * three by three keep nine sums and six factors in registers, six rows at a time keep six sums apart.
 */

/** c −= a·bᵀ */
export function subtractProduct(
  c: Float64Array,
  a: Float64Array,
  b: Float64Array,
  rows: number,
  columns: number,
  inner: number,
): void {
  for (let i = 0; i < rows; i += 3)
    for (let j = 0; j < columns; j += 3)
      subtractTile(c, i * columns + j, columns, a, i * inner, b, j * inner, inner, inner)
}

/** c −= a·aᵀ on and under the diagonal. */
export function subtractSquare(c: Float64Array, a: Float64Array, rows: number, inner: number): void {
  for (let i = 0; i < rows; i += 3)
    for (let j = 0; j <= i; j += 3)
      subtractTile(c, i * rows + j, rows, a, i * inner, a, j * inner, inner, inner)
}

/** Lower Cholesky factor in place; answers the first pivot that is not positive. */
export function factorSquare(a: Float64Array, size: number): number | undefined {
  for (let j = 0; j < size; j += 3) {
    for (let i = j; i < size; i += 3) subtractTile(a, i * size + j, size, a, i * size, a, j * size, size, j)
    const wrong = factorTile(a, j * size + j, size)
    if (wrong !== undefined) return wrong
    for (let i = j + 3; i < size; i += 3) solveTile(a, i * size + j, size, a, j * size + j, size)
  }
  return undefined
}

/** rows ← rows·L⁻ᵀ */
export function solveRows(factor: Float64Array, size: number, rows: Float64Array, count: number): void {
  for (let i = 0; i < count; i += 3)
    for (let j = 0; j < size; j += 3) {
      subtractTile(rows, i * size + j, size, rows, i * size, factor, j * size, size, j)
      solveTile(rows, i * size + j, size, factor, j * size + j, size)
    }
}

/** x ← L⁻¹·x */
export function solveLower(factor: Float64Array, size: number, x: Float64Array, at: number): void {
  for (let j = 0; j < size; j += 6) {
    subtractRows(x, at + j, 6, factor, j * size, size, x, at, j)
    for (let a = j; a < j + 6; a++) {
      let sum = x[at + a]!
      for (let b = j; b < a; b++) sum -= factor[a * size + b]! * x[at + b]!
      x[at + a] = sum / factor[a * size + a]!
    }
  }
}

/** x ← L⁻ᵀ·x */
export function solveUpper(factor: Float64Array, size: number, x: Float64Array, at: number): void {
  for (let j = size - 6; j >= 0; j -= 6) {
    for (let a = j + 5; a >= j; a--) {
      const value = x[at + a]! / factor[a * size + a]!
      x[at + a] = value
      for (let b = j; b < a; b++) x[at + b]! -= factor[a * size + b]! * value
    }
    subtractColumns(x, at, j, factor, j * size, size, x, at + j, 6)
  }
}

/** y −= B·x with `rows` rows of B, `length` entries of x. */
export function subtractRows(
  y: Float64Array,
  yAt: number,
  rows: number,
  block: Float64Array,
  blockAt: number,
  stride: number,
  x: Float64Array,
  xAt: number,
  length: number,
): void {
  for (let r = 0; r < rows; r += 6) {
    const b0 = blockAt + r * stride
    const b1 = b0 + stride
    const b2 = b1 + stride
    const b3 = b2 + stride
    const b4 = b3 + stride
    const b5 = b4 + stride
    let s0 = 0
    let s1 = 0
    let s2 = 0
    let s3 = 0
    let s4 = 0
    let s5 = 0
    for (let k = 0; k < length; k++) {
      const value = x[xAt + k]!
      s0 += block[b0 + k]! * value
      s1 += block[b1 + k]! * value
      s2 += block[b2 + k]! * value
      s3 += block[b3 + k]! * value
      s4 += block[b4 + k]! * value
      s5 += block[b5 + k]! * value
    }
    const at = yAt + r
    y[at]! -= s0
    y[at + 1]! -= s1
    y[at + 2]! -= s2
    y[at + 3]! -= s3
    y[at + 4]! -= s4
    y[at + 5]! -= s5
  }
}

/** x −= Bᵀ·y with `length` entries of x, `rows` rows of B. */
export function subtractColumns(
  x: Float64Array,
  xAt: number,
  length: number,
  block: Float64Array,
  blockAt: number,
  stride: number,
  y: Float64Array,
  yAt: number,
  rows: number,
): void {
  for (let r = 0; r < rows; r += 6) {
    const b0 = blockAt + r * stride
    const b1 = b0 + stride
    const b2 = b1 + stride
    const b3 = b2 + stride
    const b4 = b3 + stride
    const b5 = b4 + stride
    const at = yAt + r
    const y0 = y[at]!
    const y1 = y[at + 1]!
    const y2 = y[at + 2]!
    const y3 = y[at + 3]!
    const y4 = y[at + 4]!
    const y5 = y[at + 5]!
    for (let k = 0; k < length; k++)
      x[xAt + k]! -=
        block[b0 + k]! * y0 +
        block[b1 + k]! * y1 +
        block[b2 + k]! * y2 +
        (block[b3 + k]! * y3 + block[b4 + k]! * y4 + block[b5 + k]! * y5)
  }
}

/** Three by three of c −= a·bᵀ, over the first `length` entries of rows that lie `stride` apart. */
function subtractTile(
  c: Float64Array,
  at: number,
  columns: number,
  a: Float64Array,
  a0: number,
  b: Float64Array,
  b0: number,
  stride: number,
  length: number,
): void {
  const a1 = a0 + stride
  const a2 = a1 + stride
  const b1 = b0 + stride
  const b2 = b1 + stride
  // no lists in here: the compiler does not always see through them
  let s00 = 0
  let s01 = 0
  let s02 = 0
  let s10 = 0
  let s11 = 0
  let s12 = 0
  let s20 = 0
  let s21 = 0
  let s22 = 0
  for (let k = 0; k < length; k++) {
    const x0 = a[a0 + k]!
    const x1 = a[a1 + k]!
    const x2 = a[a2 + k]!
    const y0 = b[b0 + k]!
    const y1 = b[b1 + k]!
    const y2 = b[b2 + k]!
    s00 += x0 * y0
    s01 += x0 * y1
    s02 += x0 * y2
    s10 += x1 * y0
    s11 += x1 * y1
    s12 += x1 * y2
    s20 += x2 * y0
    s21 += x2 * y1
    s22 += x2 * y2
  }
  const c1 = at + columns
  const c2 = c1 + columns
  c[at]! -= s00
  c[at + 1]! -= s01
  c[at + 2]! -= s02
  c[c1]! -= s10
  c[c1 + 1]! -= s11
  c[c1 + 2]! -= s12
  c[c2]! -= s20
  c[c2 + 1]! -= s21
  c[c2 + 2]! -= s22
}

function factorTile(a: Float64Array, at: number, stride: number): number | undefined {
  for (let i = 0; i < 3; i++)
    for (let j = 0; j <= i; j++) {
      let sum = a[at + i * stride + j]!
      for (let k = 0; k < j; k++) sum -= a[at + i * stride + k]! * a[at + j * stride + k]!
      if (i !== j) a[at + i * stride + j] = sum / a[at + j * stride + j]!
      else if (sum > 0) a[at + i * stride + i] = Math.sqrt(sum)
      else return sum
    }
  return undefined
}

/** Three by three of rows ← rows·L⁻ᵀ with a tile of L. */
function solveTile(
  rows: Float64Array,
  at: number,
  rowStride: number,
  factor: Float64Array,
  f0: number,
  stride: number,
): void {
  const [f1, f2] = [f0 + stride, f0 + 2 * stride]
  for (let i = 0; i < 3; i++) {
    const r = at + i * rowStride
    const x = rows[r]! / factor[f0]!
    const y = (rows[r + 1]! - factor[f1]! * x) / factor[f1 + 1]!
    rows[r] = x
    rows[r + 1] = y
    rows[r + 2] = (rows[r + 2]! - factor[f2]! * x - factor[f2 + 1]! * y) / factor[f2 + 2]!
  }
}
