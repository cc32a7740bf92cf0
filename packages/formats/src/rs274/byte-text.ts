import { assert } from '@dawnlift/core/result'

const minus = 45
const point = 46
const zero = 48
const powers = Array.from({ length: 16 }, (_, places) => 10 ** places)

/** A piece of a text, from the first byte to before the last. */
export interface TextSpan {
  readonly from: number
  readonly to: number
}

/** Plain ASCII text as it grows, in bytes: a string of megabytes would be walked through once more to be encoded. */
export class ByteText {
  // room for most lifts; memory that nothing is written to costs nothing
  private text = new Uint8Array(1 << 20)
  private end = 0

  words(text: string): this {
    const { length } = text
    const bytes = this.roomFor(length)
    const { end } = this
    for (let i = 0; i < length; i++) bytes[end + i] = text.charCodeAt(i)
    this.end = end + length
    return this
  }

  /** Bytes that stand elsewhere. A few are copied one by one: to set them up as a view takes longer. */
  bytes(of: Uint8Array, { from, to }: TextSpan): this {
    const length = to - from
    const bytes = this.roomFor(length)
    const { end } = this
    if (length < 64) for (let i = 0; i < length; i++) bytes[end + i] = of[from + i]!
    else bytes.set(of.subarray(from, to), end)
    this.end = end + length
    return this
  }

  piece(of: ByteText, span: TextSpan): this {
    return this.bytes(of.text, span)
  }

  /** What stands before already, once more. */
  again({ from, to }: TextSpan): this {
    const bytes = this.roomFor(to - from)
    bytes.copyWithin(this.end, from, to)
    this.end += to - from
    return this
  }

  /** So many steps of 10^−places as RS-274 has numbers: no exponent, no zeros behind the last figure. */
  decimal(steps: number, places: number): this {
    const size = Math.abs(steps)
    const unit = powers[places]!
    const whole = Math.floor(size / unit)
    const part = size - whole * unit
    assert(
      whole < 2 ** 31 && part === Math.floor(part),
      'numbers in a machine file are finite, of whole steps',
    )
    const bytes = this.roomFor(24)
    if (steps < 0) bytes[this.end++] = minus
    this.end = putFigures(bytes, this.end, whole | 0, figuresOf(whole | 0))
    if (part > 0) this.fraction(bytes, part | 0, places)
    return this
  }

  /** Where what is written meanwhile stands. */
  spanOf(write: () => void): TextSpan {
    const from = this.end
    write()
    return { from, to: this.end }
  }

  /** What has been written; the text begins anew. */
  taken(): Uint8Array {
    const taken = this.text.slice(0, this.end)
    this.end = 0
    return taken
  }

  private fraction(bytes: Uint8Array, part: number, places: number): void {
    let [figures, count] = [part, places]
    for (; figures % 10 === 0; count--) figures = (figures / 10) | 0
    bytes[this.end] = point
    this.end = putFigures(bytes, this.end + 1, figures, count)
  }

  private roomFor(more: number): Uint8Array {
    if (this.end + more > this.text.length) {
      const larger = new Uint8Array(2 * (this.end + more))
      larger.set(this.text.subarray(0, this.end))
      this.text = larger
    }
    return this.text
  }
}

/** So many last figures of a whole number below 2³¹, from a place on; the place behind them. */
function putFigures(bytes: Uint8Array, from: number, whole: number, count: number): number {
  let rest = whole
  for (let at = from + count - 1; at >= from; at--) {
    const tens = (rest / 10) | 0
    bytes[at] = zero + rest - 10 * tens
    rest = tens
  }
  return from + count
}

function figuresOf(whole: number): number {
  let count = 1
  for (let most = 10; count < 10 && whole >= most; most *= 10) count++
  return count
}
